import {
  WORKSHEET_FUNCTIONS,
  type CatalogueEntry,
  type CatalogueParameter,
} from "../src/functions/catalogue";

const HEADER = `/* eslint-disable @typescript-eslint/no-explicit-any */
// Written by scripts/generate-function-docs.ts from the definitions of the worksheet functions: do not edit.
// Microsoft's generator reads it to make functions.json. Everything is any[][], so that a single value, a column and a
// table all arrive; a trailing underscore marks a name that TypeScript reserves.
`;

/** src/functions/hosts/excelDeclarations.ts: the worksheet functions as Microsoft's metadata generator wants to read them. */
export function functionDeclarations(): string {
  return [HEADER, ...WORKSHEET_FUNCTIONS.map(declaration)].join("\n");
}

function declaration({ id, description, parameters }: CatalogueEntry): string {
  const lines = [
    description,
    `@customfunction ${id} ${id}`,
    ...parameters.map((parameter) => {
      const name = nameOf(parameter);
      return `@param {${typeOf(parameter)}} ${parameter.optional ? `[${name}]` : name} ${parameter.help}`;
    }),
    "@returns {any[][]}",
  ];
  for (const line of [description, ...parameters.map(({ help }) => help)]) {
    if (/[@\n]|\*\//.test(line)) throw new Error(`${id}: this cannot stand in a doc comment: ${line}`);
  }
  const signature = parameters.map(
    (parameter) => `  ${nameOf(parameter)}${parameter.optional ? "?" : ""}: ${typeOf(parameter)},\n`,
  );
  return `/**\n${lines.map((line) => ` * ${line}\n`).join("")} */\nexport declare function ${id}(\n${signature.join("")}): any[][];\n`;
}

function typeOf({ repeating }: CatalogueParameter): string {
  return repeating ? "any[][][]" : "any[][]";
}

function nameOf({ name }: CatalogueParameter): string {
  return RESERVED.includes(name) ? `${name}_` : name;
}

const RESERVED = ["class", "function", "arguments"];
