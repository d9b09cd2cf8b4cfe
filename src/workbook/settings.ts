import { z } from "zod";
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
  const parsed = shopSettings.safeParse(typeof stored === "string" ? fromJson(stored) : stored);
  if (parsed.success) return { settings: parsed.data };
  return {
    settings: { ...NO_SETTINGS, setAside: stored },
    notice: newerVersion(stored)
      ? "The settings in this workbook were written by a newer Brimbook. Answer the questions again here; the newer settings are set aside in the workbook, not thrown away."
      : "The settings in this workbook could not be read. Answer the questions again; the old settings are set aside in the workbook, not thrown away.",
  };
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function newerVersion(stored: unknown): boolean {
  const document = z.looseObject({ version: z.number().gt(1) });
  return document.safeParse(typeof stored === "string" ? fromJson(stored) : stored).success;
}
