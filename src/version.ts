import packageJson from "../package.json";

/** The version of Brimbook that this was built from; the manifest carries the same. */
export const VERSION: string = packageJson.version;
