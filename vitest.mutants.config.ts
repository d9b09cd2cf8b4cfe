import { defineConfig } from "vitest/config";

/** The tests that a room is tried with while its rules are changed: `npm run mutants`. */
export default defineConfig({
  test: {
    include: (process.env.MUTANTS_TESTS ?? "tests/audit/**/*.test.ts,tests/cylinders/**/*.test.ts").split(
      ",",
    ),
    /* It reads the doc comments of the rules from their files, which are changed while mutants are tried. */
    exclude: ["tests/audit/ruleReference.test.ts"],
    testTimeout: 60_000,
  },
});
