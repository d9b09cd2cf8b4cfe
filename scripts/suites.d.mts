export declare function googleScript(): Promise<string>;
export declare function onlyofficeScript(): Promise<string>;
export declare function writeSuites(): Promise<void>;
