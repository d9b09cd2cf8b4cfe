/** The face that is shipped with the grid and that its cells are drawn in. */
export const TYPEFACE = "Source Sans 3";

/** As they are in cells: a letter of each file of a face. */
const LETTERS = "aő";

/**
 * Waits until the faces that cells can ask for are here: the engine draws and measures a cell once, with what it has.
 * Where one does not come, its cells are drawn with another.
 */
export async function loadTypefaces(): Promise<void> {
  const faces = [TYPEFACE, "Helvetica Neue", "Calibri", "Arial"].flatMap((name) => [
    `11pt "${name}"`,
    `bold 11pt "${name}"`,
  ]);
  await Promise.allSettled(faces.map((face) => document.fonts.load(face, LETTERS)));
}
