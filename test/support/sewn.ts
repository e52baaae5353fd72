import type { LastPair } from "#job/pair.ts";
import type { Mark, Piece, Xy } from "#pieces/piece.ts";
import type { Stitched } from "#pieces/stitching.ts";
import { SweepBench, type Own } from "./parts-sweep.ts";

// Lengths on finished pieces by code of the tests' own.

export const usualBench = new SweepBench();
export function pairOf(own: Own, bench: SweepBench = usualBench): LastPair {
  const made = bench.run(own);
  if (!("pair" in made)) throw new Error("broke" in made ? made.broke : `refused: ${made.refused.code}`);
  return made.pair;
}

export function lineOfStitches({ stitching }: Pick<LastPair, "stitching">, name: string): Stitched {
  const found = stitching.filter((line) => line.name === name);
  if (found.length !== 1) throw new Error(`${found.length} lines of stitches are called ${name}`);
  return found[0]!;
}

export function pieceOf({ pieces }: { readonly pieces: readonly Piece[] }, name: string, side: Piece["side"] = "right"): Piece {
  const found = pieces.find((piece) => piece.name === name && piece.side === side);
  if (!found) throw new Error(`there is no ${name}`);
  return found;
}

export const pointsOf = (xy: Float64Array): readonly Xy[] => Array.from({ length: xy.length / 2 }, (_, i): Xy => [xy[2 * i]!, xy[2 * i + 1]!]);
/** Length from point to point. */
export const walked = (points: readonly Xy[]): number => points.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - points[i]![0], p[1] - points[i]![1]), 0);

/** All lines of one name drawn on a piece, and their lengths, mm. */
export const drawn = ({ marks }: Piece, name: string): readonly (readonly Xy[])[] =>
  marks.filter((mark): mark is Extract<Mark, { kind: "line" }> => mark.kind === "line" && mark.name === name).map(({ line }) => pointsOf(line.xy));
export const drawnMm = (piece: Piece, name: string): readonly number[] => drawn(piece, name).map(walked);

/** The straight way between a line's ends, moved away from the middle of the piece. */
export function movedOut({ outline }: Piece, points: readonly Xy[], mm: number): readonly [Xy, Xy] {
  const ring = pointsOf(outline.xy), [ax, ay] = points[0]!, [bx, by] = points.at(-1)!;
  const [mx, my] = [0, 1].map((d) => ring.reduce((sum, p) => sum + p[d]!, 0) / ring.length) as [number, number];
  const long = Math.hypot(bx - ax, by - ay);
  const [nx, ny] = [-(by - ay) / long, (bx - ax) / long];
  const out = (mx - ax) * nx + (my - ay) * ny > 0 ? -mm : mm;
  return [[ax + out * nx, ay + out * ny], [bx + out * nx, by + out * ny]];
}

/** How far the straight line through both points runs in a piece about their middle, mm. */
export function acrossMm({ outline }: Piece, [[ax, ay], [bx, by]]: readonly [Xy, Xy]): number {
  const ring = pointsOf(outline.xy), long = Math.hypot(bx - ax, by - ay), [dx, dy] = [(bx - ax) / long, (by - ay) / long];
  const aside = ([x, y]: Xy): number => (x - ax) * dy - (y - ay) * dx, along = ([x, y]: Xy): number => (x - ax) * dx + (y - ay) * dy;
  const crossings = ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length]!, [s, t] = [aside(p), aside(q)];
    return s < 0 === t < 0 ? [] : [along(p) + (s / (s - t)) * (along(q) - along(p))];
  });
  const after = Math.min(...crossings.filter((at) => at > long / 2)), before = Math.max(...crossings.filter((at) => at < long / 2));
  return after - before;
}

/** The stretch of a net card's outline, which runs counter-clockwise, between two pricks in its corners. */
export function between(card: Piece, from: string, to: string): readonly Xy[] {
  const ring = pointsOf(card.outline.xy), n = ring.length;
  const at = (name: string): number => {
    const prick = card.marks.find((mark) => mark.kind === "prick" && mark.name === name);
    if (prick?.kind !== "prick") throw new Error(`no prick for ${name}`);
    const far = ring.map(([x, y]) => Math.hypot(x - prick.at[0], y - prick.at[1]));
    return far.indexOf(Math.min(...far));
  };
  const [a, b] = [at(from), at(to)];
  return Array.from({ length: ((b - a + n) % n) + 1 }, (_, i) => ring[(a + i) % n]!);
}

/** By how much a line turns to the left from its first part to its last, radians. */
export function turning(points: readonly Xy[]): number {
  const ways = points.slice(1).map(([x, y], i) => Math.atan2(y - points[i]![1], x - points[i]![0]));
  return ways.slice(1).reduce((sum, way, i) => {
    const turn = way - ways[i]!;
    return sum + turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  }, 0);
}

/** The inner angle between two ways that leave one point, radians. */
export function angleBetween(corner: Xy, a: Xy, b: Xy): number {
  const way = ([x, y]: Xy): number => Math.atan2(y - corner[1], x - corner[0]);
  const turn = Math.abs(way(a) - way(b));
  return Math.min(turn, 2 * Math.PI - turn);
}
