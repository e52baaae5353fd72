import { arcLengths, partBetween, pointAt, reversed } from "#plane/along.ts";
import { lengthOf } from "#plane/measure.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Corner, Corners } from "./corners.ts";
import { forward, nearestLine, nearestPlace, stretch, type Ring, type Xy } from "./ring.ts";
import { drawnThrough } from "./smooth.ts";
import type { Slit, TapedHalf, TapedHalfName, TapedPoint } from "./taped-shell.ts";

/** A half as it lies in its picture: the outline with its slits bridged, and its corners. */
export interface FoundHalf {
  readonly photo: string;
  readonly outline: number;
  readonly ring: Ring;
  readonly slits: readonly Slit[];
  readonly corners: Corners;
}

/** How far from the seat point the joint point lies along a feather edge of a given length, both less open slits. */
export type JointRule = (half: TapedHalfName, featherMm: number) => { readonly fromSeat: number; readonly how: TapedPoint["how"] };

/** Points nearer to a corner than this are left out, mm: there knife and picture have rounded it. */
const roundedMm = 0.8;

/** The half in the shell's frame: toe point at the origin, throat on −x, the inner half on +y, however it lay on the table. */
export function placedHalf({ photo, outline, ring, slits, corners }: FoundHalf, half: TapedHalfName, jointRule: JointRule, saidJoint: Corner | undefined): TapedHalf {
  const { toe, throat, back, seat } = corners.named;
  const edge = (from: Corner, to: Corner): Polyline => {
    const line = corners.clockwise ? reversed(stretch(ring, to.s, from.s)) : stretch(ring, from.s, to.s);
    return drawnThrough(withCorners(line, from.at, to.at));
  };
  const table = { feather: edge(seat, toe), back: reversed(edge(back, seat)), topline: reversed(edge(throat, back)), centre: edge(toe, throat) };
  const placed = slits.map((slit): Slit => (liesOn(ring, slit, seat, toe, corners.clockwise) ? { ...slit, along: alongTo(table.feather, arcLengths(table.feather), middleOf(slit)) } : slit));
  const along: SlitsAlong = placed.flatMap(({ along, openMm }) => (along === undefined ? [] : [{ along, openMm }])).sort((a, b) => a.along - b.along);
  const slitsOpen = openBefore(along, Infinity);
  const joint = jointOn(table.feather, along, saidJoint ?? jointRule(half, lengthOf(table.feather) - slitsOpen));
  const move = frame(table.centre, back.at, half === "medial" ? 1 : -1);
  const set = ({ xy }: Polyline): Polyline => ({ xy: moved(xy, move) });
  const centre = set(table.centre);
  const feather = set(table.feather);
  const point = ({ at, how }: Corner): TapedPoint => ({ at, how });
  const seatToJoint = joint.along - openBefore(along, joint.along);
  const net = lengthOf(feather) - slitsOpen;
  return {
    half,
    photo,
    outline,
    points: { toe: point(toe), throat: point(throat), back: point(back), seat: point(seat), joint: joint.point },
    slits: placed,
    feather,
    back: set(table.back),
    topline: set(table.topline),
    centre,
    lengths: {
      feather: net,
      back: lengthOf(table.back),
      topline: lengthOf(table.topline),
      centre: Math.hypot(throat.at[0] - toe.at[0], throat.at[1] - toe.at[1]),
      centreBow: bowOf(centre, half),
      slitsOpen,
      toeToJoint: net - seatToJoint,
      seatToJoint,
    },
    jointAlong: joint.along,
  };
}

/** The stretch between two corners, its rounded ends replaced by the corners themselves. */
function withCorners(line: Polyline, from: Xy, to: Xy): Polyline {
  const arc = arcLengths(line);
  const end = arc[arc.length - 1]!;
  const inner = partBetween(line, arc, roundedMm, end - roundedMm).xy;
  return { xy: Float64Array.of(...from, ...inner, ...to) };
}

/** Whether the middle of a slit's mouth lies on the way from one corner to another. */
function liesOn(ring: Ring, slit: Slit, first: Corner, second: Corner, clockwise: boolean): boolean {
  const { s } = nearestPlace(ring, middleOf(slit));
  const [a, b] = clockwise ? [second.s, first.s] : [first.s, second.s];
  return forward(ring, a, s) < forward(ring, a, b);
}

const middleOf = ({ from, to }: Slit): Xy => [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];

/** Where slits stand along the feather edge, from the seat point, and what each stands open. */
type SlitsAlong = readonly { readonly along: number; readonly openMm: number }[];

/** What slits stand open together up to a place along the feather edge; those cut into another edge do not count. */
export const openBefore = (slits: readonly Pick<Slit, "along" | "openMm">[], along: number): number => slits.reduce((sum, s) => (s.along !== undefined && s.along < along ? sum + s.openMm : sum), 0);

function jointOn(feather: Polyline, slits: SlitsAlong, joint: Corner | ReturnType<JointRule>): { readonly along: number; readonly point: TapedPoint } {
  const arc = arcLengths(feather);
  if ("at" in joint) return { along: alongTo(feather, arc, joint.at), point: { at: joint.at, how: joint.how } };
  let along = joint.fromSeat;
  for (const slit of slits) if (slit.along < along) along += slit.openMm;
  return { along, point: { at: pointAt(feather, arc, along), how: joint.how } };
}

function alongTo({ xy }: Polyline, arc: Float64Array, [x, y]: Xy): number {
  let best = 0, least = Infinity;
  for (let i = 0; i < arc.length; i++) {
    const d = Math.hypot(xy[2 * i]! - x, xy[2 * i + 1]! - y);
    if (d < least) [best, least] = [arc[i]!, d];
  }
  return best;
}

/** Moves the plane so that the centre comes onto the x axis and the toe to x = 0, turned over where the back would lie on the wrong side. */
interface Move {
  readonly origin: Xy;
  readonly along: Xy;
  readonly flip: 1 | -1;
}

/**
 * The direction is that of the straight line nearest to the whole centre edge: the heel lies four times as far from the toe as the
 * throat does, so the two end points alone would swing it.
 */
function frame(centre: Polyline, back: Xy, side: 1 | -1): Move {
  const { xy } = centre;
  const n = xy.length;
  const points = Array.from({ length: n / 2 }, (_, i): Xy => [xy[2 * i]!, xy[2 * i + 1]!]);
  const { x, y, dx, dy } = nearestLine(points);
  const way = dx * (xy[0]! - xy[n - 2]!) + dy * (xy[1]! - xy[n - 1]!) >= 0 ? 1 : -1;
  const along: Xy = [way * dx, way * dy];
  const toe = (xy[0]! - x) * along[0] + (xy[1]! - y) * along[1];
  const off = (back[1] - y) * along[0] - (back[0] - x) * along[1];
  return { origin: [x + toe * along[0], y + toe * along[1]], along, flip: off * side >= 0 ? 1 : -1 };
}

function moved(xy: Float64Array, { origin, along: [c, s], flip }: Move): Float64Array {
  const out = new Float64Array(xy.length);
  for (let i = 0; i < xy.length; i += 2) {
    const x = xy[i]! - origin[0], y = xy[i + 1]! - origin[1];
    out[i] = c * x + s * y + 0;
    out[i + 1] = flip * (c * y - s * x) + 0;
  }
  return out;
}

/** Farthest that the cut centre lies off the straight line, + where it bulges away from its half. */
function bowOf({ xy }: Polyline, half: TapedHalfName): number {
  let most = 0;
  for (let i = 1; i < xy.length; i += 2) if (Math.abs(xy[i]!) > Math.abs(most)) most = xy[i]!;
  return half === "medial" ? -most + 0 : most + 0;
}
