import { readdirSync, readFileSync } from "node:fs";
import { ESLint, Linter } from "eslint";
import { describe, expect, it } from "vitest";
import { MAY_IMPORT, PURE_ROOMS } from "../../eslint.rooms.js";

/* The house as DEVELOPERS.md tells it, as the lint holds it, and as it stands. */

const ROOT = new URL("../../", import.meta.url);
const rooms = Object.keys(MAY_IMPORT);

/** The table's rows: for each room, which rooms it may import from. */
function table(): ReadonlyMap<string, readonly string[]> {
  const text = readFileSync(new URL("DEVELOPERS.md", ROOT), "utf8");
  const rows = text.split("\n").filter((line) => line.startsWith("| `src/"));
  return new Map(
    rows.flatMap((line) => {
      const [, names, , imports] = line.split("|").map((cell) => cell.trim());
      const listed = imports === "–" ? [] : imports!.split(", ");
      const whole = listed.flatMap((each) => (each === "the pure rooms" ? PURE_ROOMS : [each]));
      return [...names!.matchAll(/`src\/(\w+)`/g)].map(([, name]) => [name!, whole] as const);
    }),
  );
}

describe("the rooms", () => {
  it("of DEVELOPERS.md are those of the lint, and may import the same", () => {
    const told = table();
    expect([...told.keys()].sort()).toEqual([...rooms].sort());
    for (const room of rooms) {
      const lint = MAY_IMPORT[room]!;
      expect([...new Set(told.get(room))].sort(), room).toEqual([...new Set(lint)].sort());
    }
  });

  it("are all the folders of src", () => {
    const folders = readdirSync(new URL("src/", ROOT), { withFileTypes: true }).filter((each) =>
      each.isDirectory(),
    );
    expect(folders.map(({ name }) => name).filter((name) => !rooms.includes(name))).toEqual([]);
  });

  it("import in one direction: no room is reached from one that it may import", () => {
    const reach = (from: string, seen = new Set<string>()): Set<string> => {
      for (const to of MAY_IMPORT[from]!) if (!seen.has(to)) reach(to, seen.add(to));
      return seen;
    };
    for (const room of rooms) expect(reach(room).has(room), room).toBe(false);
  });

  it.each(rooms)(
    "%s: the lint refuses every room that it may not import, and lets the others pass",
    async (room) => {
      const config = (await new ESLint().calculateConfigForFile(`src/${room}/some.ts`)) as {
        rules: Linter.RulesRecord;
      };
      const rule = config.rules["no-restricted-imports"]!;
      const problems = (from: string) =>
        new Linter().verify(`import "${from}";`, { rules: { "no-restricted-imports": rule } });
      for (const other of rooms.filter((each) => each !== room)) {
        const refused = !MAY_IMPORT[room]!.includes(other);
        for (const up of ["../", "../../"])
          expect(problems(`${up}${other}/thing`).length > 0, `${room} from ${other}`).toBe(refused);
      }
      for (const outside of ["react", "node:fs"])
        expect(problems(outside).length > 0, `${room} from ${outside}`).toBe(PURE_ROOMS.includes(room));
    },
  );
});
