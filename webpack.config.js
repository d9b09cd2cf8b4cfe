import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import CopyWebpackPlugin from "copy-webpack-plugin";
import { EsbuildPlugin } from "esbuild-loader";
import HtmlWebpackPlugin from "html-webpack-plugin";

const CustomFunctionsMetadataPlugin = createRequire(import.meta.url)("custom-functions-metadata-plugin");
const folder = dirname(fileURLToPath(import.meta.url));
const DEFAULT_ORIGIN = "https://localhost:3000";

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
      ],
    },
    optimization: { minimizer: [new EsbuildPlugin({ target: "es2022", legalComments: "none" })] },
    performance: { hints: false },
  };
}

/** The local workbook: a grid, the worksheet functions and the pane in one page. */
function page() {
  return {
    ...common("page"),
    entry: { page: "./src/page/index.tsx" },
    output: { path: join(folder, "dist/page"), filename: "[name].[contenthash:8].js", clean: true },
    plugins: [
      new HtmlWebpackPlugin({ template: "./src/page/index.html", favicon: undefined }),
      new CopyWebpackPlugin({
        patterns: [{ from: "shared/samples/*.xlsx", to: "samples/[name][ext]", noErrorOnMissing: true }],
      }),
    ],
  };
}

/** The add-in: one page with the shared runtime, the functions' metadata, the icons and the manifest. */
function excel(origin) {
  return {
    ...common("excel"),
    entry: { functions: "./src/functions/excel.ts", taskpane: "./src/taskpane/taskpane.tsx" },
    output: {
      path: join(folder, "dist/excel"),
      filename: "[name].js",
      chunkFilename: "[name].[contenthash:8].js",
      clean: true,
    },
    plugins: [
      new CustomFunctionsMetadataPlugin({ output: "functions.json", input: "./src/functions/excel.ts" }),
      new HtmlWebpackPlugin({
        template: "./src/taskpane/taskpane.html",
        filename: "taskpane.html",
        chunks: ["functions", "taskpane"],
        chunksSortMode: "manual",
      }),
      new CopyWebpackPlugin({
        patterns: [
          { from: "assets/*.png", to: "assets/[name][ext]" },
          {
            from: "manifest.xml",
            to: "manifest.xml",
            transform: (content) => content.toString().replaceAll(DEFAULT_ORIGIN, origin),
          },
        ],
      }),
    ],
  };
}

export default (env = {}) => [page(), excel(env.origin ?? DEFAULT_ORIGIN)];
