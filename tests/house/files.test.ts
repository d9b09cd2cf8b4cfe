import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const SRC = fileURLToPath(new URL("../../src/", import.meta.url));
const FILES = readdirSync(SRC, { recursive: true, encoding: "utf8" })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => join(SRC, name));

/** What a file imports of ours, types as well. */
function importsOf(file: string): readonly string[] {
  return [...readFileSync(file, "utf8").matchAll(/(?:\bfrom|\bimport)\s*\(?\s*"(\.{1,2}\/[^"]+)"/g)].flatMap(
    ([, path]) => {
      const at = normalize(join(dirname(file), path!));
      return [at, `${at}.ts`, `${at}.tsx`, join(at, "index.ts")]
        .filter((each) => FILES.includes(each))
        .slice(0, 1);
    },
  );
}

/** Every circle of files, the files of each in order. */
function circles(graph: ReadonlyMap<string, readonly string[]>): readonly (readonly string[])[] {
  const reaches = (from: string): ReadonlySet<string> => {
    const seen = new Set<string>();
    const open = [...(graph.get(from) ?? [])];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (seen.has(next)) continue;
      seen.add(next);
      open.push(...(graph.get(next) ?? []));
    }
    return seen;
  };
  const reached = new Map([...graph.keys()].map((file) => [file, reaches(file)]));
  const found = new Map<string, readonly string[]>();
  for (const [file, far] of reached) {
    if (!far.has(file)) continue;
    const circle = [...far].filter((other) => reached.get(other)?.has(file)).sort();
    found.set(circle.join(), circle);
  }
  return [...found.values()];
}

it("no files import each other in a circle, for types neither", () => {
  const graph = new Map(FILES.map((file) => [file, importsOf(file)]));
  expect([...graph.values()].flat().length).toBeGreaterThan(1000);
  const named = circles(graph);
  expect(named.map((circle) => circle.map((file) => relative(SRC, file)))).toEqual([]);
});

it("a circle would be found", () => {
  const graph = new Map([
    ["a", ["b"]],
    ["b", ["c"]],
    ["c", ["b", "d"]],
    ["d", []],
  ]);
  expect(circles(graph)).toEqual([["b", "c"]]);
});

it("no file is longer than 400 lines, and no folder has more than 25 files directly in it", () => {
  const long = FILES.filter((file) => readFileSync(file, "utf8").split("\n").length > 401);
  expect(long.map((file) => relative(SRC, file))).toEqual([]);
  const folders = new Map<string, number>();
  for (const file of FILES) folders.set(dirname(file), (folders.get(dirname(file)) ?? 0) + 1);
  const full = [...folders].filter(([, files]) => files > 25);
  expect(full.map(([folder, files]) => `${relative(SRC, folder)}: ${files}`)).toEqual([]);
});
