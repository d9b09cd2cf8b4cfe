/* The command line: npm run -s brimbook -- calc MOD '[32,"ft"]' */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { needPackages, projectFolder } from "./machine.mjs";

needPackages();
const { status } = spawnSync(
  process.execPath,
  ["--import", "tsx", join(projectFolder, "src/cli/main.ts"), ...process.argv.slice(2)],
  {
    stdio: "inherit",
    /* tsx is found from the project's folder; files the user names are found from where the user stands. */
    cwd: projectFolder,
    env: { ...process.env, BRIMBOOK_FOLDER: process.env.INIT_CWD ?? process.cwd() },
  },
);
process.exit(status ?? 2);
