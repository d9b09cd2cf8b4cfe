import type { FilledCylinder } from "../../src/audit/judge/rule";
import type { Shop } from "../../src/audit/shop/shop";
import { walk } from "../../src/audit/walk/walk";
import type { Log } from "../../src/log/log";
import { allAtOnce } from "../../src/sheet/steps";

/** Every cylinder of every fill, in the order they were made. */
export function walked(log: Log, shop: Shop): readonly FilledCylinder[] {
  const all: FilledCylinder[] = [];
  allAtOnce(walk(log, shop, ({ filled }) => all.push(filled)));
  return all;
}
