/* functions.json, which tells Excel the worksheet functions: written from their catalogue. */
import { projectFolder } from "./machine.mjs";

/**
 * What Excel is told. Everything is a range of anything, so that a single value, a column and a table all arrive, and
 * error cells reach the function: one of them does not refuse a whole column. `helpUrl` is the address of the reference.
 */
export async function functionsMetadata(helpUrl) {
  const { WORKSHEET_FUNCTIONS } = await catalogue();
  return {
    allowErrorForDataTypeAny: true,
    functions: WORKSHEET_FUNCTIONS.map(({ id, description, parameters }) => ({
      id,
      name: id,
      description,
      helpUrl: `${helpUrl}#${id.toLowerCase()}`,
      parameters: parameters.map(({ name, help, optional }) => ({
        name,
        description: help,
        ...ANY_RANGE,
        ...(optional && { optional }),
      })),
      result: ANY_RANGE,
    })),
  };
}

const ANY_RANGE = { type: "any", dimensionality: "matrix" };

/** The catalogue is TypeScript, and node reads none. */
async function catalogue() {
  const { build } = await import("esbuild");
  const { outputFiles } = await build({
    absWorkingDir: projectFolder,
    entryPoints: ["src/functions/catalogue.ts"],
    bundle: true,
    write: false,
    format: "esm",
    platform: "node",
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`);
}

/** Webpack: puts functions.json among the assets. Options: output (file name), helpUrl. */
export class FunctionsMetadataPlugin {
  constructor({ output, helpUrl }) {
    this.output = output;
    this.helpUrl = helpUrl;
  }

  apply({ hooks, webpack: { Compilation, sources } }) {
    const name = "FunctionsMetadataPlugin";
    hooks.thisCompilation.tap(name, (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tapPromise({ name, stage }, async () => {
        const metadata = JSON.stringify(await functionsMetadata(this.helpUrl), null, 2);
        compilation.emitAsset(this.output, new sources.RawSource(metadata));
      });
    });
  }
}
