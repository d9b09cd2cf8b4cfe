/*
 * Everything that must hold: types, lint, format, unit and outside values, the pages in a real browser, and our
 * files in LibreOffice. Two chains run side by side. With CI=true nothing may be skipped.
 */
import { spawn } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { needPackages, needProgram, projectFolder, say } from "./machine.mjs";

needPackages();
const browser = needProgram("chromium");
const office = needProgram("libreoffice");

const results = join(projectFolder, ".cache/test-results");
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

const node = (script, ...args) => [process.execPath, [join("node_modules", script), ...args]];
const vitest = (name, ...args) =>
  node(
    "vitest/vitest.mjs",
    "run",
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${join(results, name)}.json`,
    ...args,
  );

const failed = [];
const skipped = [];

/** Runs one step, shows what it printed when it ends, and remembers a failure. */
function step(name, [command, args]) {
  return new Promise((resolve) => {
    const started = Date.now();
    const child = spawn(command, args, {
      cwd: projectFolder,
      env: { ...process.env, FORCE_COLOR: "0" },
      stdio: ["ignore", "pipe", "pipe"],
    });
    const printed = [];
    child.stdout.on("data", (piece) => printed.push(piece));
    child.stderr.on("data", (piece) => printed.push(piece));
    child.on("close", (code) => {
      const seconds = ((Date.now() - started) / 1000).toFixed(0);
      process.stdout.write(
        `\n== ${name}: ${code === 0 ? "passed" : "FAILED"} (${seconds} s)\n${Buffer.concat(printed)}`,
      );
      if (code !== 0) failed.push(name);
      resolve(code === 0);
    });
  });
}

function skip(name, why) {
  skipped.push(name);
  say(`\n== ${name}: SKIPPED, ${why}`);
}

async function codeChain() {
  await step("types", node("typescript/bin/tsc", "--noEmit", "-p", "."));
  await step("lint", node("eslint/bin/eslint.js", "src", "tests", "scripts"));
  await step(
    "format",
    node(
      "prettier/bin/prettier.cjs",
      "--check",
      "--log-level",
      "warn",
      "src",
      "tests",
      "scripts",
      "*.js",
      "*.ts",
    ),
  );
}

async function programChain() {
  await step("unit", vitest("unit"));
  const built = await step("build", node("webpack-cli/bin/cli.js", "--stats", "errors-warnings"));
  if (!browser) skip("browser", "Chromium is not here");
  else if (built) await step("browser", vitest("browser", "--config", "vitest.e2e.config.ts"));
  if (!office) skip("office", "LibreOffice is not here");
  else await step("office", vitest("office", "--config", "vitest.office.config.ts"));
}

await Promise.all([codeChain(), programChain()]);

const count = { passed: 0, failed: 0 };
for (const name of ["unit", "browser", "office"]) {
  try {
    const result = JSON.parse(readFileSync(join(results, `${name}.json`), "utf8"));
    count.passed += result.numPassedTests;
    count.failed += result.numFailedTests;
  } catch {
    /* The step was skipped or broke before it wrote a result; both were said above. */
  }
}
if (failed.length) say(`\nFailed: ${failed.join(", ")}.`);
if (skipped.length && process.env.CI === "true")
  say(`\nSkipped, which CI does not allow: ${skipped.join(", ")}.`);
process.stdout.write(
  `\n${count.passed} passed, ${count.failed} failed${skipped.length ? `, ${skipped.length} skipped` : ""}\n`,
);
process.exit(failed.length || (skipped.length && process.env.CI === "true") ? 1 : 0);
