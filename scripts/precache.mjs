import { createHash } from "node:crypto";

/** What the service worker's source names, and what the built one has in its place. */
const FILES = "self.__WB_MANIFEST";
const VERSION = "self.__WB_VERSION";
/** Files whose content is in their name. */
const NAMED_BY_CONTENT = /\.[0-9a-f]{8}\.[a-z0-9]+$/;

/**
 * Webpack: writes into the built service worker which files it keeps, each in which version, and the version of all of
 * them together. So another worker comes with every change of any file.
 */
export class PrecachePlugin {
  /** @param worker the name of the worker's file */
  constructor(worker) {
    this.worker = worker;
  }

  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("PrecachePlugin", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "PrecachePlugin", stage }, (assets) => {
        const files = Object.keys(assets)
          .filter((name) => name !== this.worker)
          .sort()
          .map((url) => ({
            url,
            revision: NAMED_BY_CONTENT.test(url) ? null : hashOf(assets[url].buffer()),
          }));
        const written = JSON.stringify(files);
        const source = assets[this.worker].source().toString();
        for (const place of [FILES, VERSION]) {
          if (!source.includes(place)) throw new Error(`${this.worker} does not say ${place}.`);
        }
        const built = source
          .replaceAll(FILES, () => written)
          .replaceAll(VERSION, () => JSON.stringify(hashOf(written + source)));
        compilation.updateAsset(this.worker, new sources.RawSource(built));
      });
    });
  }
}

function hashOf(content) {
  return createHash("sha256").update(content).digest("hex").slice(0, 16);
}
