import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

/** Webpack: fails the build when what a page loads at once, or all files of a kind, grow beyond a budget (kB, gzip). */
export class GzipBudgetPlugin {
  /** @param budgets entry name or ending to kB, such as { functions: 60, "*.woff2": 100 } */
  constructor(budgets) {
    this.budgets = budgets;
  }

  apply(compiler) {
    compiler.hooks.afterEmit.tap("GzipBudgetPlugin", (compilation) => {
      for (const [name, budget] of Object.entries(this.budgets)) {
        const files = name.startsWith("*")
          ? Object.keys(compilation.assets).filter((file) => file.endsWith(name.slice(1)))
          : compilation.entrypoints.get(name).getFiles();
        if (files.length === 0) compilation.errors.push(new Error(`${name}: no such file was built.`));
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
