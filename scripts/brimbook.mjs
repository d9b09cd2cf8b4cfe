#!/usr/bin/env node
/* The command line: npm run -s brimbook -- calc MOD '[32,"ft"]' */
import { commandFile } from "./command-file.mjs";

/* npm stands in the project's folder; files that the user names are found from where the user stands. */
process.env.BRIMBOOK_FOLDER ??= process.env.INIT_CWD ?? process.cwd();
await import(await commandFile());
