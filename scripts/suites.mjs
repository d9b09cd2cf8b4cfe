/*
 * The worksheet functions for other suites: one script each, made of the same core and of the metadata that Excel gets.
 * Names hold no dot there, so BRIM.MOD is BRIM_MOD.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { functionsMetadata } from "./functions-metadata.mjs";
import { projectFolder } from "./machine.mjs";

/** Google Sheets: a script for Extensions > Apps Script, with one global function for each of ours. */
export async function googleScript() {
  const functions = (await suiteFunctions()).map((each) => `${comment(each, "")}${declaration(each)}`);
  return `${header()}${await core("google")}\n${functions.join("\n\n")}\n`;
}

/** ONLYOFFICE: a custom function library. All of it stands inside of the one function that the editor is handed. */
export async function onlyofficeScript() {
  const functions = (await suiteFunctions()).map(
    (each) => `${comment(each, "[][]")}Api.AddCustomFunction(${declaration(each)});`,
  );
  return [
    header(),
    'Api.AddCustomFunctionLibrary("Brimbook", function () {\n',
    await core("onlyoffice"),
    "\n",
    functions.join("\n\n"),
    "\n});\n",
  ].join("");
}

/** Writes dist/google and dist/onlyoffice. */
export async function writeSuites() {
  for (const [suite, file, script] of [
    ["google", "brimbook.gs", await googleScript()],
    ["onlyoffice", "brimbook.js", await onlyofficeScript()],
  ]) {
    const folder = join(projectFolder, "dist", suite);
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, file), script);
  }
}

/** The core as one variable, minimised and without comments: the suites read the comments that are left. */
async function core(suite) {
  const { build } = await import("esbuild");
  const { outputFiles } = await build({
    absWorkingDir: projectFolder,
    entryPoints: [`src/suites/${suite}.ts`],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    globalName: "brimbook",
    target: "es2020",
    charset: "ascii",
    legalComments: "none",
  });
  return outputFiles[0].text;
}

function header() {
  const { version, license } = JSON.parse(readFileSync(join(projectFolder, "package.json"), "utf8"));
  return `// Brimbook ${version}: worksheet functions for scuba fill stations. Licence: ${license}.\n`;
}

/** What a suite is told of each function: as Excel, but for names. */
async function suiteFunctions() {
  const { functions } = await functionsMetadata("https://localhost");
  return functions.map(({ id, description, parameters }) => ({
    id,
    description: renamed(description),
    parameters: parameters.map(({ name, description: help, optional }) => ({
      name: RESERVED.has(name) ? `${name}_` : name,
      help: renamed(help),
      optional,
    })),
  }));
}

const RESERVED = new Set(["class", "function"]);

const renamed = (text) => text.replaceAll("BRIM.", "BRIM_");

function comment({ description, parameters }, dimensions) {
  const lines = [
    description,
    "",
    ...parameters.map(({ name, help, optional }) => {
      return `@param {any${dimensions}} ${optional ? `[${name}]` : name} ${help}`;
    }),
    `@returns {any${dimensions}} The answer, or text that begins with #VALUE! or #N/A and says why there is none.`,
    "@customfunction",
  ];
  return `/**\n${lines.map((line) => ` * ${line}`.trimEnd()).join("\n")}\n */\n`;
}

function declaration({ id, parameters }) {
  const names = parameters.map(({ name }) => name).join(", ");
  return `function BRIM_${id}(${names}) {\n  return brimbook.answer("${id}", [${names}]);\n}`;
}
