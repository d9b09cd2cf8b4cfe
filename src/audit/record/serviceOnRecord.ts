import { readClassStamp } from "../../cylinders/classStamp";
import { servicePressure, type ServicePressure } from "../../cylinders/servicePressure";
import { lackingOnRecord, twoCylinders } from "../judge/lacks";
import type { FilledCylinder, NotJudged, Place } from "../judge/rule";
import type { CylinderOnRecord } from "./cylinderOnRecord";
import { oncePerCylinder, read } from "./readField";

/** What a cylinder may be filled to, by all that is known of it: the figure, the stamp, the size. */
export interface ServiceOnRecord extends ServicePressure {
  /** Where the lowest of them stands. */
  readonly at: Place;
  /** As people write it. */
  readonly unit: "psi" | "bar" | undefined;
}

const FIELDS = { figure: "servicePressure", stamp: "cylinderClass", size: "size" } as const;

/** The lowest service pressure that is known; undefined where nothing says any. */
export const serviceOf = oncePerCylinder((cylinder): ServiceOnRecord | undefined => {
  const figure = read(cylinder, "servicePressure").reading;
  const stamp = read(cylinder, "cylinderClass").reading;
  const size = read(cylinder, "size").reading;
  const known = servicePressure({
    figureBar: figure.kind === "value" ? figure.value.bar : undefined,
    stamp: stamp.kind === "value" ? readClassStamp(stamp.value) : undefined,
    size: size.kind === "value" ? size.value : undefined,
  });
  return (
    known && {
      ...known,
      at: placeOf(cylinder, known.from),
      unit: figure.kind === "value" ? figure.value.written.unit : undefined,
    }
  );
});

/** Where figure, stamp or size stands. */
export function placeOf(cylinder: CylinderOnRecord, from: keyof typeof FIELDS): Place {
  return read(cylinder, FIELDS[from]).at;
}

/** The lowest service pressure, or the verdict that none is known. */
export function knownService(filled: FilledCylinder): ServiceOnRecord | NotJudged {
  const doubt = twoCylinders(filled);
  if (doubt) return doubt;
  const { reading, at } = read(filled.cylinder, "servicePressure");
  return (
    serviceOf(filled.cylinder) ??
    lackingOnRecord(filled, reading as Exclude<typeof reading, { kind: "value" }>, at)
  );
}

/** Why the lowest may be lower still: a figure stands there, and cannot be read for certain. */
export function figureInDoubt({
  cylinder,
}: FilledCylinder):
  Exclude<ReturnType<typeof read<"servicePressure">>["reading"], { kind: "value" | "blank" }> | undefined {
  const { reading } = read(cylinder, "servicePressure");
  return reading.kind === "value" || reading.kind === "blank" ? undefined : reading;
}
