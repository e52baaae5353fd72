import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Side } from "#last/last.ts";
import type { TracedPhoto } from "#photo/trace-photo.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { area } from "#plane/measure.ts";
import { placedBottom, type Hollows, type SaidOfBottom } from "./bottom.ts";
import { placedHalf, type FoundHalf } from "./half.ts";
import { jointFromBottom, usualJoint } from "./joint.ts";
import { clearlyHollower, halvesApart, judgeAgainstBottom, judgeHalves, judgeSides } from "./judge.ts";
import { pick, type Picked } from "./pick.ts";
import type { Xy } from "./ring.ts";
import type { TapeSaid } from "./said.ts";

export type TapedHalfName = "medial" | "lateral";

/** One of the job's pictures and what was traced in it. */
export interface TracedPicture {
  readonly photo: string;
  readonly traced: TracedPhoto;
}

/** A named point of a traced outline: where it lies in its picture, and whether the maker put it there, it was found, or it stands at an estimated place. */
export interface TapedPoint {
  /** On the card's plane of the picture, mm. */
  readonly at: Xy;
  readonly how: "said" | "found" | "estimated";
}

/** A slit of the feather edge that lies open on the table. Places on the card's plane of the picture, mm. */
export interface Slit {
  readonly from: Xy;
  readonly to: Xy;
  readonly tip: Xy;
  readonly openMm: number;
  readonly deepMm: number;
  /** Where it stands along the half's feather edge, mm from the seat point; nothing where it is cut into another edge. */
  readonly along?: number;
}

/**
 * One half of the taped upper. The edges lie in the shell's frame, seen from outside as on a right last: origin at the toe point,
 * centre line from the throat to the toe along +x, medial +y; slits are bridged straight. mm.
 */
export interface TapedHalf {
  readonly half: TapedHalfName;
  readonly photo: string;
  /** Which of the picture's outlines it is. */
  readonly outline: number;
  readonly points: Readonly<Record<"toe" | "throat" | "back" | "seat" | "joint", TapedPoint>>;
  readonly slits: readonly Slit[];
  /** Seat point to toe point. */
  readonly feather: Polyline;
  /** Seat point to back point. */
  readonly back: Polyline;
  /** Back point to throat. */
  readonly topline: Polyline;
  /** Toe point to throat, as it was cut. */
  readonly centre: Polyline;
  readonly lengths: TapedLengths;
  /** Running length of the joint point along `feather`, from the seat point. */
  readonly jointAlong: number;
}

/** Lengths along one half, mm. */
export interface TapedLengths {
  /** Along the feather edge, less what the slits stand open: what the last's own edge measures. */
  readonly feather: number;
  readonly back: number;
  readonly topline: number;
  /** Throat depth: toe point to throat, straight. */
  readonly centre: number;
  /** How far the cut centre bows off the straight line at most; + where it bulges away from its half. */
  readonly centreBow: number;
  /** What the slits of the feather edge stand open, together. */
  readonly slitsOpen: number;
  /** From the toe point along the feather edge to the joint point, less open slits. */
  readonly toeToJoint: number;
  /** The same from the seat point. */
  readonly seatToJoint: number;
}

/** The bottom traced round the last: origin at the seat point, toe point on +x, as on a right last seen from above (medial +y); mm. */
export interface TapedBottom {
  readonly photo: string;
  readonly outline: number;
  /** Counter-clockwise from the seat point. */
  readonly edge: Outline;
  readonly toePoint: Xy;
  readonly jointMedial: Xy;
  readonly jointLateral: Xy;
  readonly points: Readonly<Record<"toe" | "seat" | "jointMedial" | "jointLateral", TapedPoint>>;
  readonly lengthMm: number;
  readonly ballWidthMm: number;
  readonly seatWidthMm: number;
  /** Along the edge from the seat point over either side. */
  readonly halves: Readonly<Record<TapedHalfName, { readonly toJoint: number; readonly toToe: number }>>;
}

/** The two halves at a quarter of the topline: how far the mirrored outer one lies from the inner one. */
export interface HalvesApart {
  /** Share of the topline from the back point. */
  readonly share: number;
  readonly apartMm: number;
}

/** The maker's own taped pattern: both halves of the upper, laid to one centre line, and the bottom where it was traced. */
export interface TapedShell {
  /** The last that was taped. */
  readonly side: Side;
  readonly medial: TapedHalf;
  readonly lateral: TapedHalf;
  readonly bottom?: TapedBottom;
  /** Length of the last, tape along the bottom: of the traced bottom, or estimated from the halves. */
  readonly length: { readonly mm: number; readonly how: "traced" | "estimated" };
  readonly apart: readonly HalvesApart[];
  readonly findings: readonly Finding[];
}

/**
 * The maker's taped pattern out of the traced outlines of her pictures. Method and limits: docs/method/tape.md.
 * @throws Refusal where there are not two halves, an inner and an outer one, or their corners cannot be told.
 */
export function tapedShell(traced: readonly TracedPicture[], said: TapeSaid): TapedShell {
  const picked = pick(traced, said);
  const { found, turned } = bothHalves(picked, said, traced.length);
  const bottom = bottomOf(picked, said);
  const rule = bottom ? jointFromBottom(bottom.placed) : usualJoint;
  const place = (half: TapedHalfName): TapedHalf => placedHalf(found[half], half, rule, found[half].joints[half]);
  const medial = place("medial"), lateral = place("lateral");
  const apart = halvesApart(medial, lateral);
  const length = bottom ? ({ mm: bottom.placed.lengthMm, how: "traced" } as const) : ({ mm: usualLength(medial, lateral), how: "estimated" } as const);
  return {
    side: said.side,
    medial,
    lateral,
    ...(bottom ? { bottom: bottom.placed } : {}),
    length,
    apart,
    findings: [
      ...picked.astray.map(({ mark, offMm }) => finding("tape-mark-off", { mark: markWords(mark), offMm })),
      ...turned,
      ...judgeSides(medial, lateral, bottom?.hollow),
      ...judgeHalves(medial, lateral, apart),
      ...(bottom ? [...bottom.findings, ...judgeAgainstBottom([medial, lateral], bottom.placed)] : [finding("tape-no-bottom", { lengthMm: length.mm })]),
    ],
  };
}

type Half = Picked["halves"][number];

/**
 * Which half is which. Seen from outside, toe, throat, back and seat of the inner half of a right last follow each other clockwise;
 * on a left one, or seen from the side that was on the last, the other way round.
 */
function bothHalves({ halves, unclear }: Picked, said: TapeSaid, photos: number): { readonly found: Readonly<Record<TapedHalfName, Half>>; readonly turned: readonly Finding[] } {
  const medialClockwise = (said.side === "right") !== (said.faceDown === true);
  const byShape = ({ corners }: FoundHalf): TapedHalfName => (corners.clockwise === medialClockwise ? "medial" : "lateral");
  const count = halves.filter((h) => h.called).length === 2 ? halves.filter((h) => h.called) : halves;
  if (count.length < 2 && unclear.length > 0) throw new Refusal(finding("tape-corners-unclear", { photo: unclear[0]! }));
  if (count.length < 2) throw new Refusal(finding("tape-halves-missing", { found: count.length, photos }));
  if (count.length > 2) throw new Refusal(finding("tape-halves-many", { found: count.length }));
  const [a, b] = count as [Half, Half];
  // One named half names the other.
  const first = a.called ?? (b.called ? other(b.called) : byShape(a));
  const second = b.called ?? (a.called ? other(a.called) : byShape(b));
  if (first === second) throw new Refusal(finding("tape-halves-same", { half: first }));
  const found = first === "medial" ? { medial: a, lateral: b } : { medial: b, lateral: a };
  const turned = (["medial", "lateral"] as const).filter((half) => byShape(found[half]) !== half).map((half) => finding("tape-half-turned", { half }));
  return { found, turned };
}

const other = (half: TapedHalfName): TapedHalfName => (half === "medial" ? "lateral" : "medial");

/** The traced bottom; its inner side is the hollower one, and lies to the left of a right last seen from above. */
function bottomOf({ bottoms }: Picked, said: TapeSaid): { readonly placed: TapedBottom; readonly hollow: Hollows; readonly findings: readonly Finding[] } | undefined {
  const [largest] = [...bottoms].sort((a, b) => area(b.traced) - area(a.traced));
  if (!largest) return undefined;
  const { photo, outline, traced } = largest;
  const marks: SaidOfBottom = Object.fromEntries((["Toe", "Seat", "JointMedial", "JointLateral"] as const).flatMap((name) => {
    const at = largest.said[`bottom${name}`];
    return at ? [[name[0]!.toLowerCase() + name.slice(1), at]] : [];
  }));
  const findings: Finding[] = bottoms.length > 1 ? [finding("tape-bottoms-many", { found: bottoms.length, photo })] : [];
  const left = said.side === "right";
  const asSaid = placedBottom(photo, outline, traced, left, marks);
  const against = asSaid.hollow.lateral - asSaid.hollow.medial;
  const marked = marks.jointMedial !== undefined || marks.jointLateral !== undefined;
  // A marked joint point on the other side of the axis, or a clearly hollower waist there, says that the tracing lies turned over.
  const turned = marked ? asSaid.jointMedial[1] < asSaid.jointLateral[1] : against > clearlyHollower;
  const { hollow, ...placed } = turned ? placedBottom(photo, outline, traced, !left, marks) : asSaid;
  if (turned && !marked) findings.push(finding("tape-bottom-turned", { medialMm: asSaid.hollow.medial, lateralMm: asSaid.hollow.lateral }));
  return { placed, hollow, findings };
}

/** Straight from toe point to seat point of a flat half against the length along the bottom (clean lasts: 1.127 to 1.144). */
const chordToLength = 1.137;

function usualLength(medial: TapedHalf, lateral: TapedHalf): number {
  const chord = ({ feather: { xy } }: TapedHalf): number => Math.hypot(xy[0]! - xy[xy.length - 2]!, xy[1]! - xy[xy.length - 1]!);
  return (chord(medial) + chord(lateral)) / 2 / chordToLength;
}

const markWords = (mark: string): string =>
  mark
    .replace(/Medial$/, ", inner side")
    .replace(/Lateral$/, ", outer side")
    .replace(/^bottom([A-Z]\w*)/, (_, name: string) => `${name.toLowerCase()} of the bottom`);
