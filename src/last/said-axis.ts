import { axesFrom, intoFrame, meshIntoFrame, pointsIntoFrame, type Axes } from "./axes.ts";
import { nearestOnRing } from "./centre-section.ts";
import { closedArc, pointAtIndex, resampleClosed } from "./closed-curve.ts";
import { onAxis } from "./feather-order.ts";
import type { FeatherLine, Landmarks, Placement, Point3 } from "./last.ts";
import type { ToMeasure } from "./to-measure.ts";
import { add, sub } from "./vector.ts";

/**
 * Toe point and seat point make the axis: where the maker has placed one of them, the frame is turned and shifted along the ground
 * until the seat point stands over its origin and the toe point on y = 0. Heights stay. Each is first brought to the nearest
 * place on the feather line. Nothing changes where the frame already stands on them.
 */
export function onSaidAxis(what: ToMeasure): ToMeasure {
  const { said, feather } = what;
  if (!said?.seatPoint && !said?.toePoint) return what;
  const seatAt = said.seatPoint ? nearestOnRing(feather.points, said.seatPoint) : 0;
  const toeAt = said.toePoint ? nearestOnRing(feather.points, said.toePoint) : feather.toeIndex;
  const seat = pointAtIndex(feather.points, seatAt);
  const ahead = sub(pointAtIndex(feather.points, toeAt), seat);
  if (Math.abs(seat[0]) < 1e-9 && Math.abs(seat[1]) < 1e-9 && Math.abs(ahead[1]) < 1e-9 * ahead[0]) return what;
  const axes = axesFrom([seat[0], seat[1], 0], [0, 0, 1], ahead);
  return {
    ...what,
    mesh: meshIntoFrame(axes, what.mesh),
    placement: turned(what.placement, axes),
    feather: fromSeat({ ...feather, points: pointsIntoFrame(axes, feather.points) }, seatAt, toeAt),
    said: Object.fromEntries(Object.entries(said).map(([name, p]) => [name, intoFrame(axes, p)])) as Partial<Landmarks>,
    findings: what.findings.map((f) => (f.at ? { ...f, at: intoFrame(axes, f.at) } : f)),
  };
}

/** The same line, begun at another of its places. */
function fromSeat({ points, confidence }: FeatherLine, seatAt: number, toeAt: number): FeatherLine {
  const n = confidence.length;
  const arc = closedArc(points);
  const total = arc[n]!;
  const at = (index: number): number => arc[Math.floor(index)]! + (index - Math.floor(index)) * (arc[Math.floor(index) + 1]! - arc[Math.floor(index)]!);
  const even = resampleClosed(points, confidence, n, at(seatAt));
  const share = ((at(toeAt) - at(seatAt)) / total + 1) % 1;
  return { points: even.points, confidence: even.values, toeIndex: onAxis(even.points, n * share) };
}

/** How a frame told in the old one lies to the file. */
function turned({ rotation: r, translationMm, ...rest }: Placement, { origin, x, y, z }: Axes): Placement {
  const turn = (p: Point3): Point3 => [0, 1, 2].map((k) => r[3 * k]! * p[0] + r[3 * k + 1]! * p[1] + r[3 * k + 2]! * p[2]) as unknown as Point3;
  const [a, b, c] = [turn(x), turn(y), turn(z)];
  return { ...rest, rotation: [0, 1, 2].flatMap((k) => [a[k]!, b[k]!, c[k]!]), translationMm: add(turn(origin), translationMm) };
}
