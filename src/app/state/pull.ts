/**
 * From a finger to settings. A handle stands at a place in the picture, and each of its settings moves it by so many pixels per
 * unit. Given how far the finger is from the handle, these are the changes that bring the handle under the finger, least squares
 * with a little damping so that a setting which hardly moves the handle in this view hardly changes.
 */
export interface Direction {
  /** Pixels by which the handle moves when the setting grows by one unit. */
  readonly x: number;
  readonly y: number;
}

/** Pixels per unit under which a direction counts as pointing away from the viewer. */
const blind = 0.15;

/** Change of one setting, in its unit. */
export function pullOne(dx: number, dy: number, a: Direction): number {
  const aa = a.x * a.x + a.y * a.y;
  return (dx * a.x + dy * a.y) / (aa + blind * blind);
}

/** Changes of two settings whose directions need not be square to each other. */
export function pullTwo(dx: number, dy: number, a: Direction, b: Direction): readonly [number, number] {
  const aa = a.x * a.x + a.y * a.y + blind * blind;
  const bb = b.x * b.x + b.y * b.y + blind * blind;
  const ab = a.x * b.x + a.y * b.y;
  const da = dx * a.x + dy * a.y;
  const db = dx * b.x + dy * b.y;
  const det = aa * bb - ab * ab;
  return [(da * bb - db * ab) / det, (db * aa - da * ab) / det];
}
