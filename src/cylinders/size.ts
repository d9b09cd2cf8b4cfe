/** A cylinder's size: water volume of all its bottles together. */
export interface CylinderSize {
  readonly waterVolumeL: number;
  /** The trade name it was read from. */
  readonly name?: string;
  /** 2 for a twin set. */
  readonly count: number;
}
