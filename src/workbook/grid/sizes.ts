/** A character of the standard font, in pixels; column widths count in such characters, padding included. */
const CHARACTER_PIXELS = 7;
/** Widths are kept in whole 256ths of a character. */
const WIDTH_STEPS = 256;

export function columnPixels(characters: number): number {
  return Math.round(characters * CHARACTER_PIXELS);
}

export function columnCharacters(pixels: number): number {
  return Math.floor((pixels / CHARACTER_PIXELS) * WIDTH_STEPS) / WIDTH_STEPS;
}

/** Row heights count in points of 1/72 inch; a pixel is 1/96 inch. */
export function rowPixels(points: number): number {
  return Math.round((points * 4) / 3);
}

export function rowPoints(pixels: number): number {
  return Math.round(pixels * 75) / 100;
}
