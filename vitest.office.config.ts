import { defineConfig } from "vitest/config";

/** Tests that open what we write in LibreOffice. */
export default defineConfig({
  test: {
    include: ["tests/office/**/*.test.ts"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    fileParallelism: false,
  },
});
