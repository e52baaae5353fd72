/** What a sheet is made of and how it is pressed on. */
export interface Card {
  /** Force per width against stretch, N/mm. */
  readonly stretch: number;
  /** Bending stiffness per width, N·mm. */
  readonly bend: number;
  /** Pressure of the hands toward the ground, N/mm². */
  readonly press: number;
  /** Pressure per depth with which the ground resists being entered, N/mm³. */
  readonly ground: number;
}
