import { serveDesk } from "../kit/deskWorker";
import { CostDesk } from "./costDesk";

serveDesk((sheets) => new CostDesk(sheets));
