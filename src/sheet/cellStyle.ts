/** How a cell looks, beyond its number format. What is absent is as usual. */
export interface CellStyle {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strike?: boolean;
  /** Points; 11 is usual. */
  readonly sizePt?: number;
  /** `#RRGGBB`, as are all colours here. */
  readonly fontColour?: string;
  readonly fill?: string;
  /** The colour of a thin line along the cell's lower edge. */
  readonly lineBelow?: string;
  readonly horizontal?: "left" | "center" | "right";
  /** Of left or right: so many steps away from the edge. */
  readonly indent?: number;
  readonly vertical?: "top" | "center" | "bottom";
  readonly wrap?: boolean;
}
