/*
 * npm run mutants [-- room]: changes the rules one place at a time and counts the changes that a test notices. Each room
 * is tried with the tests that are about it, as the whole takes hours. What is noticed by others only counts as missed.
 */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { needPackages } from "./machine.mjs";

const audit = (...names) => names.map((name) => `src/audit/${name}.ts`);
const rules = (...names) => audit(...names.map((name) => `rules/${name}`));
const tests = (...names) => names.map((name) => `tests/audit/${name}.test.ts`);

/** What is changed together, and the tests that should notice. */
const ROOMS = {
  cylinders: { files: ["src/cylinders/**/*.ts"], tests: ["tests/cylinders/**/*.test.ts"] },
  vessel: {
    files: [
      ...rules(
        "hydroPastDue", "visualPastDue", "pastDue", "overPressure", "outOfService", "pastServiceLife",
        "crackProneAlloy", "noTestDate", "starMark", "externalVisualOnly", "notForThisUse", "threadsDiffer",
        "missedVisual", "lowStart", "notLookedOver",
      ), // prettier-ignore
      ...audit("tests", "testHistory", "eitherReading", "cylinderOnRecord", "settledReading"),
    ],
    tests: tests(
      "vessel",
      "vesselSentences",
      "testHistory",
      "testsOnRecord",
      "cylinderOnRecord",
      "fillCount",
      "rules",
      "eitherReading",
      "register",
    ),
  },
  oxygen: {
    files: [
      ...rules(
        "notOxygenClean", "aboveRating", "cleaningPastDue", "hydroSinceCleaning", "cleaningNotShown", "pureOxygenPressure",
        "continuousTooRich", "nitroxUnrated", "permitLimit",
      ), // prettier-ignore
      ...audit("enriched", "oxygen"),
    ],
    tests: tests("gas", "rules", "eitherReading"),
  },
  gas: {
    files: rules(
      "notAnalysed", "modTooDeep", "notAsOrdered", "airNotAir", "certification", "heliumNotAnalysed", "notSigned",
      "labelIncomplete", "plannedTooDeep", "fillerNotNamed", "airTestDue",
    ), // prettier-ignore
    tests: tests("gas", "gasSentences"),
  },
  records: {
    files: [
      ...rules(
        "notInRegister", "impossibleTest", "swallowedStamp", "stampOrder", "wrongUnit", "endNotAboveStart", "noConsent",
        "longUnused",
      ), // prettier-ignore
      ...audit(
        "collector",
        "logColumns",
        "asking",
        "registered",
        "knownCylinders",
        "words",
        "nameOf",
        "whoseSource",
        "audit",
        "rules",
        "rule",
        "finding",
      ),
    ],
    tests: tests(
      "records",
      "recordsSentences",
      "register",
      "rules",
      "recall",
      "whoseSource",
      "dueLists",
      "eitherReading",
      "cylinderOnRecord",
    ),
  },
  walk: {
    files: [
      ...rules(
        "cleanLost",
        "suspectAir",
        "sourceNotProven",
        "airOnResidue",
        "filledElsewhere",
        "filledTwice",
      ),
      ...audit("walk/*", "sources", "airTests", "recall"),
    ],
    tests: tests(
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
  },
  physics: {
    files: [...rules("outsideBalance"), ...audit("physics/*")],
    tests: tests("outsideBalance", "workings", "causes", "walkRules"),
  },
  lists: {
    files: audit("dueLists", "suspectGas", "rehearsal", "housePatterns", "contents", "acceptance"),
    tests: tests("lists", "dueLists", "suspectGas", "housePatterns", "eitherReading", "acceptance"),
  },
  shop: {
    files: audit("houseSettings", "figureProse", "ruleInWords", "shop", "shopFor"),
    tests: tests("houseSettings", "settings"),
  },
  counter: {
    files: audit("fillCheck", "receive", "inside", "waiting"),
    tests: tests("fillCheck", "receive", "receipt", "counter", "waiting"),
  },
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
const stray = ["src/audit", "src/cylinders"]
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
