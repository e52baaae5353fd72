import type { Outline, Polyline } from "#plane/outline.ts";
import type { Xy } from "../piece.ts";

/** Half a circle or a quarter needs so many parts that none is farther off than a hundredth of a millimetre at 10 mm. */
const parts = 24;

/** Points of a quarter circle round `middle` from direction u to direction v, both of the radius's length; ends included. By a rational parameter, which needs no sine. */
function quarter(middle: Xy, u: Xy, v: Xy): readonly Xy[] {
  return Array.from({ length: parts + 1 }, (_, k) => {
    const t = k / parts, size = 1 + t * t;
    const a = (1 - t * t) / size, b = (2 * t) / size;
    return [middle[0] + a * u[0] + b * v[0], middle[1] + a * u[1] + b * v[1]] as const;
  });
}

/** A straight strip along +x, centred on the x axis; its end at `long` rounded where `round`. Counter-clockwise. */
export function stripOutline(long: number, wide: number, round = false): Outline {
  const r = wide / 2;
  return round ? ringOf([[0, -r], ...halfCircle(long, r), [0, r]]) : ringOf([[0, -r], [long, -r], [long, r], [0, r]]);
}

/** The half circle of radius r that ends at x = long, from −y to +y. */
export const roundEnd = (long: number, r: number): Polyline => lineOf(...halfCircle(long, r));

function halfCircle(long: number, r: number): readonly Xy[] {
  const middle: Xy = [long - r, 0];
  return [...quarter(middle, [0, -r], [r, 0]), ...quarter(middle, [r, 0], [0, r]).slice(1)];
}

/** A strip along +x whose width runs evenly from one end's to the other's. */
export const taperedOutline = (long: number, wide: number, wideAtEnd: number): Outline => ringOf([[0, -wide / 2], [long, -wideAtEnd / 2], [long, wideAtEnd / 2], [0, wide / 2]]);

/**
 * A bow laid out flat, along +x and centred on it: two bows of `wide` that narrow to `narrow` in the middle by half a wave of the
 * polynomial 3t² − 2t³, symmetric both ways.
 */
export function bowOutline(long: number, wide: number, narrow: number): Outline {
  const half = (x: number): number => {
    const t = Math.min(1, Math.abs(2 * x) / long);
    return (narrow + (wide - narrow) * t * t * (3 - 2 * t)) / 2;
  };
  const xs = Array.from({ length: 2 * parts + 1 }, (_, k) => (long * (k - parts)) / (2 * parts));
  return ringOf([...xs.map((x): Xy => [x, -half(x)]), ...[...xs].reverse().map((x): Xy => [x, half(x)])]);
}

export const ringOf = (points: readonly Xy[]): Outline => ({ xy: Float64Array.from(points.flat()) });
export const lineOf = (...points: readonly Xy[]): Polyline => ({ xy: Float64Array.from(points.flat()) });
