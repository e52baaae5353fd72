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

export type ArrowKey = "ArrowUp" | "ArrowDown" | "ArrowLeft" | "ArrowRight";
const arrows: Readonly<Record<ArrowKey, Direction>> = { ArrowUp: { x: 0, y: -1 }, ArrowDown: { x: 0, y: 1 }, ArrowLeft: { x: -1, y: 0 }, ArrowRight: { x: 1, y: 0 } };
export const isArrow = (key: string): key is ArrowKey => key in arrows;

/**
 * Steps of each setting for one arrow key, so that the handle goes the way the arrow points on the screen. Of two settings the
 * arrows up and down move the one that goes more upright, left and right the other. A setting square to the arrow, or pointing at
 * the viewer, grows with up and right.
 */
export function arrowSteps(key: ArrowKey, directions: readonly Direction[]): readonly number[] {
  const arrow = arrows[key];
  const upright = arrow.x === 0;
  const fallback = key === "ArrowUp" || key === "ArrowRight" ? 1 : -1;
  const sign = (d: Direction): number => {
    const along = d.x * arrow.x + d.y * arrow.y;
    const size = Math.hypot(d.x, d.y);
    return size < blind || Math.abs(along) < 0.2 * size ? fallback : Math.sign(along);
  };
  const [a, b] = directions;
  if (!a) return [];
  if (!b) return [sign(a)];
  const slope = (d: Direction): number => Math.abs(d.y) / (Math.hypot(d.x, d.y) || 1);
  const first = slope(a) >= slope(b) === upright;
  return first ? [sign(a), 0] : [0, sign(b)];
}
