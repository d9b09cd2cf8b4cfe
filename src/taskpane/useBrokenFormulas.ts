import { useCallback, useEffect, useState } from "react";
import type { ExcelWorkbook } from "../workbook/excel/excelWorkbook";

/** How many formulas of ours Excel does not know, looked for at the start and whenever the pane comes into view. */
export function useBrokenFormulas(workbook: ExcelWorkbook): { broken: number; look: () => void } {
  const [broken, setBroken] = useState(0);
  const look = useCallback(() => {
    workbook.findBrokenFormulas().then(
      ({ length }) => {
        setBroken(length);
      },
      () => {
        /* A workbook that cannot be looked through just now has nothing to be repaired just now. */
      },
    );
  }, [workbook]);
  useEffect(() => {
    look();
    const lookWhenSeen = () => {
      if (document.visibilityState === "visible") look();
    };
    document.addEventListener("visibilitychange", lookWhenSeen);
    return () => {
      document.removeEventListener("visibilitychange", lookWhenSeen);
    };
  }, [look]);
  return { broken, look };
}
