import { defineConfig, mergeConfig } from "vitest/config";
import base from "./vitest.config";

/** The tests of the two rooms whose rules are tried by changing them: `npm run mutants`. */
export default mergeConfig(
  base,
  defineConfig({ test: { include: ["tests/audit/**/*.test.ts", "tests/cylinders/**/*.test.ts"] } }),
);
