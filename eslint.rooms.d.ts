export declare const PURE_ROOMS: readonly string[];
export declare const MAY_IMPORT: Readonly<Record<string, readonly string[]>>;
