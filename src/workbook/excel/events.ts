import type { OfficeGlobals } from "./session";

/** What tells of something that happens in the workbook, such as `worksheets.onChanged`, with what it tells. */
type Event<Told> = (context: Excel.RequestContext) => {
  add(handler: (told: Told) => Promise<void>): {
    readonly context: OfficeExtension.ClientRequestContext;
    remove(): void;
  };
};

/**
 * Calls `hear` whenever the event happens, until the returned function is called. Where Excel cannot tell of it
 * nothing is called: whoever listens must do without.
 */
export function listen<Told>(
  { Excel: excel }: OfficeGlobals,
  event: Event<Told>,
  hear: (told: Told) => void,
): () => void {
  const registration = excel.run(async (context) => {
    const added = event(context).add(async (told) => {
      hear(told);
    });
    await context.sync();
    return added;
  });
  registration.catch(() => undefined);
  return () => {
    registration
      .then((added) =>
        excel.run(added.context as Excel.RequestContext, async (context) => {
          added.remove();
          await context.sync();
        }),
      )
      .catch(() => undefined);
  };
}
