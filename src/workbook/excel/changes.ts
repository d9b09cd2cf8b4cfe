import type { OfficeGlobals } from "./session";

/**
 * Calls `onChange` whenever somebody edits a cell of the workbook, until the returned function is called. Where Excel
 * cannot tell of changes nothing is called: whoever jumps to a finding looks at the cell again anyway.
 */
export function watchChanges({ Excel: excel }: OfficeGlobals, onChange: () => void): () => void {
  const registration = excel.run(async (context) => {
    const added = context.workbook.worksheets.onChanged.add(async () => {
      onChange();
    });
    await context.sync();
    return added;
  });
  registration.catch(() => undefined);
  return () => {
    registration
      .then((added) =>
        excel.run(added.context, async (context) => {
          added.remove();
          await context.sync();
        }),
      )
      .catch(() => undefined);
  };
}
