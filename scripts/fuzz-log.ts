import fc from "fast-check";
import { anyContext, anySheet, anyTableInAnyOrder } from "../tests/log/anySheet";
import { checkLaws, checkRowOrder } from "../tests/log/lawsOfReading";

/*
 * Reads random and mutated sheets for as long as told: npx tsx scripts/fuzz-log.ts [seconds, 60 by default] [seed]
 * Ends with 1 at the first sheet that breaks a law of reading or takes longer than it should, shrunk to its core.
 */
const seconds = Number(process.argv[2] ?? 60);
const seed = Number(process.argv[3] ?? Date.now() % 2 ** 31);
/** A sheet of 25 rows takes a few milliseconds; a pattern that backtracks takes minutes. */
const LONGEST_MILLISECONDS = 5000;

function timed(act: () => void): void {
  const start = performance.now();
  act();
  const took = performance.now() - start;
  if (took > LONGEST_MILLISECONDS) throw new Error(`Took ${Math.round(took)} ms.`);
}

function run(name: string, property: fc.IProperty<unknown>): boolean {
  const result = fc.check(property, {
    seed,
    numRuns: Number.MAX_SAFE_INTEGER,
    interruptAfterTimeLimit: (seconds * 1000) / 2,
    markInterruptAsFailure: false,
  });
  console.log(`${name}: ${result.numRuns} runs, seed ${seed}, ${result.failed ? "FAILED" : "ok"}`);
  if (result.failed) {
    console.error(fc.defaultReportMessage(result as fc.RunDetails<unknown>));
    console.error(result.errorInstance);
  }
  return !result.failed;
}

const ok = [
  run(
    "laws of reading",
    fc.property(fc.array(anySheet, { maxLength: 3 }), anyContext, (sheets, context) => {
      timed(() => {
        checkLaws(sheets, context);
      });
    }) as fc.IProperty<unknown>,
  ),
  run(
    "order of rows",
    fc.property(anyTableInAnyOrder, ([table, order]) => {
      timed(() => {
        checkRowOrder(table, order);
      });
    }) as fc.IProperty<unknown>,
  ),
];
process.exitCode = ok.every(Boolean) ? 0 : 1;
