/** What can be wrong with a manifest that fits the schema; each fault is a sentence. */
export interface Surroundings {
  readonly origin: string;
  /** Whether the add-in's folder has a file by this path. */
  readonly serves: (path: string) => boolean;
  /** Width and height of an image in that folder. */
  readonly imageSize: (path: string) => readonly [number, number];
}

/** Which table of the resources an element's `resid` refers to. */
const RESOURCE_OF: Readonly<Record<string, string>> = {
  Runtime: "Urls",
  SourceLocation: "Urls",
  FunctionFile: "Urls",
  LearnMoreUrl: "Urls",
  Namespace: "ShortStrings",
  Title: "ShortStrings",
  Label: "ShortStrings",
  Description: "LongStrings",
  Image: "Images",
};
const RIBBON_SIZES = [16, 32, 80];

export function manifestFaults(xml: string, surroundings: Surroundings): string[] {
  const manifest = new DOMParser().parseFromString(xml, "application/xml");
  return [
    ...resourceFaults(manifest),
    ...addressFaults(manifest, surroundings),
    ...sharedRuntimeFaults(manifest),
    ...iconFaults(manifest, surroundings),
    ...controlFaults(manifest),
  ];
}

const all = (root: Document | Element, selector: string) => [...root.querySelectorAll(selector)];

/** Every `resid` names a resource of the right kind, and every resource is used. */
function resourceFaults(manifest: Document): string[] {
  const resources = all(manifest, "Resources > * > *");
  const references = all(manifest, "[resid]");
  const ids = resources.map((resource) => resource.id);
  return [
    ...ids.filter((id, index) => ids.indexOf(id) !== index).map((id) => `Two resources are called ${id}.`),
    ...references
      .filter((element) => !resources.some((resource) => fits(element, resource)))
      .map(
        (element) =>
          `${element.localName} refers to ${element.getAttribute("resid")}, which is no such resource.`,
      ),
    ...ids
      .filter((id) => !references.some((element) => element.getAttribute("resid") === id))
      .map((id) => `Nothing refers to the resource ${id}.`),
  ];
}

const fits = (element: Element, resource: Element) =>
  element.getAttribute("resid") === resource.id &&
  resource.parentElement!.localName === RESOURCE_OF[element.localName];

/** Every address is https, on the add-in's own origin, and there is a file behind it. */
function addressFaults(manifest: Document, { origin, serves }: Surroundings): string[] {
  const addresses = all(manifest, "[DefaultValue]")
    .map((element) => element.getAttribute("DefaultValue")!)
    .filter((value) => /^[a-z]+:\/\//i.test(value));
  return addresses.flatMap((address) => {
    if (!address.startsWith("https://")) return [`${address} is not https.`];
    if (!address.startsWith(`${origin}/`)) return [`${address} is not on ${origin}.`];
    return serves(pathOf(address, origin)) ? [] : [`There is no file behind ${address}.`];
  });
}

const pathOf = (address: string, origin: string) => address.slice(origin.length + 1);

/** One page carries functions, commands and pane; else Excel starts a second runtime, or none. */
function sharedRuntimeFaults(manifest: Document): string[] {
  const places = {
    Runtime: "Runtimes > Runtime",
    Page: "Page > SourceLocation",
    FunctionFile: "FunctionFile",
    ShowTaskpane: "Action > SourceLocation",
  };
  const found = Object.entries(places).map(([place, selector]) => ({
    place,
    resids: all(manifest, selector).map((element) => element.getAttribute("resid")),
  }));
  const page = found[0]!.resids[0];
  const address = all(manifest, "Urls > *")
    .find((url) => url.id === page)
    ?.getAttribute("DefaultValue");
  const opened = manifest.querySelector("DefaultSettings > SourceLocation")?.getAttribute("DefaultValue");
  return [
    ...found
      .filter(({ resids }) => resids.length === 0 || resids.some((resid) => resid !== page))
      .map(({ place }) => `${place} does not refer to the page of the runtime.`),
    ...(opened === address ? [] : ["The pane opens another page than the runtime's."]),
    ...all(manifest, "TaskpaneId").map(() => "TaskpaneId keeps the runtime from being shared."),
    ...all(manifest, "Runtime:not([lifetime=long])").map(() => "A shared runtime lives long."),
  ];
}

/** Icons come in the sizes Excel wants, and the images have the size they are said to have. */
function iconFaults(manifest: Document, { origin, serves, imageSize }: Surroundings): string[] {
  const addresses = new Map(
    all(manifest, "Images > *").map((image) => [image.id, image.getAttribute("DefaultValue")!]),
  );
  const addressOf = (selector: string) =>
    manifest.querySelector(selector)?.getAttribute("DefaultValue") ?? "";
  const said: [number, string][] = [
    [32, addressOf("IconUrl")],
    [64, addressOf("HighResolutionIconUrl")],
    ...all(manifest, "Icon > *").map((image): [number, string] => [
      Number(image.getAttribute("size")),
      addresses.get(image.getAttribute("resid")!) ?? "",
    ]),
  ];
  const wrongSizes = said.flatMap(([size, address]) => {
    const path = pathOf(address, origin);
    if (!serves(path)) return [];
    const [width, height] = imageSize(path);
    return width === size && height === size
      ? []
      : [`${path} is ${width} x ${height}, not ${size} x ${size}.`];
  });
  const missingSizes = all(manifest, "Icon").flatMap((icon) => {
    const sizes = all(icon, ":scope > *").map((image) => Number(image.getAttribute("size")));
    return RIBBON_SIZES.filter((size) => !sizes.includes(size)).map(
      (size) => `An icon of size ${size} is missing.`,
    );
  });
  return [...new Set(wrongSizes), ...missingSizes];
}

function controlFaults(manifest: Document): string[] {
  const ids = all(manifest, "Group, Control").map((element) => element.id);
  return ids.filter((id, index) => ids.indexOf(id) !== index).map((id) => `Two controls are called ${id}.`);
}
