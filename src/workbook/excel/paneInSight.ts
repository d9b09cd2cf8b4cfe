import type { OfficeGlobals } from "./session";

/** So long events are gathered before anything is done about them: a fill or a paste comes as many. */
const GATHER_MS = 60;

/**
 * Whether the user sees the pane. In the shared runtime a closed pane goes on running, and an iframe may never hear
 * of `visibilitychange`: Excel's own word counts.
 */
export class PaneInSight {
  private shown = true;
  private readonly listeners = new Set<() => void>();

  constructor({ Office: office }: OfficeGlobals) {
    office.addin
      ?.onVisibilityModeChanged(({ visibilityMode }) => {
        this.shown = visibilityMode !== "Hidden";
        if (this.shown) for (const listener of this.listeners) listener();
      })
      .catch(() => undefined);
  }

  /** Calls `onShow` each time the pane comes into sight again, until the function it returns is called. */
  readonly watch = (onShow: () => void): (() => void) => {
    this.listeners.add(onShow);
    return () => this.listeners.delete(onShow);
  };

  /**
   * Gathers calls of `stir` into few calls of `act`, one at a time, and none while the pane is out of sight: then one
   * when it is shown again.
   */
  gather(act: () => Promise<void> | void): { readonly stir: () => void; readonly stop: () => void } {
    let stirred = false;
    let stopped = false;
    let busy = false;
    const turn = async () => {
      stirred = false;
      await act();
    };
    const begin = () => {
      if (!stirred || busy || stopped || !this.shown) return;
      busy = true;
      setTimeout(() => {
        if (stopped) return;
        void (this.shown ? turn() : Promise.resolve()).finally(() => {
          busy = false;
          begin();
        });
      }, GATHER_MS);
    };
    const unwatch = this.watch(begin);
    return {
      stir: () => {
        stirred = true;
        begin();
      },
      stop: () => {
        stopped = true;
        unwatch();
      },
    };
  }
}
