/*
 * npm run build -- --env origin=https://example.org : the deployable folder dist/excel with its manifest, the local
 * workbook in dist/page, and the worksheet functions for other suites in dist/google and dist/onlyoffice.
 */
import { needPackages, run } from "./machine.mjs";

needPackages();
const code = run(process.execPath, [
  "node_modules/webpack-cli/bin/cli.js",
  "--stats",
  "errors-warnings",
  ...process.argv.slice(2),
]);
if (code !== 0) process.exit(code);

const { writeSuites } = await import("./suites.mjs");
await writeSuites();
