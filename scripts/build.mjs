/* npm run build -- --env origin=https://example.org : the deployable folder dist/excel and its manifest. */
import { needPackages, run } from "./machine.mjs";

needPackages();
process.exit(
  run(process.execPath, [
    "node_modules/webpack-cli/bin/cli.js",
    "--stats",
    "errors-warnings",
    ...process.argv.slice(2),
  ]),
);
