/* The command line as one file, built anew when a source of it is newer, so that it starts at once. */
import { readFileSync, mkdirSync, renameSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { projectFolder, stop } from "./machine.mjs";

const folder = join(projectFolder, "dist/cli");
const built = join(folder, "brimbook.mjs");
/** What the built file was made from, as esbuild says it. */
const sources = join(folder, "sources.json");

/** The address of the built file, to be imported. Ends in a sentence where it cannot be built. */
export async function commandFile() {
  if (!isCurrent()) await build();
  return pathToFileURL(built).href;
}

function isCurrent() {
  try {
    const since = statSync(built).mtimeMs;
    return JSON.parse(readFileSync(sources, "utf8")).every(
      (source) => statSync(join(projectFolder, source)).mtimeMs < since,
    );
  } catch {
    /* Not built, or a source of it is gone. */
    return false;
  }
}

async function build() {
  const esbuild = await import("esbuild").catch(() =>
    stop("Brimbook's packages are not here yet. Run npm ci in its folder once, then run this command again."),
  );
  mkdirSync(folder, { recursive: true });
  /* Written beside and renamed: another command may run the file, or build it, at this moment. */
  const beside = `${built}.${process.pid}`;
  const { metafile } = await esbuild.build({
    absWorkingDir: projectFolder,
    entryPoints: ["src/cli/main.ts"],
    outfile: beside,
    bundle: true,
    minify: true,
    platform: "node",
    format: "esm",
    target: "node20",
    legalComments: "none",
    metafile: true,
    logLevel: "error",
  });
  const read = ["scripts/command-file.mjs", ...Object.keys(metafile.inputs)];
  writeFileSync(`${sources}.${process.pid}`, JSON.stringify(read));
  renameSync(`${sources}.${process.pid}`, sources);
  renameSync(beside, built);
}
