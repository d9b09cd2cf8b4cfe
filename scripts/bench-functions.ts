/* npx tsx scripts/bench-functions.ts: how fast the gases and the worksheet functions are on this machine. */
import { pathToFileURL } from "node:url";
import { planFill, type FillOrder } from "../src/blending/planFill";
import { realGas } from "../src/gas/equationOfState";
import { AIR, mixture, OXYGEN } from "../src/gas/mixture";
import type { Argument } from "../src/typed/cells";
import { evaluate } from "../src/functions/evaluate";

const ROWS = 10_000;

/** What others reach, published or measured with the same points: for comparison, not a limit. */
const ANCHOR =
  "compiled reference code of the equation (NIST AGA8, C++): 0.4 to 1.1 million/s on a 2-core cloud machine";

export function benchFunctions(print: (line: string) => void): void {
  print("Gases and worksheet functions (best of several runs, one thread)");
  const density = perSecond(ROWS, densities);
  print(`  density solves, N2-O2-Ar-He, pressure and temperature vary   ${millions(density.best)}`);
  print(
    `  the same, composition varies too                             ${millions(perSecond(ROWS, densitiesOfMixes).best)}`,
  );
  print(`    ${ANCHOR}`);
  const plan = perSecond(ROWS, plans);
  print(
    `  fill plans, trimix from a residue                            ${thousands(plan.best)} (goal 100 thousand/s; ${microseconds(plan.best)} each)`,
  );
  for (const [name, given] of CALLS) {
    const { first, best } = perSecond(ROWS, () => evaluate(name, given));
    print(
      `  ${`${name}, a column of ${ROWS} rows`.padEnd(60)} ${milliseconds(ROWS / best)} (${milliseconds(ROWS / first)} the first time)`,
    );
  }
  print(`  ${"one STOPAT of single values".padEnd(60)} ${microseconds(perSecond(1000, oneByOne).best)}`);
}

function densities(): void {
  const trimix = mixture(0.18, 0.45);
  for (let i = 0; i < ROWS; i++) realGas.density(trimix, 10 + (i % 300), 270 + (i % 50));
}

function densitiesOfMixes(): void {
  for (let i = 0; i < ROWS; i++) {
    realGas.density({ oxygen: 0.1 + (i % 30) / 100, helium: (i % 60) / 100 }, 10 + (i % 300), 270 + (i % 50));
  }
}

function plans(): void {
  const order: FillOrder = {
    startPressureBar: 50,
    startMix: mixture(0.32),
    endPressureBar: 233,
    endMix: mixture(0.18, 0.45),
    topMix: AIR,
    oxygenSupply: OXYGEN,
    temperatureK: 293.15,
    order: "helium first",
    equation: realGas,
  };
  for (let i = 0; i < ROWS; i++) planFill({ ...order, startPressureBar: 20 + (i % 40) });
}

function oneByOne(): void {
  for (let i = 0; i < 1000; i++) evaluate("STOPAT", ["oxygen", i, "EAN32", 3000, "EAN36", "psi"]);
}

const MIXES = ["EAN32", "air", 36, "28", 0.5, "TX 18/45", "EAN50", "EAN30"];
const mixes = columnOf((row) => MIXES[row % MIXES.length]!);
const CALLS: readonly (readonly [name: string, given: readonly Argument[]])[] = [
  ["MOD", [mixes, "ft"]],
  ["STOPAT", ["oxygen", columnOf((row) => row % 1000), "EAN32", 3000, "EAN36", "psi"]],
  ["MIXAFTER", [columnOf((row) => row % 1000), "EAN32", 3000, "air", "psi"]],
  ["HYDRODUE", [columnOf((row) => 44_000 + (row % 2000)), "US"]],
  ["FILLCHECK", [columnOf((row) => 46_000 + (row % 300)), "2022/10", "2026/03", 40, 32, "premix", "US"]],
];

function columnOf(cell: (row: number) => string | number): Argument {
  return Array.from({ length: ROWS }, (_, row) => [cell(row)]);
}

/** Of so many things done in one run: per second the first time, and at best. */
function perSecond(things: number, run: () => unknown): { readonly first: number; readonly best: number } {
  const seconds = Array.from({ length: 12 }, () => {
    const start = performance.now();
    run();
    return (performance.now() - start) / 1000;
  });
  return { first: things / seconds[0]!, best: things / Math.min(...seconds) };
}

const millions = (rate: number) => `${(rate / 1e6).toFixed(2)} million/s`;
const thousands = (rate: number) => `${(rate / 1e3).toFixed(0)} thousand/s`;
const milliseconds = (seconds: number) => `${(seconds * 1000).toFixed(1)} ms`;
const microseconds = (rate: number) => `${(1e6 / rate).toFixed(1)} µs`;

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  benchFunctions((line) => console.log(line));
