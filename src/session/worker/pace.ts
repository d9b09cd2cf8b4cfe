/** Hears how far a piece of work is, and can call it off. */
export interface Watch {
  readonly progress: (doing: string, share: number) => void;
  readonly signal: AbortSignal;
}

/** How long our own work may hold the screen in one go. */
export const PAGE_SLICE_MS = 12;

/** How long a worker works before it looks whether it was called off, or has newer work. */
export const WORKER_SLICE_MS = 30;

/** A pace for work in slices: awaited often, it lets go whenever a slice is used up. */
export function pacer(signal: AbortSignal, sliceMs = PAGE_SLICE_MS): () => Promise<void> | undefined {
  let sliceEnds = performance.now() + sliceMs;
  return () => {
    signal.throwIfAborted();
    if (performance.now() < sliceEnds) return undefined;
    return letGo().then(() => {
      signal.throwIfAborted();
      sliceEnds = performance.now() + sliceMs;
    });
  };
}

/** Comes back after the screen had its turn. A message, since timers are held back to 4 ms once nested. */
function letGo(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}
