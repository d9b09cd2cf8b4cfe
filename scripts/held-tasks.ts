import type { Browser, Page } from "playwright-core";

/** How long our own work may hold the screen in one go. */
export const ALLOWED_MS = 50;

/** A task of the page that held its screen. */
export interface HeldTask {
  /** Of the processor's time: what else the machine had to do meanwhile does not count. */
  readonly ms: number;
  /** The function, or the file, that took most of it; empty where it was no script, but layout or the like. */
  readonly script: string;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: {
    readonly name?: string;
    readonly data?: { readonly url?: string; readonly functionName?: string };
  };
}

const CATEGORIES = ["devtools.timeline", "disabled-by-default-devtools.timeline"];
const SCRIPTS = new Set(["FunctionCall", "EvaluateScript", "v8.evaluateModule", "v8.compile"]);

/** The tasks of the page's main thread while something was done in it, the longest first. */
export async function tasksDuring(
  browser: Browser,
  page: Page,
  act: () => Promise<void>,
): Promise<readonly HeldTask[]> {
  await browser.startTracing(page, { categories: CATEGORIES });
  let trace: Buffer;
  try {
    await act();
    // What follows the last sign belongs to it.
    await page.waitForTimeout(200);
  } finally {
    trace = await browser.stopTracing();
  }
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: readonly TraceEvent[] };
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === "thread_name" && args.name === "CrRendererMain")
      .map(threadOf),
  );
  const events = traceEvents.filter((event) => event.ph === "X" && mains.has(threadOf(event)));
  return events
    .filter(({ name, tdur = 0 }) => name === "RunTask" && tdur > 10_000)
    .map((task) => heldTask(task, events))
    .sort((one, other) => other.ms - one.ms);
}

function heldTask(task: TraceEvent, events: readonly TraceEvent[]): HeldTask {
  const parts = events.filter(
    (event) =>
      event !== task && threadOf(event) === threadOf(task) && event.ts >= task.ts && end(event) <= end(task),
  );
  const scripts = new Map<string, number>();
  for (const part of parts) {
    const { name, tdur = 0, args } = part;
    const { url, functionName } = args.data ?? {};
    const script = functionName || url;
    if (SCRIPTS.has(name) && script) scripts.set(script, (scripts.get(script) ?? 0) + tdur);
  }
  const [script = ""] = [...scripts].toSorted(([, one], [, other]) => other - one)[0] ?? [];
  return {
    ms: task.tdur! / 1000,
    script,
  };
}

const threadOf = ({ pid, tid }: TraceEvent) => `${pid} ${tid}`;
const end = ({ ts, dur = 0 }: TraceEvent) => ts + dur;
