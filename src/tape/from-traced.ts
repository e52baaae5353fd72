import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { area } from "#plane/measure.ts";
import { placedBottom, type Hollows, type SaidOfBottom } from "./bottom.ts";
import { placedHalf, type FoundHalf } from "./half.ts";
import { jointFromBottom, usualJoint } from "./joint.ts";
import { clearlyHollower, halvesApart, judgeAgainstBottom, judgeHalves, judgeSides } from "./judge.ts";
import { markWords } from "./mark-words.ts";
import { pick, type Picked } from "./pick.ts";
import type { TapeSaid } from "./said.ts";
import type { TapedBottom, TapedHalf, TapedHalfName, TapedShell, TracedPicture } from "./taped-shell.ts";

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
  let first = a.called ?? (b.called ? other(b.called) : byShape(a));
  let second = b.called ?? (a.called ? other(a.called) : byShape(b));
  // A joint mark alone has no say against the shapes, but where they tell nothing it may tell.
  const jointed = byJoint(a) ?? (byJoint(b) && other(byJoint(b)!));
  if (first === second && !a.called && !b.called && jointed) [first, second] = [jointed, other(jointed)];
  if (first === second) throw new Refusal(finding("tape-halves-same", { half: first }));
  const found = first === "medial" ? { medial: a, lateral: b } : { medial: b, lateral: a };
  const turned = bothNames.filter((half) => byShape(found[half]) !== half).map((half) => finding("tape-half-turned", { half }));
  const astray = bothNames.flatMap((half) => (found[half].joints[other(half)] ? [finding("tape-mark-off", { mark: markWords(half === "medial" ? "jointLateral" : "jointMedial"), offMm: 0, on: half === "medial" ? "inner half" : "outer half" })] : []));
  return { found, turned: [...turned, ...astray] };
}

const bothNames = ["medial", "lateral"] as const;
/** The half that the joint mark on a piece names; `pick` lets no piece through with both. */
const byJoint = ({ joints }: Half): TapedHalfName | undefined => bothNames.find((half) => joints[half]);

const other = (half: TapedHalfName): TapedHalfName => (half === "medial" ? "lateral" : "medial");

const markCount = ({ said }: Picked["bottoms"][number]): number => Object.keys(said).length;

/** The traced bottom; its inner side is the hollower one, and lies to the left of a right last seen from above. */
function bottomOf({ bottoms }: Picked, said: TapeSaid): { readonly placed: TapedBottom; readonly hollow: Hollows; readonly findings: readonly Finding[] } | undefined {
  // The one with most of her marks; without any, the largest.
  const [taken, ...rest] = [...bottoms].sort((a, b) => markCount(b) - markCount(a) || area(b.traced) - area(a.traced));
  if (!taken) return undefined;
  const { photo, outline, traced } = taken;
  const marks: SaidOfBottom = Object.fromEntries((["Toe", "Seat", "JointMedial", "JointLateral"] as const).flatMap((name) => {
    const at = taken.said[`bottom${name}`];
    return at ? [[name[0]!.toLowerCase() + name.slice(1), at]] : [];
  }));
  const findings: Finding[] = bottoms.length > 1 ? [finding("tape-bottoms-many", { found: bottoms.length, photo, marked: markCount(taken) > 0 })] : [];
  for (const { said: marks } of rest) for (const mark of Object.keys(marks)) findings.push(finding("tape-mark-off", { mark: markWords(mark), offMm: 0, on: "other bottom" }));
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
