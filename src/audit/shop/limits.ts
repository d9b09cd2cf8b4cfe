import type { CountryRules, CylinderRules, Interval, OxygenRules } from "../../cylinders/countryRules";
import { FIGURE_PROSE } from "./figureProse";
import { sourceFor } from "./citation";
import type { HouseSetting } from "./houseSetting";
import { type HouseFigures, type HouseOverrides, type Shop, shopOf } from "./shop";

/** A figure of the shop's own, as every report lists it. */
export interface Override {
  readonly id: string;
  readonly name: string;
  /** `36 months`. */
  readonly figure: string;
  /** What the country or the trade says: `60 months`. */
  readonly instead: string;
  readonly source: string;
  /** Why the figure could not be used; the other one then holds. */
  readonly problem?: string;
}

/** Every figure that a shop under these rules can set, in the order of the form. */
export function settingsFor(rules: CountryRules): readonly HouseSetting[] {
  const settings = [
    ...TESTS_AS_A_WHOLE.filter(
      ({ id }) => id !== "visualDue" || rules.cylinders.some(({ visual }) => visual),
    ),
    ...figureSettings(rules),
    ...oxygenSettings(rules),
    ...rules.cylinders.flatMap(intervalSettings),
  ];
  return settings.map((setting) => ({ ...setting, source: sourceFor(rules, setting) }));
}

/** The shop with its own figures in place, and the list of them. */
export function shopWith(
  rules: CountryRules,
  house: HouseOverrides = {},
): { readonly shop: Shop; readonly overrides: readonly Override[] } {
  const asItComes = shopOf(rules);
  let shop = asItComes;
  const overrides: Override[] = [];
  for (const setting of settingsFor(rules)) {
    const value = house[setting.id];
    const instead = setting.of(asItComes);
    if (value === undefined || value === instead) continue;
    const problem = problemWith(setting, value);
    if (problem === undefined) shop = setting.set(shop, value);
    overrides.push({
      id: setting.id,
      name: setting.group === "" ? setting.name : `${setting.group}: ${setting.name}`,
      figure: inUnit(value, setting),
      instead: inUnit(instead, setting),
      source: setting.source,
      ...(problem !== undefined && { problem }),
    });
  }
  return { shop, overrides };
}

/** Why a setting cannot be this, in a sentence; undefined where it can. */
export function problemWith({ limits }: HouseSetting, value: number | string): string | undefined {
  if ("choices" in limits)
    return limits.choices.includes(String(value)) ? undefined : `Choose ${limits.choices.join(" or ")}.`;
  return typeof value === "number" && value >= limits.least && value <= limits.most
    ? undefined
    : `Write a number from ${limits.least} to ${limits.most}.`;
}

/** `36 months`; a choice as it stands. */
export function inUnit(value: number | string, { unit }: Pick<HouseSetting, "unit">): string {
  return unit === "" ? String(value) : `${value} ${unit}`;
}

function figureSettings(rules: CountryRules): readonly HouseSetting[] {
  return (Object.keys(FIGURE_PROSE) as (keyof HouseFigures)[]).map((id): HouseSetting => {
    const { source, basis = "practice", ...prose } = FIGURE_PROSE[id];
    return {
      ...prose,
      id,
      basis,
      source: typeof source === "string" ? source : source(rules),
      of: ({ figures }) => figures[id],
      set: (shop, value) => ({ ...shop, figures: { ...shop.figures, [id]: value } }),
    };
  });
}

function oxygenSettings({ oxygen }: CountryRules): readonly HouseSetting[] {
  const setting = (
    id: "airOnlyMaxPercent" | "cleanAbovePercent" | "cleanMonths",
    prose: Pick<HouseSetting, "name" | "unit" | "basis" | "source" | "limits">,
  ): HouseSetting => ({
    ...prose,
    id,
    group: "Oxygen",
    of: ({ rules }) => rules.oxygen[id],
    set: (shop, value) => withOxygen(shop, { [id]: value }),
  });
  return [
    setting("airOnlyMaxPercent", {
      name: "A cylinder marked air only may have",
      unit: "% oxygen",
      basis: "practice",
      source: oxygen.airOnlySource,
      limits: { least: 21, most: 40 },
    }),
    setting("cleanAbovePercent", {
      name: "Oxygen clean is needed for gas above",
      unit: "% oxygen",
      basis: oxygen.cleanBasis,
      source: oxygen.cleanSource,
      limits: { least: 21, most: 40 },
    }),
    setting("cleanMonths", {
      name: "An oxygen cleaning holds",
      unit: "months",
      basis: "practice",
      source: oxygen.cleanMonthsSource,
      limits: { least: 1, most: 60 },
    }),
  ];
}

function withOxygen(shop: Shop, change: Partial<OxygenRules>): Shop {
  return { ...shop, rules: { ...shop.rules, oxygen: { ...shop.rules.oxygen, ...change } } };
}

/** Settings that hold for the tests of every class. */
const TESTS_AS_A_WHOLE: readonly HouseSetting[] = [
  {
    id: "visualDue",
    group: "Tests",
    name: "A visual holds to the",
    unit: "",
    basis: "practice",
    source: "US trade practice: end of month; some inspectors: first of month",
    limits: { choices: ["end of month", "first of month", "exact date"] },
    of: ({ rules }) => rules.cylinders.find(({ visual }) => visual !== null)?.visual?.due ?? "end of month",
    set: (shop, value) =>
      withCylinders(shop, (cylinder) => ({
        ...cylinder,
        visual: cylinder.visual && ofTheHouse(cylinder.visual, { due: value as Interval["due"] }),
      })),
  },
  {
    id: "hydroCountsAsVisual",
    group: "Tests",
    name: "A hydro counts as a visual",
    unit: "",
    basis: "practice",
    source: "49 CFR 180.205(f)",
    limits: { choices: ["yes", "no"] },
    of: ({ rules }) => (rules.cylinders.every((each) => each.hydroCountsAsVisual) ? "yes" : "no"),
    set: (shop, value) =>
      withCylinders(shop, (cylinder) => ({ ...cylinder, hydroCountsAsVisual: value === "yes" })),
  },
];

function withCylinders(shop: Shop, change: (cylinder: CylinderRules) => CylinderRules): Shop {
  return { ...shop, rules: { ...shop.rules, cylinders: shop.rules.cylinders.map(change) } };
}

/** An interval of the shop's own; what the country says stays beside it. */
function ofTheHouse(interval: Interval, change: Partial<Interval>): Interval {
  return {
    ...interval,
    ...change,
    basis: "house",
    source: "rule of this shop",
    own: interval.own ?? interval,
  };
}

const TEST_NAMES = { hydro: "Hydro", visual: "Visual", eddyCurrent: "Eddy current" } as const;

/** The intervals and limits of one class of cylinder. */
function intervalSettings(cylinder: CylinderRules): readonly HouseSetting[] {
  const { id, name: group } = cylinder;
  const change = (shop: Shop, changed: (cylinder: CylinderRules) => CylinderRules): Shop =>
    withCylinders(shop, (each) => (each.id === id ? changed(each) : each));
  const find = ({ rules }: Shop): CylinderRules => rules.cylinders.find((each) => each.id === id) ?? cylinder;
  const intervals = (["hydro", "visual", "eddyCurrent"] as const).flatMap((test): HouseSetting[] => {
    const interval = cylinder[test];
    if (!interval || interval.months === 0) return [];
    const { basis, source } = interval;
    const setting = (what: "months" | "firstMonths", settingName: string, months: number): HouseSetting => ({
      id: `${id}.${test}.${what}`,
      group,
      name: settingName,
      unit: "months",
      basis,
      source,
      limits: { least: 1, most: 240 },
      of: (shop) => find(shop)[test]?.[what] ?? months,
      set: (shop, value) =>
        change(shop, (each) => ({
          ...each,
          [test]: each[test] && ofTheHouse(each[test], { [what]: Number(value) }),
        })),
    });
    return [
      setting("months", `${TEST_NAMES[test]} every`, interval.months),
      ...(interval.firstMonths === undefined
        ? []
        : [setting("firstMonths", `First ${TEST_NAMES[test].toLowerCase()} after`, interval.firstMonths)]),
    ];
  });
  const { serviceLifeMonths, oxygenMaxPercent, oxygenMaxSource = "" } = cylinder;
  const basis = cylinder.hydro?.basis ?? "practice";
  const limit = (
    key: "serviceLifeMonths" | "oxygenMaxPercent",
    value: number | undefined,
    prose: Pick<HouseSetting, "name" | "unit" | "source" | "limits">,
  ): readonly HouseSetting[] =>
    value === undefined
      ? []
      : [
          {
            ...prose,
            id: `${id}.${key}`,
            group,
            basis,
            of: (shop) => find(shop)[key] ?? value,
            set: (shop, set) => change(shop, (each) => ({ ...each, [key]: Number(set) })),
          },
        ];
  return [
    ...intervals,
    ...limit("serviceLifeMonths", serviceLifeMonths, {
      name: "Service life",
      unit: "months",
      source: cylinder.hydro?.source ?? "",
      limits: { least: 12, most: 600 },
    }),
    ...limit("oxygenMaxPercent", oxygenMaxPercent, {
      name: "Oxygen at most",
      unit: "%",
      source: oxygenMaxSource,
      limits: { least: 21, most: 100 },
    }),
  ];
}
