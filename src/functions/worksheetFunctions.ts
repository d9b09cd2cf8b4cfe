import type { WorksheetFunction } from "./define";
import * as depth from "./depth";
import * as mixes from "./mixes";

/** All functions but WHY, in the order of the reference page. */
export const FUNCTIONS: readonly WorksheetFunction[] = [...Object.values(mixes), ...Object.values(depth)];
