// @vitest-environment jsdom
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { validateXML } from "xmllint-wasm";
import packageJson from "../../package.json";
import { manifestFaults } from "./crossChecks";

const manifest = readFileSync("manifest.xml", "utf8");
const DEFAULT_ORIGIN = "https://localhost:3000";

/** What the build puts beside the manifest, and what it makes each from. */
const SERVED: Readonly<Record<string, string>> = {
  "taskpane.html": "src/taskpane/taskpane.html",
  "support.html": "src/taskpane/support.html",
  "functions.js": "src/functions/hosts/excel.ts",
  "functions.json": "src/functions/hosts/excel.ts",
};
const sourceOf = (path: string) => SERVED[path] ?? path;

const surroundings = {
  origin: DEFAULT_ORIGIN,
  serves: (path: string) => existsSync(sourceOf(path)),
  imageSize: (path: string): [number, number] => {
    const png = readFileSync(sourceOf(path));
    return [png.readUInt32BE(16), png.readUInt32BE(20)];
  },
};

const SCHEMAS = "tests/manifest/xsd";
const schemas = readdirSync(SCHEMAS)
  .filter((file) => file.endsWith(".xsd"))
  .map((fileName) => ({ fileName, contents: readFileSync(join(SCHEMAS, fileName), "utf8") }));

/** What Microsoft's schema has against a manifest. */
async function schemaFaults(xml: string): Promise<string[]> {
  const base = "OfficeAppManifestV1_1.xsd";
  const { errors } = await validateXML({
    xml: { fileName: "manifest.xml", contents: xml },
    schema: schemas.find(({ fileName }) => fileName === base)!,
    preload: schemas.filter(({ fileName }) => fileName !== base),
  });
  return errors.map(({ message }) => message);
}

/** The manifest with one thing changed; the thing must be there. */
function changed(from: string | RegExp, to: string): string {
  const result = manifest.replace(from, to);
  if (result === manifest) throw new Error(`The manifest has nothing like ${from}.`);
  return result;
}

const element = (name: string) => new RegExp(`\\s*<${name}[ >][\\s\\S]*?</${name}>`);

describe("the manifest", { timeout: 60_000 }, () => {
  test("fits Microsoft's schema", async () => {
    expect(await schemaFaults(manifest)).toEqual([]);
  });

  test.each([
    [
      "elements out of order",
      changed(/(<Title resid[^>]*>)(\s*)(<Description resid[^>]*>)/, "$3$2$1"),
      "Description",
    ],
    ["a ribbon group without an icon", changed(element("Icon"), ""), "Icon"],
    [
      "a short string too long",
      changed('DefaultValue="Open Brimbook"', `DefaultValue="${"x".repeat(126)}"`),
      "125",
    ],
    ["a long string too long", changed('DefaultValue="Opens ', `DefaultValue="${"x".repeat(250)} `), "250"],
    ["a resource's name too long", changed(/OpenPane\.Description/g, "x".repeat(33)), "32"],
    ["a version that is none", changed("<Version>0.1.0<", "<Version>next<"), "Version"],
    ["an element nobody knows", changed("<Permissions>", "<Brim/><Permissions>"), "Brim"],
    ["a permission nobody knows", changed("ReadWriteDocument", "ReadWriteEverything"), "Permissions"],
    ["an unclosed element", changed("</Runtimes>", ""), "Runtimes"],
  ])("with %s does not", async (_, broken, reason) => {
    expect((await schemaFaults(broken)).join("\n")).toContain(reason);
  });

  test("fits together, and all that it names is there", () => {
    expect(manifestFaults(manifest, surroundings)).toEqual([]);
  });

  test.each([
    [
      "Label refers to Nowhere, which is no such resource.",
      changed('<Label resid="Group.Label"/>', '<Label resid="Nowhere"/>'),
    ],
    [
      "Label refers to Icon.16, which is no such resource.",
      changed('<Label resid="Group.Label"/>', '<Label resid="Icon.16"/>'),
    ],
    [
      "Nothing refers to the resource Group.Label.",
      changed('<Label resid="Group.Label"/>', '<Label resid="OpenPane.Label"/>'),
    ],
    ["Two resources are called Icon.16.", changed('Image id="Icon.32"', 'Image id="Icon.16"')],
    [
      "http://localhost:3000/functions.js is not https.",
      changed("https://localhost:3000/functions.js", "http://localhost:3000/functions.js"),
    ],
    [
      "https://example.org/functions.js is not on https://localhost:3000.",
      changed("https://localhost:3000/functions.js", "https://example.org/functions.js"),
    ],
    ["There is no file behind https://localhost:3000/function.js.", changed("/functions.js", "/function.js")],
    [
      "Page does not refer to the page of the runtime.",
      changed(/(<Page>\s*<SourceLocation resid=")Pane.Url/, "$1Functions.Script.Url"),
    ],
    [
      "FunctionFile does not refer to the page of the runtime.",
      changed('<FunctionFile resid="Pane.Url"/>', ""),
    ],
    [
      "ShowTaskpane does not refer to the page of the runtime.",
      changed(/(<Action[^>]*>\s*<SourceLocation resid=")Pane.Url/, "$1Functions.Script.Url"),
    ],
    ["The pane opens another page than the runtime's.", changed("3000/taskpane.html", "3000/support.html")],
    [
      "TaskpaneId keeps the runtime from being shared.",
      changed(/(<Action[^>]*>)/, "$1<TaskpaneId>x</TaskpaneId>"),
    ],
    ["A shared runtime lives long.", changed('lifetime="long"', 'lifetime="short"')],
    ["assets/icon-32.png is 32 x 32, not 64 x 64.", changed(/(<HighRes.*)icon-64/, "$1icon-32")],
    ["An icon of size 80 is missing.", changed('size="80"', 'size="64"')],
    ["Two controls are called Brimbook.Group.", changed('id="Brimbook.OpenPane"', 'id="Brimbook.Group"')],
  ])("would be caught: %s", (fault, broken) => {
    expect(manifestFaults(broken, surroundings)).toContain(fault);
  });

  test("asks for what Office 2021, Microsoft 365, the web and Mac all have", () => {
    const sets = [...manifest.matchAll(/<Set Name="(\w+)" MinVersion="([\d.]+)"\/>/g)].map(
      ([, name, least]) => [name, least],
    );
    expect(sets).toEqual([
      ["SharedRuntime", "1.1"],
      ["CustomFunctionsRuntime", "1.3"],
      ["ExcelApi", "1.12"],
    ]);
  });

  test("carries the version of the project", () => {
    expect(/<Version>(.*)<\/Version>/.exec(manifest)![1]).toBe(packageJson.version);
  });

  test("has nothing of localhost left when it is built for another address", () => {
    for (const origin of ["https://fills.example.org", "https://example.org/brimbook"]) {
      const released = manifest.replaceAll(DEFAULT_ORIGIN, origin);
      expect(released).not.toContain("localhost");
      expect(manifestFaults(released, { ...surroundings, origin })).toEqual([]);
    }
  });
});
