import type { OxygenService } from "../../cylinders/oxygenService";
import { readOxygenService } from "../../cylinders/readOxygenService";
import { Refusal } from "../../gas/refusal";
import { showsDate } from "../../sheet/numberFormat";
import { ambiguous, unreadable, value, type Reading } from "../reading";
import { ofNoUse, plain, sayingNothing, tidy, type Cell } from "./cell";

const YES = /^(?:y|yes|ja|oui|si|ok|x|✓|✔|true)$/;
const NO = /^(?:n|no|nein|non|false|✗|✘)$/;

const OXYGEN_CLEAN: OxygenService = { maxOxygen: 1, oxygenClean: true };
const AIR_ONLY: OxygenService = { maxOxygen: undefined, oxygenClean: false };
const TO_FORTY: OxygenService = { maxOxygen: 0.4, oxygenClean: false };

/** What a yes in this column says: that the cylinder is clean for oxygen, or only that it takes nitrox. */
export interface OxygenServiceColumn {
  readonly asks: "oxygen clean" | "nitrox" | "grade";
}

/** Reads a cylinder's oxygen rating; a plain yes or no as the column's heading asks. */
export function readOxygenServiceCell(cell: Cell, column: OxygenServiceColumn): Reading<OxygenService> {
  if (typeof cell.value === "object") return ofNoUse(cell, "an oxygen rating");
  if (typeof cell.value === "number") {
    if (showsDate(cell.format))
      return unreadable("A date stands where the oxygen rating belongs. Write AIR, 40 or O2 clean.");
    return rating(cell.value);
  }
  const text = plain(String(cell.value));
  if (YES.test(text)) {
    if (column.asks === "oxygen clean") return value(OXYGEN_CLEAN);
    return ambiguous(
      [TO_FORTY, OXYGEN_CLEAN],
      "Yes to nitrox: premixed up to 40 %, or cleaned for oxygen? Write 40 or O2 clean.",
    );
  }
  if (NO.test(text)) {
    if (column.asks === "nitrox") return value(AIR_ONLY);
    return ambiguous(
      [AIR_ONLY, TO_FORTY],
      "Not cleaned for oxygen, but nothing says how rich it may be filled. Write AIR or 40.",
    );
  }
  return sayingNothing(text) ?? rating(tidy(String(cell.value)));
}

function rating(written: string | number): Reading<OxygenService> {
  try {
    return value(readOxygenService(written));
  } catch (thrown) {
    if (thrown instanceof Refusal) return unreadable(thrown.message);
    throw thrown;
  }
}
