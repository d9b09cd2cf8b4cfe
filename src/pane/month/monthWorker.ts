import { serveSheets } from "../kit/sheetEngine";
import { MonthDesk } from "./monthDesk";

serveSheets((sheets) => new MonthDesk(sheets));
