import { SaxesParser } from "saxes";

/** The namespace of the custom XML part in which a workbook carries our settings, whatever host it is open in. */
export const SETTINGS_NAMESPACE = "urn:brimbook:settings";

/**
 * The settings that a custom XML part holds, by key. Text that is not JSON comes as it stands, so that whoever
 * parses it can say so and set it aside. Anything that is not ours to read is no setting.
 */
export function readSettingsPart(xml: string): Map<string, unknown> {
  const settings = new Map<string, unknown>();
  let open: { readonly key: string; text: string } | undefined;
  const parser = new SaxesParser({ xmlns: true });
  parser.on("opentag", (tag) => {
    const key = tag.attributes["key"]?.value;
    if (tag.uri === SETTINGS_NAMESPACE && tag.local === "setting" && key) open = { key, text: "" };
  });
  const append = (text: string) => {
    if (open) open.text += text;
  };
  parser.on("text", append);
  parser.on("cdata", append);
  parser.on("closetag", () => {
    if (open) settings.set(open.key, parsed(open.text));
    open = undefined;
  });
  parser.on("error", () => undefined);
  parser.write(xml).close();
  return settings;
}

/** The custom XML part for these settings: plain ASCII, so that no host's encoding can change it. */
export function settingsPart(settings: ReadonlyMap<string, unknown>): string {
  const entries = [...settings].map(
    ([key, value]) => `<setting key="${escaped(key)}">${escaped(ascii(JSON.stringify(value)))}</setting>`,
  );
  return `<settings xmlns="${SETTINGS_NAMESPACE}">${entries.join("")}</settings>`;
}

/** Thousands of accepted findings take a tenth of it. */
export const MOST_SETTINGS_CHARACTERS = 5_000_000;

/** Settings of ours are nested six deep. Deeper ones stay text: to write them again would overrun the stack. */
const DEEPEST = 50;

function parsed(text: string): unknown {
  const isLong = text.length > MOST_SETTINGS_CHARACTERS;
  /* What was left as text before comes back as that text, in quotes. */
  if (!text.startsWith('"') && (isLong || isDeeperThan(DEEPEST, text))) return text;
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

function isDeeperThan(deepest: number, json: string): boolean {
  let depth = 0;
  for (const [token] of json.matchAll(/"(?:[^"\\]|\\.)*"|[[{\]}]/g)) {
    if (token === "[" || token === "{") depth += 1;
    else if (token === "]" || token === "}") depth -= 1;
    if (depth > deepest) return true;
  }
  return false;
}

/** JSON's own escapes for whatever XML or an encoding could trip over. */
const ascii = (json: string) =>
  json.replace(/[^\x20-\x7e]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`);

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (text: string) => text.replace(/[&<>"]/g, (character) => ENTITIES[character]!);
