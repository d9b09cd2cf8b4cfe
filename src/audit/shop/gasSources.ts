import type { Mixture } from "../../gas/mixture";
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

/** What flows from the bank or compressor of a fill, as the shop has told. Its name is only its name: no name is a mix. */
export function sourceMix(fill: Fill, shop: Shop): Mixture | undefined {
  return sourceOf(fill, shop)?.mix;
}

function bare(name: string): string {
  return name.toLowerCase().replace(/\s+/g, "");
}
