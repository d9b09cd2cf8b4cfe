/* npm run bench: seconds and ratios from one run. Nothing here passes or fails. */
import { needPackages, run } from "./machine.mjs";

needPackages();
process.exit(
  run(process.execPath, ["--expose-gc", "--import", "tsx", "scripts/bench.ts", ...process.argv.slice(2)]),
);
