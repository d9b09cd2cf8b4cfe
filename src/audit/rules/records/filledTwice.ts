import type { Fill } from "../../../log/log";
import type { Reading } from "../../../log/reading";
import { lacking } from "../../judge/lacks";
import {
  DOES_NOT_APPLY,
  notJudged,
  PASS,
  type FilledCylinder,
  type Rule,
  type Verdict,
} from "../../judge/rule";
import { minuteOf } from "../../walk/timeOrder";
import { pressureText } from "../../../words/inSentences";

/** From this share of the last end pressure on it is the same fill, cooled and topped. */
const TOPPED_AFTER_COOLING = 0.8;

/** One cylinder filled twice faster than it can be breathed empty: a serial or a row is wrong. Common practice, no source. */
export const filledTwice: Rule = {
  id: "R07",
  rank: 47,
  title: "One cylinder filled twice within minutes",
  needs: [["date"], ["serial", "shopNumber"]],
  judge(filled, { figures }) {
    const { fill, day, past } = filled;
    const { last } = past;
    if (last === undefined) return DOES_NOT_APPLY;
    if (day === undefined || last.day === undefined)
      return notJudged("a fill of the cylinder has no date that can be read", { field: "date" });
    if (last.day !== day) return DOES_NOT_APPLY;
    if (saysTheSame(fill, last.fill))
      return fault("The same fill of this cylinder stands here twice that day.");
    if (isToppedUp(filled)) return PASS;
    const { time } = fill.fields;
    const before = last.fill.fields.time;
    if (time.kind !== "value") return lacking(time, { field: "time" });
    if (before.kind !== "value")
      return notJudged("its fill before on the same day has no time that can be read", { field: "serial" });
    const minutes = minuteOf(time.value) - minuteOf(before.value);
    if (minutes > figures.sameCylinderMinutes) return PASS;
    return fault(`This cylinder was filled ${minutes} minutes before${emptied(filled)}.`);
  },
};

function fault(message: string): Verdict {
  return {
    kind: "fault",
    severity: "warn",
    basis: "practice",
    source: "common practice, no source",
    message,
    todo: "Compare the serial with the cylinder, and strike out the row that is too many.",
    at: { field: "serial" },
  };
}

/** The same readings and, where they have them, the same time. */
function saysTheSame({ fields: one }: Fill, { fields: other }: Fill): boolean {
  return (
    isSame(one.startPressure, other.startPressure, (start) => start.bar) === true &&
    isSame(one.endPressure, other.endPressure, (end) => end.bar) === true &&
    isSame(one.analysedMix, other.analysedMix, ({ oxygen }) => oxygen) !== false &&
    isSame(one.orderedMix, other.orderedMix, ({ oxygen }) => oxygen) !== false &&
    isSame(one.time, other.time, minuteOf) !== false
  );
}

/** Undefined where either is not known. */
function isSame<T>(one: Reading<T>, other: Reading<T>, number: (value: T) => number): boolean | undefined {
  if (one.kind !== "value" || other.kind !== "value") return undefined;
  return number(one.value) === number(other.value);
}

/** It stood there nearly full when the second fill began. */
function isToppedUp({ fill, past }: FilledCylinder): boolean {
  const { startPressure } = fill.fields;
  const left = past.last?.pressureBar;
  return (
    startPressure.kind === "value" &&
    left !== undefined &&
    startPressure.value.bar >= left * TOPPED_AFTER_COOLING
  );
}

function emptied({ fill, past }: FilledCylinder): string {
  const { startPressure } = fill.fields;
  const left = past.last?.pressureBar;
  if (startPressure.kind !== "value" || left === undefined) return "";
  const { unit } = startPressure.value.written;
  return `, to ${pressureText(left, unit)}, and is back with ${pressureText(startPressure.value.bar, unit)}`;
}
