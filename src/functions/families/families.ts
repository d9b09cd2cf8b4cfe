import * as cylinders from "./cylinders";
import type { WorksheetFunction } from "../define";
import * as depth from "./depth";
import * as fills from "./fills";
import * as gasInCylinder from "./gasInCylinder";
import * as mixes from "./mixes";
import * as money from "./money";
import * as topping from "./topping";

/** The families of functions, in the order of the reference page. */
export const FAMILIES: readonly {
  readonly title: string;
  readonly functions: readonly WorksheetFunction[];
}[] = [
  { title: "Mixes", functions: [mixes.MIX, mixes.MIXPART] },
  {
    title: "Depth",
    functions: [
      depth.MOD,
      depth.MINDEPTH,
      depth.OXYGENPP,
      depth.BESTMIX,
      depth.EAD,
      depth.END,
      depth.GASDENSITY,
    ],
  },
  {
    title: "Blending",
    functions: [
      fills.FILLSTEPS,
      fills.ADDGAS,
      fills.STOPAT,
      topping.MIXAFTER,
      topping.TOPWITH,
      topping.DRAINTO,
      topping.MIXOF,
      gasInCylinder.SETTLED,
      gasInCylinder.DECANT,
      gasInCylinder.INJECT,
      gasInCylinder.ZFACTOR,
    ],
  },
  {
    title: "Cylinders, log, money",
    functions: [
      cylinders.TESTDATE,
      cylinders.HYDRODUE,
      cylinders.VISUALDUE,
      cylinders.FILLCHECK,
      money.FREEGAS,
      money.GASUSED,
      money.FILLCOST,
      money.LABELTEXT,
      cylinders.PRESSURELIMIT,
      gasInCylinder.WATERVOLUME,
      gasInCylinder.FILLSLEFT,
    ],
  },
];

/** All functions but WHY. */
export const FUNCTIONS: readonly WorksheetFunction[] = FAMILIES.flatMap(({ functions }) => functions);
