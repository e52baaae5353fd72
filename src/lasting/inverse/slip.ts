/**
 * Friction of a sheet that slides everywhere: a share of the pressure, against the way of the slide (three numbers a vertex of length 1).
 */
export interface Friction {
  readonly share: number;
  readonly along: Float64Array;
}

/**
 * What holds a sheet where it lies while it is pulled elsewhere: friction, hands, and the tacks beside the pull. Per area it resists
 * with `perMm3` for each mm that a place moves from `from`, the flat shape before the pulls.
 */
export interface Stick {
  readonly from: Float64Array;
  /** N/mm³ */
  readonly perMm3: number;
}

export function stickEnergy({ from, perMm3 }: Stick, areas: Float64Array, uv: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < areas.length; i++) sum += areas[i]! * ((uv[2 * i]! - from[2 * i]!) ** 2 + (uv[2 * i + 1]! - from[2 * i + 1]!) ** 2);
  return 0.5 * perMm3 * sum;
}

/** Adds gradient, and where `values` are given the Hessian. */
export function addStickInto(gradient: Float64Array, values: Float64Array | undefined, { from, perMm3 }: Stick, areas: Float64Array, uv: Float64Array): void {
  for (let i = 0; i < areas.length; i++) {
    const hold = perMm3 * areas[i]!;
    gradient[2 * i]! += hold * (uv[2 * i]! - from[2 * i]!);
    gradient[2 * i + 1]! += hold * (uv[2 * i + 1]! - from[2 * i + 1]!);
    if (!values) continue;
    values[4 * i]! += hold;
    values[4 * i + 3]! += hold;
  }
}
