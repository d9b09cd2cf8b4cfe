import { suspectSteps, type SuspectCylinder } from "../../audit/lists/suspectGas";
import type { AirTest } from "../../audit/shop/shop";
import type { LogBook } from "../logBook";
import { auditOptionsOf } from "../terms";
import { told, type ToldSteps } from "../worker/told";

/** A bad air test. */
export interface BadAir {
  readonly failed: AirTest;
  /** The good ones before and after it that are known, besides those on record. */
  readonly good: readonly AirTest[];
}

/** Every cylinder that may hold gas of a bad air test. */
export interface SuspectGas {
  readonly failed: AirTest;
  readonly cylinders: readonly SuspectCylinder[];
}

/** Which cylinders may hold gas of a bad air test, and how much of it. */
export function* suspectGas(book: LogBook, { failed, good }: BadAir): ToldSteps<SuspectGas> {
  const log = yield* book.log(0, 0.5);
  const options = auditOptionsOf(book.terms);
  const airTests = [...(options.airTests ?? []), ...good];
  const steps = suspectSteps(log, book.rules, failed, { ...options, airTests });
  return { failed, cylinders: yield* told("Following the gas", 0.5, 1, steps) };
}
