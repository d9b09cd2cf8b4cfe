import { readSettingsPart, SETTINGS_NAMESPACE, settingsPart } from "../settingsPart";
import type { Session } from "./session";

const ABOUT = "the settings kept in this workbook";

/** Our settings in the workbook's custom XML part. They travel with the file, so nothing personal goes in. */
export class SettingsStore {
  /** Writes wait for each other: each one reads, changes one key and writes all. */
  private lastWrite: Promise<void> = Promise.resolve();

  constructor(private readonly session: Session) {}

  async read(key: string): Promise<unknown> {
    const settings = await this.session.read(ABOUT, async (context) => (await findPart(context)).settings);
    return settings.get(key) ?? null;
  }

  write(key: string, value: unknown): Promise<void> {
    const write = () => this.session.act(ABOUT, (context) => change(context, key, value));
    this.lastWrite = this.lastWrite.then(write, write);
    return this.lastWrite;
  }
}

interface Found {
  readonly part?: Excel.CustomXmlPart;
  readonly settings: Map<string, unknown>;
}

const ourParts = (context: Excel.RequestContext) =>
  context.workbook.customXmlParts.getByNamespace(SETTINGS_NAMESPACE);

async function findPart(context: Excel.RequestContext): Promise<Found> {
  const parts = ourParts(context);
  parts.load("items/id");
  await context.sync();
  const part = parts.items[0];
  if (!part) return { settings: new Map() };
  const xml = part.getXml();
  await context.sync();
  // eslint-disable-next-line office-addins/load-object-before-read -- a method's result comes with the sync alone
  return { part, settings: readSettingsPart(xml.value) };
}

async function change(context: Excel.RequestContext, key: string, value: unknown): Promise<void> {
  const { part, settings } = await findPart(context);
  if (value === null || value === undefined) settings.delete(key);
  else settings.set(key, value);
  if (settings.size === 0) part?.delete();
  else if (part) part.setXml(settingsPart(settings));
  else context.workbook.customXmlParts.add(settingsPart(settings));
  await context.sync();
}
