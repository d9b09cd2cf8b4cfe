import { defineConfig } from "vitest/config";
export default defineConfig({
  test: {
    include: ["tests/tmp-hf/*.test.ts", "tests/e2e/bridge*.test.ts", "tests/e2e/excelProxies.test.ts"],
    testTimeout: 120000,
    hookTimeout: 120000,
    fileParallelism: false,
  },
});
