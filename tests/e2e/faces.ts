import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";

/** The faces that the layout is tried with: the one that we ship, one as wide as screens have, and one very narrow. */
export const FACES = ["shipped", "wide", "narrow"] as const;
export type Face = (typeof FACES)[number];

const IN_ITS_PLACE = {
  wide: { name: "dejavu-sans", weights: { 400: 400, 600: 700 } },
  narrow: { name: "fira-sans-extra-condensed", weights: { 400: 400, 600: 600 } },
} as const;

/** Hands out another face in place of the one that we ship. */
export async function useFace(page: Page, face: Face): Promise<void> {
  if (face === "shipped") return;
  const { name, weights } = IN_ITS_PLACE[face];
  await page.route("**/*.woff2", (route) => {
    const [, weight] = /-(400|600)-/.exec(route.request().url())!;
    const file = `${name}-latin-${weights[weight as "400" | "600"]}-normal.woff2`;
    return route.fulfill({
      contentType: "font/woff2",
      body: readFileSync(`node_modules/@fontsource/${name}/files/${file}`),
    });
  });
}
