/**
 * Where a fine polyline has its corners and its straight edges. Points of a fair line stand under a millimetre apart; a longer chord
 * is an edge that is straight on purpose.
 */
export interface Section {
  /** Indices of its first and last point; past the end of a closed line they count on. */
  readonly from: number;
  readonly to: number;
  /** One straight chord. */
  readonly straight: boolean;
  /** Unit directions of travel that the ends must take from the straight edges beside them; undefined at a corner or a free end. */
  readonly start?: readonly [number, number];
  readonly end?: readonly [number, number];
}

/** A chord from here on is a straight edge, mm. */
const straightMm = 3;
/** A turn that exceeds what the bend beside it would make by more than this is a corner: tan of half of 6°. */
const cornerTan = 0.0524;
/** So is any turn of more than 45°. */
const sharpTan = 0.4142;
/** And a turn whose chords would stand off a curve through it by more than this, mm: a curve is drawn finer. */
const cornerBowMm = 0.02;
/** A straight edge runs into a curve without a corner where it turns less than this: tan of half of 3°. */
const jointTan = 0.0262;

/** Cuts a line at its corners and at the ends of its straight edges. A closed line without either is one section from its point 0. */
export function sectionsOf(xy: Float64Array, closed: boolean): readonly Section[] {
  const n = xy.length / 2;
  const chords = closed ? n : n - 1;
  const at = (i: number): number => 2 * (i % n);
  const lengths = Float64Array.from({ length: chords }, (_, i) => distance(xy, at(i), at(i + 1)));
  const isStraight = (chord: number): boolean => lengths[chord]! >= straightMm;
  const turns = Float64Array.from({ length: n }, (_, i) => (closed || (i > 0 && i < n - 1) ? halfTurn(xy, at(i + n - 1), at(i), at(i + 1)) : 0));
  const before = (i: number): number => (i + chords - 1) % chords;

  const joint = (i: number): "corner" | "joint" | "none" => {
    const [a, b] = [isStraight(before(i)), isStraight(i % chords)];
    if (a && b) return "corner";
    if (a || b) return Math.abs(turns[i]!) > jointTan ? "corner" : "joint";
    const turn = Math.abs(turns[i]!);
    const expected = Math.max(0, Math.sign(turns[i]!) * expectedTurn(turns, lengths, i, closed));
    const bow = (turn * Math.min(lengths[before(i)]!, lengths[i % chords]!)) / 4;
    return turn > sharpTan || turn - expected > cornerTan || bow > cornerBowMm ? "corner" : "none";
  };
  const kinds = Array.from({ length: n }, (_, i) => (!closed && (i === 0 || i === n - 1) ? "corner" : joint(i)));
  const knots = kinds.flatMap((kind, i) => (kind === "none" ? [] : [i]));
  if (knots.length === 0) return [{ from: 0, to: n, straight: false }];

  const ends = closed ? [...knots, knots[0]! + n] : knots;
  return ends.slice(1).map((to, k): Section => {
    const from = ends[k]!;
    if (to - from === 1 && isStraight(from)) return { from, to, straight: true };
    return {
      from, to, straight: false,
      ...(kinds[from] === "joint" && { start: direction(xy, at(from + n - 1), at(from)) }),
      ...(kinds[to % n] === "joint" && { end: direction(xy, at(to), at(to + 1)) }),
    };
  });
}

/** What the bend of both neighbours would turn at point i, as tan of half the angle. */
function expectedTurn(turns: Float64Array, lengths: Float64Array, i: number, closed: boolean): number {
  const n = turns.length, chords = lengths.length;
  const span = (k: number): number => lengths[(k + chords - 1) % chords]! + lengths[k % chords]!;
  const bend = (k: number): number => {
    if (!closed && (k <= 0 || k >= n - 1)) return NaN;
    const j = (k + n) % n;
    return turns[j]! / span(j);
  };
  const sides = [bend(i - 1), bend(i + 1)].filter((b) => !Number.isNaN(b));
  return sides.length === 0 ? 0 : (span(i) * sides.reduce((sum, b) => sum + b, 0)) / sides.length;
}

/** Tan of half the turn at b of the way a → b → c, positive to the left; a billion where it turns right back. */
export function halfTurn(xy: Float64Array, a: number, b: number, c: number): number {
  const ux = xy[b]! - xy[a]!, uy = xy[b + 1]! - xy[a + 1]!, vx = xy[c]! - xy[b]!, vy = xy[c + 1]! - xy[b + 1]!;
  const both = Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
  const along = both + ux * vx + uy * vy;
  if (!(both > 0)) return 0;
  return along > 1e-12 * both ? (ux * vy - uy * vx) / along : 1e9;
}

function distance(xy: Float64Array, a: number, b: number): number {
  const dx = xy[b]! - xy[a]!, dy = xy[b + 1]! - xy[a + 1]!;
  return Math.sqrt(dx * dx + dy * dy);
}

function direction(xy: Float64Array, a: number, b: number): readonly [number, number] {
  const d = distance(xy, a, b);
  return [(xy[b]! - xy[a]!) / d, (xy[b + 1]! - xy[a + 1]!) / d];
}
