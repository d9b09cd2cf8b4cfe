import { FileFault } from "./file/fault";
import { attribute, escapeXml, unescapeXml, XmlScanner } from "./file/xml";

/** The namespace of the custom XML part in which a workbook carries our settings, whatever host it is open in. */
export const SETTINGS_NAMESPACE = "urn:brimbook:settings";

/**
 * The settings that a custom XML part holds, by key. Text that is not JSON comes as it stands, so that whoever
 * parses it can say so and set it aside. Anything that is not ours to read is no setting.
 */
export function readSettingsPart(xml: string): Map<string, unknown> {
  const settings = new Map<string, unknown>();
  let prefix: string | undefined;
  let isOurs = false;
  let open: { readonly key: string; text: string } | undefined;
  const scanner = new XmlScanner({
    open(name, tag) {
      if (prefix === undefined) {
        prefix = prefixOf(tag);
        isOurs = attribute(tag, prefix === "" ? "xmlns" : prefix) === SETTINGS_NAMESPACE;
      }
      const key = attribute(tag, "key");
      if (isOurs && name === "setting" && prefixOf(tag) === prefix && key) open = { key, text: "" };
    },
    text(raw) {
      if (open) open.text += unescapeXml(raw);
    },
    close() {
      if (open) settings.set(open.key, parsed(open.text));
      open = undefined;
    },
  });
  try {
    scanner.push(xml);
    scanner.end();
  } catch (thrown) {
    // What stands before the damage is kept.
    if (!(thrown instanceof FileFault)) throw thrown;
  }
  return settings;
}

const prefixOf = (tag: string) => /^([^\s:/]+):/.exec(tag)?.[1] ?? "";

/** The custom XML part for these settings: plain ASCII, so that no host's encoding can change it. */
export function settingsPart(settings: ReadonlyMap<string, unknown>): string {
  const entries = [...settings].map(
    ([key, value]) => `<setting key="${escapeXml(key)}">${escapeXml(ascii(JSON.stringify(value)))}</setting>`,
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
