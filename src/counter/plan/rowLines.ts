import type { WaitingCylinder } from "../receive/waitingRows";
import type { CylinderSize } from "../../cylinders/size";
import { figure } from "../../words/figures";
import { nameMix } from "../../gas/nameMix";
import { serialKey } from "../../log/cells/serial";

/** Between the parts of a line of the list. */
const APART = /[\t;,]/;

/** The lines of a list that hold anything. */
export function linesOf(list: string): readonly string[] {
  return list
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
}

export function partsOf(line: string): readonly string[] {
  return line.split(APART).map((part) => part.trim());
}

/** The cylinders of a list, as written. */
export function serialsIn(list: string): readonly string[] {
  return [...new Set(linesOf(list).flatMap((line) => partsOf(line)[0] || []))];
}

/** A list with cylinders added below, and those that stood in it before. */
export interface Added {
  readonly list: string;
  readonly added: readonly WaitingCylinder[];
  readonly known: readonly WaitingCylinder[];
}

/** What was typed stays as it is; a cylinder that is in the list is not added again. */
export function withWaiting(list: string, cylinders: readonly WaitingCylinder[]): Added {
  const keys = new Set(serialsIn(list).map(serialKey));
  const added: WaitingCylinder[] = [];
  const known: WaitingCylinder[] = [];
  for (const cylinder of cylinders) {
    const key = serialKey(cylinder.serial);
    (keys.has(key) ? known : added).push(cylinder);
    keys.add(key);
  }
  const lines = [...(list.trim() === "" ? [] : [list.trimEnd()]), ...added.map(lineOf)];
  return { list: lines.join("\n"), added, known };
}

/** What these cylinders are to be filled with, each mix with those that order it. */
export function orders(
  cylinders: readonly WaitingCylinder[],
): ReadonlyMap<string, readonly WaitingCylinder[]> {
  const byMix = new Map<string, WaitingCylinder[]>();
  for (const cylinder of cylinders) {
    if (!cylinder.ordered) continue;
    const name = nameMix(cylinder.ordered);
    byMix.set(name, [...(byMix.get(name) ?? []), cylinder]);
  }
  return byMix;
}

/** Serial, size, pressure and mix, as the list is typed; what is not known is left open. */
function lineOf({ serial, size, left, mix }: WaitingCylinder): string {
  const parts = [
    serial,
    size ? sizeText(size) : "",
    left ? `${left.value} ${left.unit}` : "",
    mix ? nameMix(mix) : "",
  ].map((part) => part.replace(/[\t;,\s]+/g, " ").trim());
  while (parts.at(-1) === "") parts.pop();
  return parts.join(", ");
}

/** By its name, unless that would come apart in the list: `2x8,5`. */
function sizeText({ name, waterVolumeL }: CylinderSize): string {
  return name === undefined || APART.test(name) ? figure(waterVolumeL, 2) : name;
}
