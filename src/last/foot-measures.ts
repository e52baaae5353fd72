/** All in mm, of the foot as it stands. Definitions: docs/method/last.md. */
export interface FootMeasures {
  /** Of the smallest rectangle round the whole scan seen from above, leg included: its long and its short side. */
  readonly planLength: number;
  readonly planBreadth: number;
  /** Tape girth square to that, at 70 % of the plan length from behind. */
  readonly girthAt70: number;
  /** Hindmost place of the heel to foremost of the toes. */
  readonly footLength: number;
  /** Heel to innermost place of the ball. */
  readonly ballLength: number;
  /** Between innermost and outermost place of the ball, square to the length. */
  readonly footBreadth: number;
  /** Tape girth over both, the tape free to settle where it is shortest. */
  readonly ballGirth: number;
  readonly heelBreadth: number;
}
