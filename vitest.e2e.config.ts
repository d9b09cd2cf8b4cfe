import { defineConfig } from "vitest/config";

/** Tests that drive a real browser. */
export default defineConfig({
  test: {
    include: ["tests/e2e/**/*.test.ts"],
    globalSetup: "tests/e2e/serve.ts",
    testTimeout: 60_000,
    hookTimeout: 180_000,
    fileParallelism: false,
  },
});
