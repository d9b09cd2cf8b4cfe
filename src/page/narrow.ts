/** Below this width workbook and pane take turns, and buttons go without their words. */
export const NARROW = "@media (max-width: 699px)";
