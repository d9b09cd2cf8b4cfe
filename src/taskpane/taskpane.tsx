import { createRoot } from "react-dom/client";
import { setDateSystem } from "../typed/dateSystem";
import { ExcelWorkbook } from "../workbook/excel/excelWorkbook";
import { ExcelPane } from "./ExcelPane";
import { findDateSystem } from "./findDateSystem";
import { Notice } from "./Notice";
import "../pane/typeface.css";
import { NO_ANSWER, NO_OFFICE, NOT_EXCEL } from "./notices";

/** After so long without a word from Excel the user is told what to do; a late answer is still taken. */
const PATIENCE_MS = 10_000;

const root = createRoot(document.getElementById("pane")!);

if (typeof Office === "undefined") {
  root.render(<Notice>{NO_OFFICE}</Notice>);
} else {
  // The pane explains formulas with the functions' own code: that does not know the workbook either.
  setDateSystem(undefined);
  const impatience = setTimeout(() => root.render(<Notice>{NO_ANSWER}</Notice>), PATIENCE_MS);
  void Office.onReady(({ host }) => {
    clearTimeout(impatience);
    // Nothing of Excel may be touched before this point.
    if (host === Office.HostType.Excel) {
      const workbook = new ExcelWorkbook();
      void findDateSystem(workbook);
      root.render(<ExcelPane workbook={workbook} />);
    } else root.render(<Notice>{NOT_EXCEL}</Notice>);
  });
}
