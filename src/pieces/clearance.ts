/** Places on a square grid round a middle, each with a distance at which a line surely lies; rows of `across` places, lowest y first. */
export interface Clearance {
  readonly across: number;
  readonly mm: Float64Array;
}

/**
 * How near lines come to each place of a grid: never less than the true distance, and seldom more. Each place takes the nearest line of
 * its neighbours over, two passes there and back, which a few hundred short lines pass on well. A place that fails by this distance fails
 * by the true one, so that it need not be looked at closer.
 */
export function clearanceRound(segments: Float64Array, [x0, y0]: readonly [number, number], stepMm: number, reach: number): Clearance {
  const across = 2 * reach + 1;
  const squares = new Float64Array(across * across).fill(Infinity);
  const nearest = new Int32Array(across * across).fill(-1);
  const offer = (cell: number, k: number): void => {
    const square = squareTo(segments, 4 * k, x0 + stepMm * ((cell % across) - reach), y0 + stepMm * (Math.floor(cell / across) - reach));
    if (square >= squares[cell]!) return;
    squares[cell] = square;
    nearest[cell] = k;
  };
  const cellAt = (v: number, from: number): number => Math.min(across - 1, Math.max(0, Math.round((v - from) / stepMm) + reach));
  for (let k = 0; 4 * k < segments.length; k++) {
    const s = 4 * k;
    // A line longer than a step passes more than one place.
    const parts = Math.max(1, Math.ceil(Math.max(Math.abs(segments[s + 2]! - segments[s]!), Math.abs(segments[s + 3]! - segments[s + 1]!)) / stepMm));
    for (let p = 0; p <= parts; p++) {
      const t = p / parts;
      offer(cellAt(segments[s]! + t * (segments[s + 2]! - segments[s]!), x0) + across * cellAt(segments[s + 1]! + t * (segments[s + 3]! - segments[s + 1]!), y0), k);
    }
  }
  const from = (cell: number, other: number): void => {
    const k = nearest[other]!;
    if (k >= 0 && k !== nearest[cell]) offer(cell, k);
  };
  for (let cell = 0; cell < squares.length; cell++) {
    const x = cell % across;
    if (x > 0) from(cell, cell - 1);
    if (cell < across) continue;
    from(cell, cell - across);
    if (x > 0) from(cell, cell - across - 1);
    if (x < across - 1) from(cell, cell - across + 1);
  }
  for (let cell = squares.length - 1; cell >= 0; cell--) {
    const x = cell % across;
    if (x < across - 1) from(cell, cell + 1);
    if (cell + across >= squares.length) continue;
    from(cell, cell + across);
    if (x > 0) from(cell, cell + across - 1);
    if (x < across - 1) from(cell, cell + across + 1);
  }
  return { across, mm: squares.map(Math.sqrt) };
}

function squareTo(s: Float64Array, k: number, px: number, py: number): number {
  const x = s[k]!;
  const y = s[k + 1]!;
  const dx = s[k + 2]! - x;
  const dy = s[k + 3]! - y;
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / square)) : 0;
  const ex = px - (x + t * dx);
  const ey = py - (y + t * dy);
  return ex * ex + ey * ey;
}
