const MOST_CHARACTERS = 31;

/**
 * Names as spreadsheets allow them on tabs: no more than 31 characters, none of `[]:*?/\`, no two alike, and none of
 * those that are taken: such a name gets a number.
 */
export function tabNames(wanted: readonly string[], alreadyTaken: readonly string[] = []): readonly string[] {
  const taken = new Set(alreadyTaken.map((name) => name.toLowerCase()));
  return wanted.map((name) => {
    const allowed = name
      .replace(/[[\]:*?/\\\u0000-\u001F]/g, " ")
      .replace(/^'+|'+$/g, "")
      .slice(0, MOST_CHARACTERS);
    const base = allowed.trim() === "" ? "Sheet" : allowed;
    let free = base;
    for (let n = 2; taken.has(free.toLowerCase()); n++) {
      const ending = ` (${n})`;
      free = base.slice(0, MOST_CHARACTERS - ending.length) + ending;
    }
    taken.add(free.toLowerCase());
    return free;
  });
}
