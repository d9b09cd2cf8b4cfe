/*
 * npm run mutants [-- room]: changes the rules one place at a time and counts the changes that a test notices. Each room
 * is tried with the tests that are about it, as the whole takes hours. What is noticed by others only counts as missed.
 */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { needPackages } from "./machine.mjs";

const tests = (...names) => names.map((name) => `tests/audit/${name}.test.ts`);
const room = (folder, ...names) => ({ files: [`src/${folder}/**/*.ts`], tests: tests(...names) });

/** What is changed together, a folder each, and the tests that should notice. */
const ROOMS = {
  cylinders: { files: ["src/cylinders/**/*.ts"], tests: ["tests/cylinders/**/*.test.ts"] },
  vessel: room(
    "audit/rules/vessel",
    "vessel",
    "vesselSentences",
    "fillCount",
    "rules",
    "eitherReading",
    "register",
  ),
  oxygen: room("audit/rules/oxygen", "gas", "rules", "eitherReading", "walkRules", "walkSentences"),
  analysis: room("audit/rules/analysis", "gas", "gasSentences", "walkRules", "outsideBalance", "rules"),
  air: room("audit/rules/air", "gas", "gasSentences", "walkRules", "walkSentences", "rules"),
  records: room(
    "audit/rules/records",
    "records",
    "recordsSentences",
    "register",
    "rules",
    "walkRules",
    "walkSentences",
  ),
  rules: { files: ["src/audit/rules/*.ts"], tests: tests("rules", "settings") },
  judge: room(
    "audit/judge",
    "records",
    "recordsSentences",
    "register",
    "rules",
    "eitherReading",
    "acceptance",
    "recall",
  ),
  record: room(
    "audit/record",
    "testHistory",
    "testsOnRecord",
    "cylinderOnRecord",
    "register",
    "rules",
    "eitherReading",
    "vessel",
    "gas",
    "dueLists",
  ),
  walk: room(
    "audit/walk",
    "walkRules",
    "walkSentences",
    "walkOrder",
    "lists",
    "recall",
    "records",
    "register",
    "workings",
    "outsideBalance",
    "causes",
    "suspectGas",
    "eitherReading",
  ),
  physics: room("audit/physics", "outsideBalance", "workings", "causes", "walkRules"),
  lists: room(
    "audit/lists",
    "lists",
    "dueLists",
    "suspectGas",
    "housePatterns",
    "eitherReading",
    "acceptance",
    "recall",
  ),
  shop: room("audit/shop", "houseSettings", "settings", "whoseSource", "gasSentences", "walkRules"),
  audit: { files: ["src/audit/*.ts"], tests: tests("fillCheck", "rules", "records", "eitherReading") },
  counter: room("counter", "receive", "receipt", "counter", "waiting"),
};

needPackages();
const asked = process.argv.slice(2);
const rooms = asked.length > 0 ? asked : Object.keys(ROOMS);
const unknown = rooms.filter((room) => !(room in ROOMS));
if (unknown.length > 0) {
  console.error(`There is no room “${unknown[0]}”. Rooms: ${Object.keys(ROOMS).join(", ")}.`);
  process.exit(2);
}

const covered = Object.values(ROOMS).flatMap(({ files }) =>
  files.map((file) => new RegExp(`^${pattern(file)}$`)),
);
const stray = ["src/audit", "src/cylinders", "src/counter"]
  .flatMap((folder) => readdirSync(folder, { recursive: true }).map((file) => `${folder}/${file}`))
  .filter((file) => file.endsWith(".ts") && !covered.some((room) => room.test(file)));
if (stray.length > 0) console.warn(`In no room, and so not tried: ${stray.join(", ")}.`);

/** A glob as a regular expression. */
function pattern(glob) {
  return glob.replaceAll(".", "\\.").replaceAll(/\*\*\/\*|\*/g, (stars) => (stars === "*" ? "[^/]*" : ".*"));
}

const NOTICED = ["Killed", "Timeout"];
const MISSED = ["Survived", "NoCoverage"];
const counts = rooms.map((room) => {
  const { files, tests } = ROOMS[room];
  const { status } = spawnSync(
    process.execPath,
    ["node_modules/@stryker-mutator/core/bin/stryker.js", "run", "--mutate", files.join(",")],
    { stdio: ["ignore", "inherit", "inherit"], env: { ...process.env, MUTANTS_TESTS: tests.join(",") } },
  );
  if (status !== 0) process.exit(status ?? 1);
  const report = JSON.parse(readFileSync(".cache/mutants.json", "utf8"));
  const all = Object.values(report.files).flatMap(({ mutants }) => mutants);
  const of = (statuses) => all.filter(({ status }) => statuses.includes(status)).length;
  return { room, noticed: of(NOTICED), missed: of(MISSED) };
});

const share = (noticed, missed) => `${((100 * noticed) / (noticed + missed)).toFixed(1)} %`;
for (const { room, noticed, missed } of counts)
  console.log(`${room}: ${noticed} of ${noticed + missed} changes noticed, ${share(noticed, missed)}`);
const [noticed, missed] = ["noticed", "missed"].map((key) =>
  counts.reduce((sum, count) => sum + count[key], 0),
);
console.log(`together: ${noticed} of ${noticed + missed}, ${share(noticed, missed)}`);
