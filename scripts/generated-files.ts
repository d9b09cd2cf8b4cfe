import { format, resolveConfig } from "prettier";
import { functionReference } from "./function-reference";
import { ruleReference } from "./rule-reference";

/** The files that are made from the definitions of the worksheet functions and the rules of the audit, as they should stand in the repository. */
export async function generatedFiles(): Promise<readonly { readonly path: string; readonly text: string }[]> {
  return Promise.all(
    [
      { path: "docs/functions.md", text: functionReference() },
      { path: "docs/rules.md", text: ruleReference() },
    ].map(async ({ path, text }) => ({
      path,
      text: await format(text, { ...(await resolveConfig(path)), filepath: path }),
    })),
  );
}
