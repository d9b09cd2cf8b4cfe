/** What a cylinder may be filled with: its rating, and whether pure oxygen may go into it. */
export interface OxygenService {
  /** Highest oxygen, as a mole fraction. `undefined` for "air only", whose limit is the shop's or country's. */
  readonly maxOxygen: number | undefined;
  /** Cleaned for oxygen service: partial-pressure blending is allowed. */
  readonly oxygenClean: boolean;
}
