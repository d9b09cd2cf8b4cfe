import type { Compiler } from "webpack";

export interface FunctionsMetadata {
  readonly allowErrorForDataTypeAny: boolean;
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly description: string;
    readonly helpUrl: string;
    readonly parameters: readonly {
      readonly name: string;
      readonly description: string;
      readonly type: string;
      readonly dimensionality: string;
      readonly optional?: boolean;
    }[];
  }[];
}

export declare function functionsMetadata(helpUrl: string): Promise<FunctionsMetadata>;

export declare class FunctionsMetadataPlugin {
  constructor(options: { output: string; helpUrl: string });
  apply(compiler: Compiler): void;
}
