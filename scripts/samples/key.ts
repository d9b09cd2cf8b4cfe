/*
 * What is wrong in a sample on purpose. It is written from what was planted, never from what a check found, so that a
 * test can compare the two.
 */

export interface KeyCell {
  readonly sheet: string;
  readonly cell: string;
}

/** A fault that a check has to find. */
export interface PlantedFault extends KeyCell {
  readonly rule: string;
  readonly severity: "stop" | "breach" | "warn" | "note";
  readonly serial: string;
  /** ISO date of the fill; empty where the fault is the register's. */
  readonly fillDate: string;
}

/** Fills that a rule cannot judge, for this reason. */
export interface PlantedLack {
  readonly rule: string;
  readonly why: string;
  readonly fills: number;
  /** Where the reason stands, each cell once. */
  readonly cells: readonly KeyCell[];
}

/** Every physical row of the log's sheets, by kind. */
export interface RowKey {
  readonly total: number;
  readonly fills: number;
  readonly cylinders: number;
  readonly blank: number;
  readonly headings: number;
  readonly totals: number;
  readonly unreadable: number;
}

/** What the shop has told besides, as its workbook keeps it. */
export interface SampleShop {
  readonly airTests: readonly { readonly date: string; readonly passed: boolean; readonly source?: string }[];
  readonly sources: readonly {
    readonly name: string;
    readonly oxygenCompatible: boolean;
    readonly mix?: { readonly oxygen: number; readonly helium: number };
  }[];
}

export interface SampleKey {
  readonly about: string;
  readonly file: string;
  readonly country: string;
  readonly units: "us" | "metric";
  readonly asOf: string;
  /** Sheets that are the log; the others are not to be read as one. */
  readonly sheets: readonly string[];
  readonly rows: RowKey;
  readonly findings: readonly PlantedFault[];
  readonly notChecked: readonly PlantedLack[];
}
