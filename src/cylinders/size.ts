/** A cylinder's size: water volume of all its bottles together. */
export interface CylinderSize {
  readonly waterVolumeL: number;
  /** The trade name it was read from. */
  readonly name?: string;
  /** 2 for a twin set. */
  readonly count: number;
  /** What cylinders of this size are stamped for, bar absolute, where the name settles it. The stamp itself counts first. */
  readonly servicePressureBar?: number;
  /** Steel of a class that may have a plus: people write its pressure with the 10 % in it. */
  readonly plusPossible?: true;
}
