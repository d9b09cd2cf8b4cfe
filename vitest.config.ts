import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    /* Property tests run long on a busy machine; no test asserts a time. */
    testTimeout: 60_000,
    exclude: ["tests/e2e/**", "tests/office/**", "node_modules/**"],
  },
});
