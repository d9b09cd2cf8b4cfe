import { serveDesk } from "../kit/deskWorker";
import { MonthDesk } from "./monthDesk";

serveDesk((sheets) => new MonthDesk(sheets));
