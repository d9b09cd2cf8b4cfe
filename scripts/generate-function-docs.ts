/* npx tsx scripts/generate-function-docs.ts: writes what is made from the definitions of the worksheet functions and the rules. */
import { writeFileSync } from "node:fs";
import { generatedFiles } from "./generated-files";

for (const { path, text } of await generatedFiles()) writeFileSync(path, text);
