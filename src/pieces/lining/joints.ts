import { finding, type Finding } from "#base/findings.ts";
import { halves, type Half } from "#lines/feather.ts";
import type { SeamLine } from "#shell/seam-line.ts";
import { edgePoint, type NetUpper } from "../net-upper.ts";
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
}

export interface PlacedJoints {
  /** None where no quarter lining would be left between vamp lining and pocket. */
  readonly joints?: LiningJoints;
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
export function placeJoints(net: NetUpper, scales: Scales, seams: readonly UpperSeam[], settings: PieceSettings): PlacedJoints {
  const findings: Finding[] = [];
  const of = <T>(make: (half: Half) => T): Readonly<Record<Half, T>> => ({ medial: make("medial"), lateral: make("lateral") });
  const ways = of((half) => seams.filter((seam) => seam.half === half).map((seam) => ({ name: seam.name, way: jointWay(net, { foot: flatAt(scales[half].feather, seam.featherMm), top: flatAt(scales[half].topline, seam.toplineMm) }) })));
  const pocket = of((half) => ({ foot: flatAt(scales[half].feather, settings.liningPocketWingMm), top: flatAt(scales[half].topline, settings.liningPocketTopMm) }));
  for (const half of halves) findings.push(...judgePocket(net, half, pocket[half], ways[half], settings));
  const placed = of((half) => placeVamp(net, half, pocket[half], ways[half], settings));
  findings.push(...halves.flatMap((half) => placed[half].findings));
  const { medial: { ends: medial }, lateral: { ends: lateral } } = placed;
  return { ...(medial && lateral && { joints: { vamp: { medial, lateral }, pocket } }), findings };
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

interface PlacedVamp {
  /** None where no quarter lining would be left. */
  readonly ends?: JointEnds;
  readonly findings: readonly Finding[];
}

function placeVamp(net: NetUpper, half: Half, pocket: JointEnds, seams: readonly NamedWay[], settings: PieceSettings): PlacedVamp {
  const { places } = net;
  const { liningJointMm, liningJointBehindBallMm, liningLapMm } = settings;
  const ball = half === "medial" ? places.jointMedial : places.jointLateral;
  const at = (byMm: number): JointEnds => ({ top: places.throat + backward(half) * (liningJointMm + byMm), foot: ball + backwardOnFeather(half) * (liningJointBehindBallMm + byMm) });
  // How far it may go back, until too little is left of the quarter lining, and forward.
  const onTopline = backward(half) * (pocket.top - places.throat) - liningJointMm, onFeather = backwardOnFeather(half) * (pocket.foot - ball) - liningJointBehindBallMm;
  const mostMm = Math.min(onTopline, onFeather) - liningLapMm - leastQuarterMm, leastMm = leastBehindThroatMm - liningJointMm;
  const short = finding("lining-quarter-short", { half, atMm: Math.floor(2 * (liningJointMm + mostMm)) / 2 });
  if (mostMm < leastMm) return { findings: [short] };
  const lacking = lackingAt(net, half, at, seams, settings);
  // Never nearer to the throat than the least, whatever was asked.
  const start = Math.max(leastMm, Math.min(0, mostMm));
  const best = clearest(lacking, start, leastMm, mostMm);
  const { name, awayMm, neededMm, lackingMm } = lacking(best);
  const near = lackingMm > roundingMm ? [finding("lining-joint-near", { half, near: name, awayMm, neededMm, atMm: liningJointMm + best })] : [];
  return { ends: at(best), findings: [...(mostMm < 0 ? [short] : []), ...near] };
}

const roundingMm = 0.01;

interface Nearest {
  readonly name: string;
  readonly awayMm: number;
  readonly neededMm: number;
  readonly lackingMm: number;
}

/** What a joint moved along by so many mm comes nearest to, the ball or a seam, and how much room it lacks there. */
function lackingAt(net: NetUpper, half: Half, at: (byMm: number) => JointEnds, seams: readonly NamedWay[], { liningLapMm, liningClearMm }: PieceSettings): (byMm: number) => Nearest {
  const [medial, lateral] = [edgePoint(net.feather, net.places.jointMedial), edgePoint(net.feather, net.places.jointLateral)];
  const ball = { name: "ball", way: [half === "medial" ? medial : lateral, middle(medial, lateral)] as const, neededMm: ballClearMm };
  const kept = [ball, ...seams.map((seam) => ({ ...seam, neededMm: liningClearMm }))];
  return (byMm) => {
    const strip = band(net, half, at(byMm), liningLapMm);
    const found = kept.map(({ name, way, neededMm }): Nearest => {
      const awayMm = bandDistance(strip, way);
      return { name, awayMm, neededMm, lackingMm: neededMm - awayMm };
    });
    return found.reduce((a, b) => (b.lackingMm > a.lackingMm ? b : a));
  };
}

/** The move nearest to the first one that lacks nothing, or else that which lacks least. */
function clearest(lacking: (byMm: number) => Nearest, start: number, leastMm: number, mostMm: number): number {
  let best = start, lacks = lacking(start).lackingMm;
  for (let k = 1; lacks > roundingMm && k * stepMm <= mostMm - leastMm; k++) {
    for (const byMm of [start + k * stepMm, start - k * stepMm]) {
      if (byMm > mostMm || byMm < leastMm || lacks <= roundingMm) continue;
      const { lackingMm } = lacking(byMm);
      if (lackingMm < lacks - 1e-9) [best, lacks] = [byMm, lackingMm];
    }
  }
  return best;
}

const middle = (a: Xy, b: Xy): Xy => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
