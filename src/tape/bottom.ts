import { fairLoop } from "#plane/fair.ts";
import type { Outline } from "#plane/outline.ts";
import { forward, nearestPlace, pointOn, ringOf, stretch, type Ring, type Xy } from "./ring.ts";
import type { TapedBottom, TapedPoint } from "./taped-shell.ts";
import { drawnThrough } from "./smooth.ts";

/** Which points of the bottom the maker placed, on the card's plane of the picture. */
export type SaidOfBottom = Partial<Record<"toe" | "seat" | "jointMedial" | "jointLateral", Xy>>;

/**
 * The traced bottom in its frame: seat point at the origin, toe point on +x, inner side on +y. Seat and toe point are the middles of
 * the stretches within 30° of square to the axis that joins them, joint points lie farthest from it (docs/method/last.md).
 * `medialLeft`: the inner side lies to the left of the way from seat to toe, as it was traced.
 */
export function placedBottom(photo: string, outline: number, traced: Outline, medialLeft: boolean, said: SaidOfBottom): TapedBottom & { readonly hollow: Hollows } {
  const ring = ringOf(traced);
  const { seat, toe } = axisOf(ring, said);
  const [a, b] = [pointOn(ring, seat), pointOn(ring, toe)];
  const lengthMm = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const along: Xy = [(b[0] - a[0]) / lengthMm, (b[1] - a[1]) / lengthMm];
  // A counter-clockwise ring runs from seat to toe over the side to the right of the axis.
  const flip = medialLeft ? 1 : -1;
  const place = ([px, py]: Xy): Xy => {
    const x = px - a[0], y = py - a[1];
    return [along[0] * x + along[1] * y + 0, flip * (along[0] * y - along[1] * x) + 0];
  };
  const right = stretch(ring, seat, toe), left = stretch(ring, toe, seat);
  const smooth = [drawnThrough(right), drawnThrough(left)];
  const placed = smooth.flatMap(({ xy }) => Array.from({ length: xy.length / 2 - 1 }, (_, i) => place([xy[2 * i]!, xy[2 * i + 1]!])));
  const ccw = flip === 1 ? placed : [placed[0]!, ...placed.slice(1).reverse()];
  const edge = fairLoop({ xy: Float64Array.from(ccw.flat()) });
  const farthest = (side: 1 | -1, from: number, to: number): Xy => widest(edge, side, from * lengthMm, to * lengthMm);
  const joint = (name: "jointMedial" | "jointLateral", side: 1 | -1): Xy => (said[name] ? place(said[name]) : farthest(side, 0.5, 0.93));
  const jointMedial = joint("jointMedial", 1), jointLateral = joint("jointLateral", -1);
  const back = ([x, y]: Xy): Xy => [a[0] + along[0] * x - along[1] * flip * y, a[1] + along[1] * x + along[0] * flip * y];
  const point = (name: keyof SaidOfBottom, at: Xy): TapedPoint => ({ at, how: said[name] ? "said" : "found" });
  return {
    photo,
    outline,
    edge,
    toePoint: [lengthMm, 0],
    jointMedial,
    jointLateral,
    points: { toe: point("toe", b), seat: point("seat", a), jointMedial: point("jointMedial", back(jointMedial)), jointLateral: point("jointLateral", back(jointLateral)) },
    lengthMm,
    ballWidthMm: jointMedial[1] - jointLateral[1],
    seatWidthMm: farthest(1, 0, 0.25)[1] - farthest(-1, 0, 0.25)[1],
    halves: halvesOf(edge, [lengthMm, 0], jointMedial, jointLateral),
    hollow: { medial: hollowOf(edge, 1, lengthMm), lateral: hollowOf(edge, -1, lengthMm) },
  };
}

/** How far the waist of either side lies inside the straight line from the seat to the joint, mm. */
export interface Hollows {
  readonly medial: number;
  readonly lateral: number;
}

/** Running lengths of seat and toe point on the ring. */
function axisOf(ring: Ring, said: SaidOfBottom): { readonly seat: number; readonly toe: number } {
  const on = (p: Xy): number => nearestPlace(ring, p).s;
  let { seat, toe } = ends(ring);
  for (let k = 0; k < 12; k++) {
    const [a, b] = [pointOn(ring, said.seat ? on(said.seat) : seat), pointOn(ring, said.toe ? on(said.toe) : toe)];
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const along: Xy = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
    seat = said.seat ? on(said.seat) : squareMiddle(ring, seat, along);
    toe = said.toe ? on(said.toe) : squareMiddle(ring, toe, along);
  }
  return { seat, toe };
}

/** The two places farthest apart, the narrower end first: the widest place lies nearer to the toe. */
function ends(ring: Ring): { readonly seat: number; readonly toe: number } {
  const steps = Math.round(ring.lap / 2);
  const at = Array.from({ length: steps }, (_, k) => pointOn(ring, (k * ring.lap) / steps));
  let pair: [number, number] = [0, 0], most = -1;
  for (let i = 0; i < steps; i++)
    for (let j = i + 1; j < steps; j++) {
      const d = (at[i]![0] - at[j]![0]) ** 2 + (at[i]![1] - at[j]![1]) ** 2;
      if (d > most) [pair, most] = [[i, j], d];
    }
  const [p, q] = [at[pair[0]]!, at[pair[1]]!];
  const length = Math.sqrt(most);
  const along: Xy = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
  const width = (from: number, to: number): number => {
    const off = at.flatMap(([x, y]) => {
      const t = (x - p[0]) * along[0] + (y - p[1]) * along[1];
      return t >= from * length && t <= to * length ? [(y - p[1]) * along[0] - (x - p[0]) * along[1]] : [];
    });
    return Math.max(...off) - Math.min(...off);
  };
  const [first, second] = [(pair[0] * ring.lap) / steps, (pair[1] * ring.lap) / steps];
  return width(0.5, 0.93) >= width(0.07, 0.5) ? { seat: first, toe: second } : { seat: second, toe: first };
}

/** Middle of the stretch round an end that runs within 30° of square to the axis. */
function squareMiddle(ring: Ring, near: number, [ax, ay]: Xy): number {
  const square = (s: number): boolean => {
    const [p, q] = [pointOn(ring, s - 1.5), pointOn(ring, s + 1.5)];
    return Math.abs((q[0] - p[0]) * ax + (q[1] - p[1]) * ay) <= 0.5 * Math.hypot(q[0] - p[0], q[1] - p[1]);
  };
  let from = near, to = near;
  while (forward(ring, from, near) < ring.lap / 4 && square(from - 0.25)) from -= 0.25;
  while (forward(ring, near, to) < ring.lap / 4 && square(to + 0.25)) to += 0.25;
  return forward(ring, 0, (from + to) / 2);
}

/** The place farthest from the axis on one side, between two x; by a parabola through the points next to it. */
function widest({ xy }: Outline, side: 1 | -1, from: number, to: number): Xy {
  const n = xy.length / 2;
  let best = -1;
  for (let i = 0; i < n; i++) if (xy[2 * i]! >= from && xy[2 * i]! <= to && (best < 0 || side * xy[2 * i + 1]! > side * xy[2 * best + 1]!)) best = i;
  const [a, b] = [(best + n - 4) % n, (best + 4) % n];
  const [ya, y0, yb] = [xy[2 * a + 1]!, xy[2 * best + 1]!, xy[2 * b + 1]!];
  const bend = ya - 2 * y0 + yb;
  const t = Math.abs(bend) > 1e-12 ? Math.max(-1, Math.min(1, (0.5 * (ya - yb)) / bend)) : 0;
  return [xy[2 * best]! + (t * (xy[2 * b]! - xy[2 * a]!)) / 2, y0 - 0.25 * (ya - yb) * t];
}

function hollowOf(edge: Outline, side: 1 | -1, lengthMm: number): number {
  const [seat, joint] = [widest(edge, side, 0, 0.25 * lengthMm), widest(edge, side, 0.5 * lengthMm, 0.93 * lengthMm)];
  const size = Math.hypot(joint[0] - seat[0], joint[1] - seat[1]);
  let most = 0;
  const { xy } = edge;
  for (let i = 0; i < xy.length; i += 2) {
    const x = xy[i]!, y = xy[i + 1]!;
    if (side * y < 0 || x <= seat[0] || x >= joint[0]) continue;
    const off = ((joint[0] - seat[0]) * (y - seat[1]) - (joint[1] - seat[1]) * (x - seat[0])) / size;
    most = Math.max(most, -side * off);
  }
  return most;
}

/** Lengths along either side from the seat point: to the joint point and to the toe point. */
function halvesOf(edge: Outline, toe: Xy, jointMedial: Xy, jointLateral: Xy): TapedBottom["halves"] {
  const ring = ringOf(edge);
  const seat = nearestPlace(ring, [0, 0]).s;
  const to = (p: Xy): number => forward(ring, seat, nearestPlace(ring, p).s);
  const from = (p: Xy): number => forward(ring, nearestPlace(ring, p).s, seat);
  return { lateral: { toToe: to(toe), toJoint: to(jointLateral) }, medial: { toToe: from(toe), toJoint: from(jointMedial) } };
}
