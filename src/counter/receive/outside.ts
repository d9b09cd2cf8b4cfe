import type { FillForm } from "../form";

/** What to look at before the whip goes on. Common practice, no source. */
export const OUTSIDE = [
  ["outside-shell", "No dents, cuts, rust, bulges or signs of heat"],
  ["outside-valve", "Valve opens and closes; thread and O-ring whole"],
  ["outside-stamps", "Stamps on the shoulder are those of the register"],
  ["outside-label", "Old mix label read, then taken off"],
] as const;

export const OUTSIDE_TITLE = "Look at the outside";

/** Whether every box was ticked: less than all is not looked over. */
export function isLookedOver({ ticked }: FillForm): boolean {
  return OUTSIDE.every(([name]) => ticked.includes(name));
}
