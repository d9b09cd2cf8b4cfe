import { readFileSync } from "node:fs";
import type { EquationOfState } from "../../src/gas/equationOfState";
import { gerg2008Density, gerg2008Pressure } from "../../src/gas/gerg2008";
import { nitrogenOf, type Composition, type Mixture } from "../../src/gas/mixture";

export function text(fileName: string): string {
  return readFileSync(new URL(`./${fileName}`, import.meta.url), "utf8");
}

export function json<T>(fileName: string): T {
  return JSON.parse(text(fileName)) as T;
}

/** GERG-2008 with plain nitrogen for what is neither oxygen nor helium: the air of many a textbook. */
export const withoutArgon: EquationOfState = {
  name: "real",
  density: (mix, pressureBar, temperatureK) => gerg2008Density(plain(mix), pressureBar, temperatureK),
  pressure: (mix, density, temperatureK) => gerg2008Pressure(plain(mix), density, temperatureK),
};

function plain(mix: Mixture): Composition {
  return { nitrogen: nitrogenOf(mix), oxygen: mix.oxygen, argon: 0, helium: mix.helium };
}

/** Mole fractions of the gases that the published tables are about. */
export const PURE_GASES: Readonly<Record<string, Composition>> = {
  N2: { nitrogen: 1, oxygen: 0, argon: 0, helium: 0 },
  O2: { nitrogen: 0, oxygen: 1, argon: 0, helium: 0 },
  Ar: { nitrogen: 0, oxygen: 0, argon: 1, helium: 0 },
  He: { nitrogen: 0, oxygen: 0, argon: 0, helium: 1 },
  air: {
    nitrogen: 0.78084 / 0.99964,
    oxygen: 0.20946 / 0.99964,
    argon: 0.00934 / 0.99964,
    helium: 0,
  },
};
