import { writtenIn, type FieldName, type FillForm } from "../form";

const AIR_PERCENT = 20.9;
const AIR_OFF_POINTS = 0.3;
const LEAST_ON_OXYGEN_PERCENT = 97;

/**
 * What is wrong with the analyser by its readings on air and on oxygen: a cell that reads air well may be dead at the
 * rich end. Common practice, no source.
 */
export function analyserOff(form: FillForm): readonly string[] {
  const air = percentIn(form, "airReading");
  const oxygen = percentIn(form, "oxygenReading");
  return [
    ...(air > 0 && Math.abs(air - AIR_PERCENT) > AIR_OFF_POINTS ? ["on air it should read 20.9"] : []),
    ...(oxygen > 0 && oxygen < LEAST_ON_OXYGEN_PERCENT
      ? ["on oxygen it reads low: the cell may be worn out"]
      : []),
  ];
}

/** NaN where no number is written. */
export function percentIn(form: FillForm, name: FieldName): number {
  return Number(writtenIn(form, name).text.replace(",", "."));
}
