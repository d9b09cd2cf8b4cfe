import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

/** Webpack: fails the build when what a page loads at once grows beyond its budget (kB, gzip). */
export class GzipBudgetPlugin {
  /** @param budgets entry name to kB, such as { functions: 60 } */
  constructor(budgets) {
    this.budgets = budgets;
  }

  apply(compiler) {
    compiler.hooks.afterEmit.tap("GzipBudgetPlugin", (compilation) => {
      for (const [name, budget] of Object.entries(this.budgets)) {
        const files = compilation.entrypoints.get(name).getFiles();
        const bytes = files.reduce(
          (sum, file) => sum + gzipSync(readFileSync(join(compilation.outputOptions.path, file))).length,
          0,
        );
        const size = bytes / 1000;
        if (size > budget) {
          compilation.errors.push(
            new compiler.webpack.WebpackError(
              `${name} is ${size.toFixed(1)} kB gzip, above its budget of ${budget} kB: ${files.join(", ")}`,
            ),
          );
        }
      }
    });
  }
}
