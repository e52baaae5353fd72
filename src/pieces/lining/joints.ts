import { finding, type Finding } from "#base/findings.ts";
import { halves, type Half } from "#lines/feather.ts";
import type { SeamLine } from "#shell/seam-line.ts";
import { edgeLength, edgePoint, type NetUpper } from "../net-upper.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { bandDistance, type Segment } from "./distances.ts";
import { flatAt, type Scales } from "./on-last.ts";

/** A seam of the upper, by where its ends lie on the last. */
export type UpperSeam = Pick<SeamLine, "name" | "half" | "toplineMm" | "featherMm">;

/** Running lengths of a joint's ends on the lining's feather line and topline, mm. */
export interface JointEnds {
  readonly foot: number;
  readonly top: number;
}

/** Where the lining in pieces is put together: each joint is the visible edge of the piece that lies over, the rear one. */
export interface LiningJoints {
  readonly vamp: Readonly<Record<Half, JointEnds>>;
  readonly pocket: Readonly<Record<Half, JointEnds>>;
  readonly findings: readonly Finding[];
}

/** What a joint keeps from the line of the ball, mm (a joint at the ball is a fault by makers' notes; the distance is our own). */
const ballClearMm = 10;
/** Least that is left of a quarter lining between its joints, mm (our own limit). */
const leastQuarterMm = 20;
/** The vamp lining reaches at least so far behind the throat, mm (our own limit). */
const leastBehindThroatMm = 8;
const stepMm = 0.5;

/** Lengths count backward, from the throat or the ball toward the heel, on either half. */
export const backward = (half: Half): 1 | -1 => (half === "medial" ? -1 : 1);
const backwardOnFeather = (half: Half): 1 | -1 => (half === "medial" ? 1 : -1);

/** The straight way of a joint, from the feather line up. */
export const jointWay = (net: NetUpper, { foot, top }: JointEnds): Segment => [edgePoint(net.feather, foot), edgePoint(net.topline, top)];

/**
 * The joints by rule. A vamp joint that would come too near to a seam of the upper or to the ball is moved along, both ends alike, to
 * the nearest place that is clear of them; where there is none, to the clearest, which is told.
 */
export function placeJoints(net: NetUpper, scales: Scales, seams: readonly UpperSeam[], settings: PieceSettings): LiningJoints {
  const findings: Finding[] = [];
  const of = <T>(make: (half: Half) => T): Readonly<Record<Half, T>> => ({ medial: make("medial"), lateral: make("lateral") });
  const ways = of((half) => seams.filter((seam) => seam.half === half).map((seam) => ({ name: seam.name, way: jointWay(net, { foot: flatAt(scales[half].feather, seam.featherMm), top: flatAt(scales[half].topline, seam.toplineMm) }) })));
  const pocket = of((half) => ({ foot: flatAt(scales[half].feather, settings.liningPocketWingMm), top: flatAt(scales[half].topline, settings.liningPocketTopMm) }));
  for (const half of halves) findings.push(...judgePocket(net, half, pocket[half], ways[half], settings));
  const vamp = of((half) => {
    const placed = placeVamp(net, half, pocket[half], ways[half], settings);
    findings.push(...placed.findings);
    return placed.ends;
  });
  return { vamp, pocket, findings };
}

interface NamedWay {
  readonly name: string;
  readonly way: Segment;
}

/** The strip between a joint and the hidden edge behind it. */
function band(net: NetUpper, half: Half, ends: JointEnds, lapMm: number): readonly [Segment, Segment] {
  const [a, b] = jointWay(net, ends);
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = Math.sqrt(dx * dx + dy * dy) || 1;
  const [x, y] = [(-dy * lapMm) / size, (dx * lapMm) / size];
  const [ux, uy] = towardHeel(net, half, ends);
  const turn = x * ux + y * uy < 0 ? -1 : 1;
  const moved = ([px, py]: Xy): Xy => [px + turn * x, py + turn * y];
  return [[a, b], [moved(a), moved(b)]];
}

function towardHeel(net: NetUpper, half: Half, { top }: JointEnds): Xy {
  const [ax, ay] = edgePoint(net.topline, top), [bx, by] = edgePoint(net.topline, top + 2 * backward(half));
  return [bx - ax, by - ay];
}

function judgePocket(net: NetUpper, half: Half, ends: JointEnds, seams: readonly NamedWay[], { liningLapMm, liningClearMm, liningPocketTopMm, liningPocketWingMm }: PieceSettings): readonly Finding[] {
  const strip = band(net, half, ends, liningLapMm);
  return seams.flatMap(({ name, way }) => {
    const awayMm = bandDistance(strip, way);
    if (awayMm >= liningClearMm - 0.01) return [];
    const shorterMm = Math.ceil(2 * (liningClearMm - awayMm)) / 2;
    return [finding("pocket-near-seam", { half, seam: name, awayMm, neededMm: liningClearMm, topMm: liningPocketTopMm - shorterMm, wingMm: liningPocketWingMm - shorterMm })];
  });
}

function placeVamp(net: NetUpper, half: Half, pocket: JointEnds, seams: readonly NamedWay[], { liningJointMm, liningJointBehindBallMm, liningLapMm, liningClearMm }: PieceSettings): { readonly ends: JointEnds; readonly findings: readonly Finding[] } {
  const { places, feather, topline } = net;
  const ball = half === "medial" ? places.jointMedial : places.jointLateral;
  const at = (byMm: number): JointEnds => ({ top: places.throat + backward(half) * (liningJointMm + byMm), foot: ball + backwardOnFeather(half) * (liningJointBehindBallMm + byMm) });
  const roomMm = Math.min(Math.abs(places.throat - pocket.top) - liningJointMm, Math.abs(ball - pocket.foot) - liningJointBehindBallMm) - liningLapMm - leastQuarterMm;
  const ballWay: Segment = [edgePoint(feather, ball), middle(edgePoint(feather, places.jointMedial), edgePoint(feather, places.jointLateral))];
  const near: readonly (NamedWay & { readonly neededMm: number })[] = [{ name: "ball", way: ballWay, neededMm: ballClearMm }, ...seams.map((seam) => ({ ...seam, neededMm: liningClearMm }))];
  /** The nearest of them, by how much room it lacks. */
  const tightest = (byMm: number) => {
    const strip = band(net, half, at(byMm), liningLapMm);
    return near.map((n) => ({ ...n, awayMm: bandDistance(strip, n.way) })).reduce((a, b) => (b.awayMm - b.neededMm < a.awayMm - a.neededMm ? b : a));
  };
  const lacking = ({ awayMm, neededMm }: { readonly awayMm: number; readonly neededMm: number }): number => neededMm - awayMm;
  if (roomMm < leastBehindThroatMm - liningJointMm || edgeLength(topline) === 0) {
    return { ends: at(Math.min(0, roomMm)), findings: [finding("lining-quarter-short", { half, atMm: liningJointMm + roomMm })] };
  }
  const findings: Finding[] = roomMm < 0 ? [finding("lining-quarter-short", { half, atMm: Math.floor(2 * (liningJointMm + roomMm)) / 2 })] : [];
  let best = { byMm: Math.min(0, roomMm), worst: tightest(Math.min(0, roomMm)) };
  for (let k = 1; lacking(best.worst) > 0.01 && k * stepMm <= Math.max(roomMm, liningJointMm - leastBehindThroatMm); k++) {
    for (const byMm of [k * stepMm, -k * stepMm]) {
      if (byMm > roomMm || liningJointMm + byMm < leastBehindThroatMm) continue;
      const worst = tightest(byMm);
      if (lacking(worst) < lacking(best.worst) - 1e-9) best = { byMm, worst };
      if (lacking(worst) <= 0.01) break;
    }
  }
  if (lacking(best.worst) > 0.01) findings.push(finding("lining-joint-near", { half, near: best.worst.name, awayMm: best.worst.awayMm, neededMm: best.worst.neededMm, atMm: liningJointMm + best.byMm }));
  return { ends: at(best.byMm), findings };
}

const middle = (a: Xy, b: Xy): Xy => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
