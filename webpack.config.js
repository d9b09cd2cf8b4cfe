import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import CopyWebpackPlugin from "copy-webpack-plugin";
import { EsbuildPlugin } from "esbuild-loader";
import HtmlWebpackPlugin from "html-webpack-plugin";
import { FunctionsMetadataPlugin } from "./scripts/functions-metadata.mjs";
import { GzipBudgetPlugin } from "./scripts/gzip-budget.mjs";
import { PrecachePlugin } from "./scripts/precache.mjs";
import { referencePage } from "./scripts/reference-page.mjs";

const folder = dirname(fileURLToPath(import.meta.url));
const DEFAULT_ORIGIN = "https://localhost:3000";

/** The shipped face: two weights, Latin with accents. */
const TYPEFACE_BUDGET = { "*.woff2": 100 };

/** What both builds share: TypeScript without type check (npm test checks types), and esbuild as minimiser. */
function common(name) {
  return {
    name,
    mode: "production",
    context: folder,
    devtool: false,
    cache: {
      type: "filesystem",
      cacheDirectory: join(folder, ".cache/webpack"),
      buildDependencies: { config: [fileURLToPath(import.meta.url)] },
    },
    resolve: { extensions: [".tsx", ".ts", ".js"] },
    module: {
      rules: [
        {
          test: /\.tsx?$/,
          exclude: /node_modules/,
          loader: "ts-loader",
          options: { transpileOnly: true, compilerOptions: { noEmit: false } },
        },
        { test: /\.css$/, use: ["style-loader", "css-loader"] },
        { test: /\.svg$/, type: "asset/inline" },
        { test: /\.woff2$/, type: "asset/resource", generator: { filename: "[name].[contenthash:8][ext]" } },
      ],
    },
    optimization: { minimizer: [new EsbuildPlugin({ target: "es2022", legalComments: "none" })] },
    performance: { hints: false },
  };
}

/** The service worker keeps one name, by which browsers find the next one. */
const SERVICE_WORKER = "service-worker";

/**
 * The local workbook: a grid, the worksheet functions and the pane in one page. A folder for any static server, which
 * installs as an app and then needs no network.
 */
function page(dist) {
  return {
    ...common("page"),
    entry: { page: "./src/page/index.ts", [SERVICE_WORKER]: "./src/page/serviceWorker.ts" },
    output: {
      path: join(dist, "page"),
      filename: ({ chunk }) => (chunk.name === SERVICE_WORKER ? "[name].js" : "[name].[contenthash:8].js"),
      chunkFilename: "[name].[contenthash:8].js",
      clean: true,
    },
    plugins: [
      new HtmlWebpackPlugin({ template: "./src/page/index.html", favicon: undefined, chunks: ["page"] }),
      new CopyWebpackPlugin({
        patterns: [
          { from: "shared/samples/*.xlsx", to: "samples/[name][ext]", noErrorOnMissing: true },
          { from: "src/page/manifest.webmanifest", to: "[name][ext]" },
          { from: "assets/app/*.png", to: "icons/[name][ext]" },
        ],
      }),
      new GzipBudgetPlugin(TYPEFACE_BUDGET),
      new PrecachePlugin(`${SERVICE_WORKER}.js`),
    ],
  };
}

/**
 * What the tables say for readers and for the audit only: the functions load with every workbook and leave it behind.
 * A test compares the bundle with the functions, on every country and every size.
 */
const FOR_READERS = {
  rules: new Set([
    ...["note", "source", "sources", "confidence", "about"],
    ...["paper", "spelling", "startMinimumPsi", "serviceLifeSource", "standards", "airTest"],
    ...["airOnlySource", "cleanSource", "cleanMonthsSource", "missedVisualSource", "fillPressure"],
    ...["maxFills", "oxygenMaxPercent", "oxygenMaxSource"],
    ...["pureOxygenMaxPsi", "pureOxygenSource", "underWater", "underWaterSource", "notAuthorisedSource"],
  ]),
  gas: new Set(["title", "source", "range", "termColumns", "fittedToMixtureData", "molarMassGramPerMol"]),
  "cylinders[\\\\/]sizes": new Set([
    ...["note", "sources", "about", "id", "material", "servicePressure", "unit"],
    ...["capacityCuFt", "source", "confidence"],
  ]),
};

/** The worksheet functions for Excel, their metadata and their reference. */
function functions(origin, dist) {
  /* Webpack's own minimiser: slower than esbuild, and an eighth smaller on a bundle that counts. */
  const { optimization: _, ...shared } = common("functions");
  return {
    ...shared,
    entry: { functions: "./src/functions/hosts/excel.ts" },
    output: { path: join(dist, "excel"), filename: "[name].js" },
    /* Whole dates are a quarter of the bundle, and the functions need a tenth of them. */
    resolve: {
      ...shared.resolve,
      alias: { "temporal-polyfill$": join(folder, "src/functions/hosts/daysAndMonths.ts") },
    },
    module: {
      rules: [
        ...shared.module.rules,
        ...Object.entries(FOR_READERS).map(([table, left]) => ({
          test: new RegExp(`shared[\\\\/]${table}\\b.*\\.json$`),
          type: "json",
          parser: {
            parse: (text) => JSON.parse(text, (key, value) => (left.has(key) ? undefined : value)),
          },
        })),
      ],
    },
    plugins: [
      new FunctionsMetadataPlugin({ output: "functions.json", helpUrl: `${origin}/functions.html` }),
      new CopyWebpackPlugin({
        patterns: [
          {
            from: "docs/functions.md",
            to: "functions.html",
            transform: (content) => referencePage(content.toString()),
          },
        ],
      }),
      new GzipBudgetPlugin({ functions: 64 }),
    ],
  };
}

/** The add-in's page with the pane, the icons and the manifest. */
function excel(origin, dist) {
  return {
    ...common("excel"),
    dependencies: ["functions"],
    entry: { taskpane: "./src/taskpane/taskpane.tsx" },
    output: {
      path: join(dist, "excel"),
      filename: "[name].js",
      chunkFilename: "[name].[contenthash:8].js",
    },
    plugins: [
      new HtmlWebpackPlugin({ template: "./src/taskpane/taskpane.html", filename: "taskpane.html" }),
      new CopyWebpackPlugin({
        patterns: [
          { from: "assets/*.png", to: "assets/[name][ext]" },
          { from: "src/taskpane/support.html", to: "support.html" },
          {
            from: "manifest.xml",
            to: "manifest.xml",
            transform: (content) => content.toString().replaceAll(DEFAULT_ORIGIN, origin),
          },
        ],
      }),
      new GzipBudgetPlugin({ taskpane: 400, ...TYPEFACE_BUDGET }),
    ],
  };
}

/** The address that the add-in is served from: https, without a slash at its end. */
function originFrom(given) {
  if (given === undefined) return DEFAULT_ORIGIN;
  const address = URL.canParse(given) ? new URL(given) : undefined;
  if (address?.protocol !== "https:" || address.search || address.hash) {
    throw new Error(
      `Excel loads add-ins from https addresses only, and "${given}" is none: --env origin=https://example.org`,
    );
  }
  return address.href.replace(/\/+$/, "");
}

export default (env = {}) => {
  const origin = originFrom(env.origin);
  const dist = join(folder, env.into ?? "dist");
  return [page(dist), functions(origin, dist), excel(origin, dist)];
};
