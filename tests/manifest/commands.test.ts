import { spawnSync } from "node:child_process";
import { describe, expect, test } from "vitest";
import configurations from "../../webpack.config.js";

describe("npm run build", () => {
  test.each(["http://fills.example.org", "fills.example.org", "https://x.example/?a=1", "", "file:///srv"])(
    "refuses the address %s, as Excel would, and says what one looks like",
    (origin) => {
      expect(() => configurations({ origin })).toThrow(/https addresses only.*--env origin=https:\/\//);
    },
  );

  test("takes an address with or without a slash at its end", () => {
    expect(configurations({ origin: "https://example.org/brimbook/" })).toHaveLength(3);
  });
});

describe("npm run excel", () => {
  test.runIf(process.platform === "linux")("says where there is no Excel, and what to do instead", () => {
    const { status, stderr, stdout } = spawnSync(process.execPath, ["scripts/excel.mjs"], {
      encoding: "utf8",
    });
    expect(status).toBe(1);
    expect(stdout).toBe("");
    expect(stderr).toMatch(
      /^There is no Excel on this computer, and none is made for its system \(linux\)\.\n/,
    );
    expect(stderr).toContain("npm start");
    expect(stderr).toContain("--env origin=https://");
  });
});
