/** What the pane says where it cannot be a pane, and what to do about it. */
export const NO_OFFICE =
  "Brimbook could not load Microsoft's Office script from appsforoffice.microsoft.com. Check the connection, or ask " +
  "whoever looks after the network to allow that address; then reload.";

export const NOT_EXCEL =
  "This page is Brimbook's task pane for Excel. Open it from the Home tab in Excel: Brimbook is at the right end.";

export const NO_ANSWER =
  "Excel has not answered yet. If a cell is being edited, press Enter or Esc in the sheet; if this note stays, reload.";
