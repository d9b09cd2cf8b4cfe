/*
 * Makes the sample logs and the keys of what is wrong in them on purpose: `npx tsx scripts/make-samples.ts`.
 * Two runs give the same bytes. It knows nothing of how logs are read and checked, so that a test can compare both.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { gannetPoint } from "./samples/gannetPoint";
import { finished } from "./samples/storedXlsx";

const SAMPLES = new URL("../shared/samples/", import.meta.url);

const { workbook, key, settings } = gannetPoint();
const bytes = finished(new Uint8Array(await workbook.xlsx.writeBuffer()), settings);
mkdirSync(SAMPLES, { recursive: true });
writeFileSync(new URL("gannet-point.xlsx", SAMPLES), bytes);
writeFileSync(new URL("gannet-point.key.json", SAMPLES), `${JSON.stringify(key, null, 2)}\n`);
console.log(
  `gannet-point.xlsx: ${key.rows.fills} fills, ${key.rows.cylinders} cylinders, ${key.findings.length} faults planted.`,
);
