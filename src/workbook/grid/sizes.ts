/** Column widths count in characters of the standard font, 7 pixels each, with 5 pixels of padding. */
export function columnPixels(characters: number): number {
  return Math.round(characters * 7 + 5);
}

export function columnCharacters(pixels: number): number {
  return Math.round(((pixels - 5) / 7) * 100) / 100;
}

/** Row heights count in points of 1/72 inch; a pixel is 1/96 inch. */
export function rowPixels(points: number): number {
  return Math.round((points * 4) / 3);
}

export function rowPoints(pixels: number): number {
  return Math.round(pixels * 75) / 100;
}
