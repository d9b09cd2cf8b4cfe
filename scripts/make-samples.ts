/*
 * Makes the sample logs and the keys of what is wrong in them on purpose: `npx tsx scripts/make-samples.ts`.
 * Two runs give the same bytes. It knows nothing of how logs are read and checked, so that a test can compare both.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { gannetPoint } from "./samples/gannetPoint";
import { skerryBay } from "./samples/skerryBay";
import { finished } from "./samples/storedXlsx";

const SAMPLES = new URL("shared/samples/", new URL("..", import.meta.url));
mkdirSync(SAMPLES, { recursive: true });

for (const { workbook, key, settings } of [gannetPoint(), { ...skerryBay(), settings: undefined }]) {
  const bytes = finished(new Uint8Array(await workbook.xlsx.writeBuffer()), settings);
  writeFileSync(new URL(key.file, SAMPLES), bytes);
  writeFileSync(
    new URL(key.file.replace(".xlsx", ".key.json"), SAMPLES),
    `${JSON.stringify(key, null, 2)}\n`,
  );
  const { fills, cylinders } = key.rows;
  console.log(`${key.file}: ${fills} fills, ${cylinders} cylinders, ${key.findings.length} faults planted.`);
}
