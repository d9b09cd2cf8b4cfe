import { defineConfig } from "vitest/config";

/** The tests of the two rooms whose rules are tried by changing them: `npm run mutants`. */
export default defineConfig({
  test: {
    include: ["tests/audit/**/*.test.ts", "tests/cylinders/**/*.test.ts"],
    /* It reads the doc comments of the rules from their files, which are changed while mutants are tried. */
    exclude: ["tests/audit/ruleReference.test.ts"],
    testTimeout: 60_000,
  },
});
