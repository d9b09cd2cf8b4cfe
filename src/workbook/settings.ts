import { z } from "zod";
import { MOST_SETTINGS_CHARACTERS } from "./settingsPart";
import type { Workbook } from "./workbook";

/** The one key under which everything Brimbook keeps in a workbook stands, as one document. */
export const SETTINGS_KEY = "brimbook";

/**
 * What the shop said of one column. Columns are known by heading, and by order where a heading comes twice.
 * A field or a unit that was not corrected is absent and stays as found; `null` means the column is not to be read.
 */
const columnChoice = z.looseObject({
  heading: z.string(),
  /** Which of the columns with this heading, from 0. */
  nth: z.int().nonnegative().default(0),
  field: z.string().nullable().optional(),
  /** What the shop answered to the questions about this column: "unit" -> "psi". */
  answers: z.record(z.string(), z.string()).default({}),
});

const sheetChoice = z.looseObject({
  sheet: z.string(),
  /** Whether to check the sheet; absent where nobody said. */
  use: z.boolean().optional(),
  columns: z.array(columnChoice).default([]),
});

/** A test of the air, as the shop entered it. */
const airTest = z.object({
  date: z.iso.date(),
  passed: z.boolean(),
  /** The bank or compressor, as the log names it; absent for all the air of the shop. */
  source: z.string().min(1).optional(),
});

/** A bank or compressor, as the log names it. */
const gasSource = z.object({
  name: z.string().min(1),
  oxygenCompatible: z.boolean().optional(),
  /** Mole fractions. */
  mix: z.object({ oxygen: z.number().min(0).max(1), helium: z.number().min(0).max(1) }).optional(),
});

/** A finding that the shop lets stand: which one, why, who says so and since which day. */
const acceptance = z.looseObject({
  rule: z.string().min(1),
  serial: z.string(),
  /** ISO date of the fill; empty where the finding is about the register. */
  fillDate: z.union([z.literal(""), z.iso.date()]),
  sheet: z.string().min(1),
  cell: z.string().regex(/^[A-Z]+[1-9]\d*$/),
  /** What the finding rested on; one that does not say it holds no more, and the finding is open again. */
  evidence: z.string().default(""),
  reason: z.string().min(1),
  by: z.string().min(1),
  on: z.iso.date(),
});

/** A word of the log that no table knows, and what the shop said it means; `nothing` where it means nothing. */
const ownWord = z.object({ field: z.string().min(1), word: z.string().min(1), means: z.string().min(1) });

/** Loose on purpose: what a later Brimbook adds of its own survives being written back by this one. */
const shopSettings = z.looseObject({
  version: z.literal(1),
  /** Country whose rules the shop fills under, as `countryRules` knows it. Never assumed. */
  country: z.string().min(1).optional(),
  units: z.enum(["us", "metric"]).optional(),
  sheets: z.array(sheetChoice).default([]),
  /** Figures of the shop's own, by the id of the setting; which there are, and their limits, the audit knows. */
  house: z.record(z.string(), z.union([z.number(), z.string()])).optional(),
  airTests: z.array(airTest).optional(),
  sources: z.array(gasSource).optional(),
  accepted: z.array(acceptance).optional(),
  words: z.array(ownWord).optional(),
  /** As it stands on reports. */
  shopName: z.string().optional(),
  /** What stood in the workbook before and could not be understood, word for word. */
  setAside: z.unknown().optional(),
});

export type ColumnChoice = z.infer<typeof columnChoice>;
export type SheetChoice = z.infer<typeof sheetChoice>;
export type ShopSettings = z.infer<typeof shopSettings>;

export const NO_SETTINGS: ShopSettings = Object.freeze({ version: 1, sheets: [] }) as ShopSettings;

/** Settings as read, with a sentence for the user where something stored could not be used. */
export interface SettingsReading {
  readonly settings: ShopSettings;
  readonly notice?: string;
}

/**
 * The shop's settings in this workbook. What is stored but cannot be understood gives a notice, and is set aside
 * in the settings returned, so that writing them back loses nothing.
 *
 * @throws WorkbookProblem where the host cannot read its settings.
 */
export async function readShopSettings(workbook: Workbook): Promise<SettingsReading> {
  return understandSettings(await workbook.readSetting(SETTINGS_KEY));
}

/** Keeps the shop's settings in the workbook. Throws WorkbookProblem where the host cannot. */
export async function writeShopSettings(workbook: Workbook, settings: ShopSettings): Promise<void> {
  await workbook.writeSetting(SETTINGS_KEY, shopSettings.parse(settings));
}

/** As `readShopSettings`, from what was stored: a document, its JSON text, or nothing. */
export function understandSettings(stored: unknown): SettingsReading {
  if (stored === undefined || stored === null || stored === "") return { settings: NO_SETTINGS };
  if (typeof stored === "string" && stored.length > MOST_SETTINGS_CHARACTERS)
    return setAside(stored, TOO_LARGE);
  const document = typeof stored === "string" ? fromJson(stored) : stored;
  const parsed = shopSettings.safeParse(document);
  if (parsed.success) return { settings: parsed.data };
  const { version, ...parts } = anyDocument.safeParse(document).data ?? {};
  if (version === 1) return readableParts(parts);
  return setAside(stored, typeof version === "number" && version > 1 ? NEWER : UNREADABLE);
}

const KEPT = "The old settings are kept in the workbook.";
const TOO_LARGE = `The settings in this workbook are over the limit of 5 million characters and were not read. Answer the questions again. ${KEPT}`;
const NEWER = `The settings in this workbook were written by a newer Brimbook. Answer the questions again here. ${KEPT}`;
const UNREADABLE = `The settings in this workbook could not be read. Answer the questions again. ${KEPT}`;

function setAside(stored: unknown, notice: string): SettingsReading {
  return { settings: { ...NO_SETTINGS, setAside: stored }, notice };
}

const anyDocument = z.looseObject({ version: z.unknown() });

/** Parts that are lists or tables: an entry that cannot be read costs no other. */
const ENTRIES = {
  sheets: { entry: sheetChoice, name: "choices of sheets and columns" },
  airTests: { entry: airTest, name: "air tests" },
  sources: { entry: gasSource, name: "banks and compressors" },
  accepted: { entry: acceptance, name: "accepted findings" },
  words: { entry: ownWord, name: "words of the shop's own" },
} as const;
const NAMES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(ENTRIES).map(([part, { name }]) => [part, name])),
  house: "house figures",
  shopName: "shop name",
};

/** What can be read of settings of which something cannot; that is named, and set aside. */
function readableParts({ setAside: earlier, ...parts }: Record<string, unknown>): SettingsReading {
  const whole: [string, unknown][] = [];
  const broken: [string, unknown][] = earlier === undefined ? [] : [["setAside", earlier]];
  const names: string[] = [];
  for (const [part, value] of Object.entries(parts)) {
    if (shopSettings.safeParse({ version: 1, [part]: value }).success) whole.push([part, value]);
    else if (part in ENTRIES && Array.isArray(value)) {
      const { entry, name } = ENTRIES[part as keyof typeof ENTRIES];
      const isReadable = value.map((each) => entry.safeParse(each).success);
      whole.push([part, value.filter((_, index) => isReadable[index])]);
      broken.push([part, value.filter((_, index) => !isReadable[index])]);
      names.push(`${isReadable.filter((is) => !is).length} of ${value.length} ${name}`);
    } else {
      broken.push([part, value]);
      names.push(NAMES[part] ?? part);
    }
  }
  const aside = Object.fromEntries(broken);
  return {
    settings: shopSettings.parse({ version: 1, ...Object.fromEntries(whole), setAside: aside }),
    notice: `Some settings in this workbook could not be read: ${names.join(", ")}. Enter them again. ${KEPT}`,
  };
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
