import { medialSign, type Last, type Point3, type Side } from "#last/last.ts";
import { arcNearest, curveLength, pointOn } from "#last/surface-curve.ts";
import { featherHalf, type Half } from "#lines/feather.ts";
import type { HeightMark, Lines } from "#lines/lines.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { puffBeforeThroatMm } from "#shell/beneath.ts";
import type { BeneathRow } from "#shell/girths.ts";
import type { SeamLine } from "#shell/seam-line.ts";
import type { ShellSettings } from "#shell/settings.ts";
import { draftGauges, type DraftGauge, type MarginSettings } from "./gauge-drafts.ts";
import { jointTape } from "./joint-tape.ts";
import { overUpperOf, type OverUpper } from "./over-upper.ts";
import { foretoldOf, type Band, type Foretold } from "./foretold.ts";

/** A letter always means the same mark, whether the others are there or not. */
export type GaugeLetter = "A" | "B" | "C" | "D" | "E" | "F" | "G" | "H" | "J" | "K" | "L" | "M" | "N" | "P";

/** One place to mark on both lasts, and the tape lengths by which it is found. All mm, on the surface of the bare last. */
export interface GaugeMark {
  readonly letter: GaugeLetter;
  readonly key: string;
  /** What it is, the half left out. */
  readonly name: string;
  readonly half?: Half;
  readonly at: Point3;
  /** Running length along the feather line from the seat point to its foot. */
  readonly alongMm?: number;
  readonly foot?: Point3;
  /** Tape length to it: from the toe point along the centre, from the seat point up the back, or from its foot. */
  readonly lengthMm?: number;
  /** The tape's way where it is not the shortest that a hand finds by itself: x0 y0 z0 …. */
  readonly way?: Float64Array;
  readonly foretold?: Band;
}

/** All that is marked and gauged on one last of a pair; the other's is {@link mirroredGauges}. */
export interface Gauges {
  readonly side: Side;
  /** In the order in which they are marked: centre, then each half from the heel, outer one first. */
  readonly marks: readonly GaugeMark[];
  /** The drafts in the order in which they are taken. */
  readonly drafts: readonly DraftGauge[];
  /** Length of each half of the feather line, seat point to toe point, mm. */
  readonly featherMm: Readonly<Record<Half, number>>;
  /** By how much a tape over the lasted upper reads more than on the bare last, mm; nothing where it was not asked. */
  readonly overUpper?: OverUpper;
}

export interface GaugeInput {
  readonly last: Last;
  readonly lines: Lines;
  readonly settings: MarginSettings & Pick<PieceSettings, "toePuffMm">;
  readonly shell: Pick<ShellSettings, "counterMm" | "counterBelowMm" | "counterInnerMm" | "counterOuterMm" | "puffReachMm">;
  /** Seams of the cut besides the back seam. */
  readonly seams?: readonly Pick<SeamLine, "name" | "half" | "featherMm">[];
  readonly beneath?: readonly BeneathRow[];
  readonly foretold?: Foretold;
}

/** Half a stiffener or less than this at the back is not worth a mark, mm. */
const leastStiffenerMm = 10;

/**
 * The marks by which two lasts are made alike and a pair is lasted alike, as tape lengths on the bare last; what margin must show at
 * each draft; and what was foretold. docs/guide/marks-and-gauges.md says how they are used.
 */
export function gaugesOf(input: GaugeInput): Gauges {
  const { last, settings, foretold, beneath } = input;
  return {
    side: last.side,
    marks: [...centreMarks(input), ...(["lateral", "medial"] as const).flatMap((half) => flankMarks(input, half))],
    featherMm: { medial: curveLength(featherHalf(last.feather, "medial")), lateral: curveLength(featherHalf(last.feather, "lateral")) },
    drafts: draftGauges(last, settings, foretold?.lasted),
    ...(beneath && { overUpper: overUpperOf(beneath) }),
  };
}

function centreMarks({ last, lines, settings, shell, foretold }: GaugeInput): readonly GaugeMark[] {
  const { throatDepthMm, backHeightMm } = lines.settings;
  const topMm = backHeightMm - shell.counterBelowMm;
  const puffMm = Math.min(shell.puffReachMm, throatDepthMm - puffBeforeThroatMm);
  const band = (key: "throatDepthMm" | "backHeightMm") => foretoldOf(foretold, (e) => e[key], (b) => b[key]);
  return [
    { letter: "A", key: "throat", name: "throat depth", at: pointOn(lines.centre, throatDepthMm), lengthMm: throatDepthMm, ...band("throatDepthMm") },
    { letter: "B", key: "back", name: "back height", at: pointOn(lines.back, backHeightMm), lengthMm: backHeightMm, ...band("backHeightMm") },
    ...(shell.counterMm > 0 && topMm > leastStiffenerMm ? [{ letter: "K", key: "stiffener-top", name: "top of the stiffener", at: pointOn(last.backCurve, topMm), lengthMm: topMm } as const] : []),
    ...(settings.toePuffMm > 0 && puffMm > 0 ? [{ letter: "M", key: "puff", name: "back edge of the toe puff", at: pointOn(last.centreRidge, puffMm), lengthMm: puffMm } as const] : []),
    { letter: "N", key: "toe-notch", name: "centre notch at the toe", at: last.landmarks.toePoint },
    { letter: "P", key: "seat-notch", name: "centre notch at the seat", at: last.landmarks.seatPoint, alongMm: 0 },
  ];
}

const quarters = [["C", "height at 1/4"], ["D", "height at 1/2"], ["E", "height at 3/4"]] as const;

/** The marks of one half in the order in which a tape along the feather line meets them from the heel. */
function flankMarks({ last, lines, shell, seams = [], foretold }: GaugeInput, half: Half): readonly GaugeMark[] {
  const medial = half === "medial";
  const feather = featherHalf(last.feather, half);
  const height = (letter: GaugeLetter, key: string, name: string, m: HeightMark, told: { readonly foretold?: Band }): GaugeMark =>
    ({ letter, key: `${half}-${key}`, name, half, at: m.at, alongMm: m.alongFeatherMm, foot: m.foot, lengthMm: m.heightMm, ...told });
  const onFeather = (letter: GaugeLetter, key: string, name: string, alongMm: number): GaugeMark => ({ letter, key: `${half}-${key}`, name, half, at: pointOn(feather, alongMm), alongMm });
  const lowest = medial ? lines.lowestMedial : lines.lowestLateral;
  const jointMm = arcNearest(feather, medial ? last.landmarks.jointMedial : last.landmarks.jointLateral);
  const tape = jointTape(last, lines, half);
  const wingMm = medial ? shell.counterInnerMm : shell.counterOuterMm;
  return [
    ...quarters.map(([letter, name], i) => height(letter, `quarter-${i + 1}`, name, lines.quarterHeights[half][i]!, foretoldOf(foretold, (e) => e.sideMm[half][i]!))),
    height("F", "lowest", "height, lowest place", lowest, foretoldOf(foretold, (e) => e.lowestMm[half], (b) => (medial ? b.innerHeightMm : b.outerHeightMm))),
    onFeather("G", "joint", "joint point", jointMm),
    ...(tape ? [{ letter: "H", key: `${half}-joint-line`, name: `joint line up to the ${tape.endsAt}`, half, at: tape.at, alongMm: jointMm, foot: pointOn(feather, jointMm), lengthMm: tape.lengthMm, way: tape.way } as const] : []),
    ...seams.filter((seam) => seam.half === half).map((seam) => onFeather("J", "seam", seam.name === "inner waist" ? "foot of the inner seam" : "foot of the side seam", seam.featherMm)),
    ...(shell.counterMm > 0 && wingMm > 0 && wingMm < curveLength(feather) ? [onFeather("L", "stiffener-end", "end of the stiffener", wingMm)] : []),
  ].sort((a, b) => a.alongMm! - b.alongMm!);
}

const flip = ([x, y, z]: Point3): Point3 => [x, y === 0 ? 0 : -y, z];

/** The same for the last of the other foot: every point with y turned, which is exact; no length changes. */
export function mirroredGauges({ side, marks, drafts, ...same }: Gauges): Gauges {
  return {
    ...same,
    side: medialSign(side) === 1 ? "left" : "right",
    marks: marks.map((mark) => ({ ...mark, at: flip(mark.at), ...(mark.foot && { foot: flip(mark.foot) }), ...(mark.way && { way: mark.way.map((v, i) => (i % 3 === 1 && v !== 0 ? -v : v)) }) })),
    drafts: drafts.map((draft) => ({ ...draft, at: flip(draft.at) })),
  };
}

/** Marks of one half. */
export const marksOf = (gauges: Gauges, half: Half): readonly GaugeMark[] => gauges.marks.filter((mark) => mark.half === half);
/** The mark of a key; every pair has throat, back, heights and joints. */
export const markOf = (gauges: Gauges, key: string): GaugeMark | undefined => gauges.marks.find((mark) => mark.key === key);
