/*
 * functions.json, which tells Excel the worksheet functions. Microsoft's generator makes it from the declarations in
 * src/functions/hosts/excelDeclarations.ts; what that cannot express is added here.
 */
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const require = createRequire(import.meta.url);
export const DECLARATIONS = join(
  dirname(dirname(fileURLToPath(import.meta.url))),
  "src/functions/hosts/excelDeclarations.ts",
);

/** The finished metadata. `helpUrl` is the address of the function reference. */
export async function functionsMetadata(helpUrl) {
  const { generateCustomFunctionsMetadata } = require("custom-functions-metadata");
  const { metadataJson, errors } = await generateCustomFunctionsMetadata(DECLARATIONS);
  if (errors.length > 0) throw new Error(errors.join("\n"));
  return finished(JSON.parse(metadataJson), helpUrl);
}

/**
 * Adds what the declarations cannot say: error cells reach the function, so that one of them does not refuse a whole
 * column; each function has its place in the reference; `class_` is really called `class`, which TypeScript reserves.
 */
function finished(metadata, helpUrl) {
  return {
    ...metadata,
    allowErrorForDataTypeAny: true,
    functions: metadata.functions.map((each) => ({
      ...each,
      helpUrl: `${helpUrl}#${each.id.toLowerCase()}`,
      parameters: each.parameters.map((parameter) => ({
        ...parameter,
        name: parameter.name.replace(/_$/, ""),
      })),
    })),
  };
}

/** Webpack: puts the finished functions.json among the assets. Options: output (file name), helpUrl. */
export class FunctionsMetadataPlugin {
  constructor({ output, helpUrl }) {
    this.output = output;
    this.helpUrl = helpUrl;
  }

  apply(compiler) {
    const CustomFunctionsMetadataPlugin = require("custom-functions-metadata-plugin");
    new CustomFunctionsMetadataPlugin({ output: this.output, input: DECLARATIONS }).apply(compiler);
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("FunctionsMetadataPlugin", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tap({ name: "FunctionsMetadataPlugin", stage }, () => {
        const generated = compilation.getAsset(this.output);
        if (!generated) {
          compilation.errors.push(new compiler.webpack.WebpackError(`${this.output} was not generated.`));
          return;
        }
        const metadata = finished(JSON.parse(generated.source.source().toString()), this.helpUrl);
        compilation.updateAsset(this.output, new sources.RawSource(JSON.stringify(metadata, null, 2)));
      });
    });
  }
}
