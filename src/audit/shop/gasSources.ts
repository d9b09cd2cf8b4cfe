import type { Mixture } from "../../gas/mixture";
import { readMix } from "../../gas/readMix";
import { Refusal } from "../../gas/refusal";
import type { Fill } from "../../log/log";
import type { GasSource, Shop } from "./shop";

/** The bank or compressor that a fill came from, as far as the shop has told of it. */
export function sourceOf({ fields }: Fill, { sources }: Shop): GasSource | undefined {
  const { source } = fields;
  if (source.kind !== "value" || sources === undefined) return undefined;
  const named = byName(sources);
  const name = source.value;
  if (!named.has(name))
    named.set(
      name,
      sources.find((told) => isSameSource(told.name, name)),
    );
  return named.get(name);
}

/** A log names few sources many times. */
const BY_NAME = new WeakMap<readonly GasSource[], Map<string, GasSource | undefined>>();

function byName(sources: readonly GasSource[]): Map<string, GasSource | undefined> {
  let named = BY_NAME.get(sources);
  if (named === undefined) BY_NAME.set(sources, (named = new Map()));
  return named;
}

/** Why rules that judge by what sources give can judge nothing: the shop has told of none. */
export function noSourcesTold({ sources }: Shop): string | undefined {
  return (sources ?? []).length > 0
    ? undefined
    : "no bank or compressor is told of under Rules & shop in the pane";
}

/** Names of banks and compressors are compared without regard to case and spaces. */
export function isSameSource(one: string, other: string): boolean {
  return one === other || bare(one) === bare(other);
}

/** What flows from the bank or compressor of a fill: as the shop has told, else as its name says (`Bank EAN32`). */
export function sourceMix(fill: Fill, shop: Shop): Mixture | undefined {
  const { source } = fill.fields;
  if (source.kind !== "value") return undefined;
  return sourceOf(fill, shop)?.mix ?? mixInName(source.value);
}

function bare(name: string): string {
  return name.toLowerCase().replace(/\s+/g, "");
}

const MIX_IN_NAME =
  /\b(?:EANX?|NX|nitrox|TX|trimix)[ -]?\d{1,2}(?:[./]\d{1,2})?\b|\b\d{2}(?:\.\d)? ?%|\bair\b/i;

function mixInName(name: string): Mixture | undefined {
  const [written] = MIX_IN_NAME.exec(name) ?? [];
  if (written === undefined) return undefined;
  try {
    return readMix(written);
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}
