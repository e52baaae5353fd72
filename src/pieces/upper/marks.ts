import { halves, type Half } from "#lines/feather.ts";
import { partsInside } from "#plane/clip.ts";
import type { Outline } from "#plane/outline.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { edgesOf, placeOn, pointOf } from "../edges/places.ts";
import { sideWord } from "../words.ts";
import { centreNotch, lengthwiseArrow, lineMark, notchAt, notchDepthMm, straightMarks, tickAt } from "../marks.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import type { NetPanel, NetPlace, PlaceName } from "../panel.ts";
import type { Xy } from "../piece.ts";

/** How far outside the net the cutting line lies, by number of edge and running length. */
export type WidthAt = (edge: number, s: number) => number;

/** Far enough beyond a joint, as a share of the joint line, to be outside every margin. */
const beyondJoint = 0.4;
/** Least distance of a notch from the end of its edge, mm. */
const offEndsMm = 12;

/** Both joints, where the panel has both. */
function jointsOf(panel: NetPanel): Readonly<Record<Half, Xy>> | undefined {
  const [medial, lateral] = halves.map((half) => placeOn(panel, "joint", half));
  return medial && lateral && { medial: pointOf(panel, medial), lateral: pointOf(panel, lateral) };
}

/** A point of the line through both joints, a share beyond one of them; negative lies between. */
function onJointLine(joints: Readonly<Record<Half, Xy>>, half: Half, share: number): Xy {
  const near = joints[half];
  const far = joints[half === "medial" ? "lateral" : "medial"];
  return [near[0] + share * (near[0] - far[0]), near[1] + share * (near[1] - far[1])];
}

/** Centre line as far as it lies in the net piece, and the joint line from cutting edge to cutting edge. */
export function insideLines(panel: NetPanel, cut: Outline): readonly Drawn[] {
  const joints = jointsOf(panel);
  return [
    ...(panel.centre ? [lineMark("centre line", "centre", { xy: Float64Array.of(...panel.centre[0], ...panel.centre[1]) })] : []),
    ...(joints ? straightMarks("joint line", "joint", cut, onJointLine(joints, "medial", beyondJoint), onJointLine(joints, "lateral", beyondJoint)) : []),
  ];
}

/** The arrow of least stretch: along the centre line on the outer half, on a quarter along its topline. */
export function stretchArrow(panel: NetPanel, within: Outline): readonly Drawn[] {
  if (panel.centre) {
    const [throat, toe] = panel.centre;
    const joint = placeOn(panel, "joint", "lateral");
    return lengthwiseArrow(within, joint ? 0.45 * pointOf(panel, joint)[1] : 0.2 * (throat[0] - toe[0]), toe[0], throat[0]);
  }
  const topline = panel.edges[edgesOf(panel, "topline")[0] ?? 0]!;
  const feather = panel.edges[edgesOf(panel, "feather")[0] ?? 0]!;
  const [from, to] = [edgePoint(topline, 0), edgePoint(topline, edgeLength(topline))];
  const [high, low] = [edgePoint(topline, edgeLength(topline) / 2), edgePoint(feather, edgeLength(feather) / 2)];
  const middle: Xy = [0.7 * high[0] + 0.3 * low[0], 0.7 * high[1] + 0.3 * low[1]];
  const beyond = (p: Xy, q: Xy): Xy => [middle[0] + q[0] - p[0], middle[1] + q[1] - p[1]];
  const [start, end] = [beyond(to, from), beyond(from, to)];
  const length = Math.sqrt((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2);
  const part = partsInside(within, start, end).find(([a, b]) => Math.min(a[0], b[0]) <= middle[0] && middle[0] <= Math.max(a[0], b[0]));
  if (!part || length === 0) return [];
  const [dx, dy] = [(end[0] - start[0]) / length, (end[1] - start[1]) / length];
  // As long as two thirds of what is free, so that seam and throat stay clear.
  const shrunk = (p: Xy, q: Xy): Xy => [p[0] + (q[0] - p[0]) / 6, p[1] + (q[1] - p[1]) / 6];
  const [a, b] = [shrunk(part[0], part[1]), shrunk(part[1], part[0])];
  return Math.abs((b[0] - a[0]) * dx + (b[1] - a[1]) * dy) > 12 ? [{ kind: "arrow", name: "least stretch", from: a, to: b }] : [];
}

/** Notches of the centre line, on it and not square to the edge, so that they mark the line however the toe is shaped. */
export function centreNotches({ centre }: NetPanel, outline: Outline, throatDepthMm: number): readonly Drawn[] {
  if (!centre) return [];
  const [throat, toe] = centre;
  const middle: Xy = [(toe[0] + throat[0]) / 2, (toe[1] + throat[1]) / 2];
  const beyond = (end: Xy): Xy => [3 * end[0] - 2 * middle[0], 3 * end[1] - 2 * middle[1]];
  return [
    ...centreNotch("toe centre", outline, middle, beyond(toe), notchDepthMm),
    ...(throatDepthMm > 0 ? centreNotch("throat", outline, middle, beyond(throat), throatDepthMm) : []),
  ];
}

/** Notches where the joint line meets the cutting edge, or square to it where the panel has one joint alone. */
export function jointNotches(panel: NetPanel, cut: Outline, widthAt: WidthAt): readonly Drawn[] {
  const joints = jointsOf(panel);
  return halves.flatMap((half): readonly Drawn[] => {
    const place = placeOn(panel, "joint", half);
    if (!place) return [];
    const name = `joint${sideWord(half)}`;
    return joints ? centreNotch(name, cut, onJointLine(joints, half, -0.1), onJointLine(joints, half, beyondJoint), notchDepthMm) : featherNotch(panel, name, place, cut, widthAt);
  });
}

/** A notch square to the feather line. Its mouth lies on the cutting line, which may run a little off its width where it was faired. */
function featherNotch({ edges }: NetPanel, name: string, { edge, s }: Pick<NetPlace, "edge" | "s">, cut: Outline, widthAt: WidthAt): readonly Drawn[] {
  const outMm = widthAt(edge, s);
  const plain = notchAt(name, edges[edge]!, s, outMm, notchDepthMm);
  if (outMm < notchDepthMm) return [plain];
  const beyond: Xy = [2 * plain.at[0] - plain.toward[0], 2 * plain.at[1] - plain.toward[1]];
  return centreNotch(name, cut, plain.toward, beyond, notchDepthMm);
}

/** Where the notch stands that means inside: at the inner waist, or half-way from the inner joint to the seam of a vamp. */
export function insidePlace(panel: NetPanel): Pick<NetPlace, "edge" | "s"> | undefined {
  const waist = placeOn(panel, "waist", "medial");
  const place = waist ?? behindJoint(panel);
  if (!place) return undefined;
  const length = edgeLength(panel.edges[place.edge]!);
  return length < 2 * offEndsMm ? { edge: place.edge, s: length / 2 } : { edge: place.edge, s: Math.min(length - offEndsMm, Math.max(offEndsMm, place.s)) };
}

function behindJoint(panel: NetPanel): Pick<NetPlace, "edge" | "s"> | undefined {
  const joint = placeOn(panel, "joint", "medial");
  return joint && { edge: joint.edge, s: (joint.s + edgeLength(panel.edges[joint.edge]!)) / 2 };
}

/** The notch that means inside, and that of a seat which lies in the midst of a feather edge. */
export function waistNotches(panel: NetPanel, cut: Outline, widthAt: WidthAt): readonly Drawn[] {
  const inside = insidePlace(panel);
  return [...(inside ? featherNotch(panel, "inner side", inside, cut, widthAt) : []), ...amid(panel, "seat").flatMap((place) => featherNotch(panel, "seat", place, cut, widthAt))];
}

/** What the places along the topline are called; the quarters stand from the seat point to below the throat. */
const toplineWords: Readonly<Partial<Record<PlaceName, string>>> = { "quarter 1/4": "height at 1/4", "quarter 1/2": "height at 1/2", "quarter 3/4": "height at 3/4", lowest: "lowest" };

/** Notches along the topline: quarter heights, lowest places, and the back point where no seam runs. */
export function toplineNotches(panel: NetPanel, outMm: number, depthMm: number): readonly Drawn[] {
  return toplinePlaces(panel).map(({ name, place: { edge, s } }) => notchAt(name, panel.edges[edge]!, s, outMm, depthMm));
}

/** The same places and the throat along an edge that stays in sight, which is not snipped: short lines on the flesh side. */
export function toplineTicks(panel: NetPanel): readonly Drawn[] {
  const throat = placeOn(panel, "throat");
  const all = [...toplinePlaces(panel), ...(throat ? [{ name: "throat", place: throat }] : [])];
  return all.map(({ name, place: { edge, s } }) => tickAt(name, panel.edges[edge]!, s));
}

function toplinePlaces(panel: NetPanel): readonly { readonly name: string; readonly place: NetPlace }[] {
  return [
    ...panel.places.flatMap((place) => {
      const word = toplineWords[place.name];
      return word === undefined ? [] : [{ name: `${word}${sideWord(place.half)}`, place }];
    }),
    ...amid(panel, "back").map((place) => ({ name: "back point", place })),
  ];
}

/** A place where it lies in the midst of its edge, once. */
function amid({ edges, places }: NetPanel, name: PlaceName): readonly NetPlace[] {
  const found = places.find((p) => p.name === name && p.s > 1 && p.s < edgeLength(edges[p.edge]!) - 1);
  return found ? [found] : [];
}

/** Where back point and seat lie on the back seam. They are covered once the seam is closed. */
export function backPricks(panel: NetPanel, corners: readonly Xy[]): readonly Drawn[] {
  const n = panel.edges.length;
  return edgesOf(panel, "back").flatMap((k): readonly Drawn[] =>
    [(k + n - 1) % n, k].map((corner, end) => {
      const neighbour = panel.edges[end === 0 ? corner : (k + 1) % n]!;
      const name = neighbour.role === "topline" ? "back point" : "seat";
      return { kind: "prick", name: `${name}${sideWord(panel.edges[k]!.half)}`, at: corners[corner]! };
    }),
  );
}
