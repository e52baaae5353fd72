import { finding, type Finding } from "#base/findings.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import type { Point3 } from "#last/last.ts";
import { halves, type Half } from "#lines/feather.ts";
import type { Outline } from "#plane/outline.ts";
import { cardOutline, openingAt, settled } from "./relief-card.ts";
import { rowLengths, SlitTable, type SlitLay } from "./relief-lay.ts";
import { chooseNicks, type Aim, type ChosenNick } from "./relief-nicks.ts";
import { nickPlaces, type NickPlace, type NickZone } from "./relief-places.ts";
import { edgeCurve, edgeEnd, onEdge, sheetOf, type LaidShell, type Sheet } from "./relief-sheet.ts";
import { rankSeams, type SeamWorth } from "./seams.ts";
import type { StrainSummary } from "./shell.ts";

/** A slit in from the feather edge that lets the flat card lie closer to the last. Lengths in mm. */
export interface Nick {
  readonly half: Half;
  readonly zone: NickZone;
  /** Along the feather edge on the surface, from the seat point. */
  readonly fromSeatMm: number;
  readonly fromToeMm: number;
  readonly lengthMm: number;
  /** How far it stands open at its mouth when the card lies flat; below 0 its banks lap there. */
  readonly opensMm: number;
  /** Share of the stretch energy of the shell without nicks. */
  readonly takesAway: number;
  readonly at: Point3;
  /** Mouth and end on the flat shell that was asked about, not slit: x0 y0 x1 y1. */
  readonly onFlat: Float64Array;
}

/** One half's feather edge on the last and, openings left out, on the flat. `holds`: with the nicks it is true within {@link featherLimits}. */
export interface FeatherRelief {
  readonly onLastMm: number;
  readonly withoutNicksMm: number;
  readonly withNicksMm: number;
  readonly holds: boolean;
}

/** An edge that no slit may touch, and why. */
export interface NoSlit {
  readonly edge: "topline" | "back" | "centre";
  readonly reason: Finding;
}

export interface Relief {
  readonly nicks: readonly Nick[];
  readonly feather: Readonly<Record<Half, FeatherRelief>>;
  readonly strain: StrainSummary;
  readonly strainWithNicks: StrainSummary;
  /** Share of the stretch energy that all nicks together take away. */
  readonly gain: number;
  /** Gap between the heel ends at the topline as the card lies of itself, mm: the nicks let them swing together or apart. */
  readonly heelGapMm: { readonly withoutNicks: number; readonly withNicks: number };
  /** The card laid flat with its nicks, in the flat shell's frame; it laps over itself where a nick laps. */
  readonly card: Outline;
  readonly seams: readonly SeamWorth[];
  readonly mustNot: readonly NoSlit[];
  readonly findings: readonly Finding[];
}

/** By how much a half's feather edge may be longer on the flat than on the last, mm (handbook of hand pattern-making, common practice). */
export const featherLimits = { least: -2, most: 4 } as const;

/** While a half's feather edge is too long still, a mm of slit is worth it that shortens it by so much, mm. */
const leastTrueUp = 0.01;

/** How fine the sheet is that nicks are tried on, and the one that the chosen ones are measured on. */
const trialTriangles = 3000;
const fineTriangles = 9000;
/** The trial sheet reads feather edges shorter than the fine one by up to about this, mm. */
const trialReadsShortMm = 1;

/**
 * Where to nick the card and which seams are worth their length. `laid` is a flat shell (its frame, mm); it is not changed: nicks are
 * advice, and lie in what is pulled under in lasting. Method, source and limits: docs/method/relief.md.
 */
export function reliefOf(laid: LaidShell, watch: Watch = unwatched): Relief {
  const places = nickPlaces(laid);
  const trial = sheetOf(laid, places, trialTriangles);
  const wantedMm = featherLimits.most - trialReadsShortMm;
  const trueUp: Aim = { valueOf: (lay) => halves.reduce((sum, half) => sum + Math.max(0, overMm(trial, half, lay) - wantedMm), 0), leastPerMm: leastTrueUp };
  const choice = chooseNicks(SlitTable.of(trial.shell), places, trial.paths, trueUp, (stage, part) => watch(stage, 0.7 * part));
  const cut = choice.nicks.map(({ place, count }) => ({ ...places[place]!, inner: places[place]!.inner.slice(0, 2 * count) }));
  const sheet = sheetOf(laid, cut, fineTriangles);
  const { mesh, edges } = sheet.shell;
  const table = SlitTable.of(sheet.shell);
  watch("nicks", 0.7);
  const before = table.lay([]);
  watch("nicks", 0.75);
  const after = settled(mesh, edges, table.lay(sheet.paths, before.corners));
  const nicks = choice.nicks.map((nick, i) => nickOf(sheet, laid, cut[i]!, i, nick, after)).sort((a, b) => halves.indexOf(a.half) - halves.indexOf(b.half) || a.fromSeatMm - b.fromSeatMm);
  const feather = { medial: featherOf(sheet, "medial", before, after), lateral: featherOf(sheet, "lateral", before, after) };
  const stretch = before.energy - 4;
  const seams = rankSeams(laid, (stage, part) => watch(stage, 0.85 + 0.15 * part));
  return {
    nicks,
    feather,
    strain: before.strain,
    strainWithNicks: after.strain,
    gain: stretch > 0 ? (before.energy - after.energy) / stretch : 0,
    heelGapMm: { withoutNicks: heelGapOf(sheet, before), withNicks: heelGapOf(sheet, after) },
    card: cardOutline(mesh, sheet.paths, after),
    seams,
    mustNot: [
      { edge: "topline", reason: finding("no-slit-topline", {}) },
      { edge: "back", reason: finding("no-slit-back", {}) },
      { edge: "centre", reason: finding("no-slit-centre", {}) },
    ],
    findings: [...zoneFindings(nicks), ...featherFindings(feather), ...seamFindings(seams)],
  };
}

const featherRow = ({ shell: { edges } }: LaidShell, half: Half): Uint32Array => (half === "medial" ? edges.featherMedial : edges.featherLateral);

function overMm(sheet: Sheet, half: Half, lay: SlitLay): number {
  const { flatMm, surfaceMm } = rowLengths(sheet.shell.mesh, lay, featherRow(sheet, half));
  return flatMm - surfaceMm;
}

function heelGapOf({ shell: { mesh, edges } }: Sheet, { corners }: SlitLay): number {
  const [a, b] = [edges.backMedial, edges.backLateral].map((back) => 2 * mesh.triangles.indexOf(back[back.length - 1]!));
  return Math.sqrt((corners[a!]! - corners[b!]!) ** 2 + (corners[a! + 1]! - corners[b! + 1]!) ** 2);
}

function nickOf(sheet: Sheet, laid: LaidShell, place: NickPlace, path: number, { lengthMm, takesAway }: ChosenNick, after: SlitLay): Nick {
  const { half, zone, atMm } = place;
  const feather = edgeCurve(laid, featherRow(laid, half));
  const mouth = onEdge(feather, atMm);
  return {
    half,
    zone,
    fromSeatMm: atMm,
    fromToeMm: edgeEnd(feather) - atMm,
    lengthMm,
    opensMm: openingAt(sheet.shell.mesh, featherRow(sheet, half), sheet.paths[path]![0]!, after),
    takesAway,
    at: mouth.point,
    onFlat: Float64Array.of(...mouth.flat, ...place.inner.subarray(-2)),
  };
}

function featherOf(sheet: Sheet, half: Half, before: SlitLay, after: SlitLay): FeatherRelief {
  const row = featherRow(sheet, half), { mesh } = sheet.shell;
  const without = rowLengths(mesh, before, row), withNicks = rowLengths(mesh, after, row);
  const over = withNicks.flatMm - withNicks.surfaceMm;
  return { onLastMm: without.surfaceMm, withoutNicksMm: without.flatMm, withNicksMm: withNicks.flatMm, holds: over >= featherLimits.least && over <= featherLimits.most };
}

function zoneFindings(nicks: readonly Nick[]): Finding[] {
  if (nicks.length === 0) return [finding("nicks-none", {})];
  return (["toe", "waist", "heel"] as const).flatMap((zone) => {
    const here = nicks.filter((n) => n.zone === zone);
    if (here.length === 0) return [];
    const list = (of: (n: Nick) => number) => [Math.min(...here.map(of)), Math.max(...here.map(of))] as const;
    const [shortestMm, longestMm] = list((n) => n.lengthMm), [leastOpenMm, mostOpenMm] = list((n) => n.opensMm);
    return [finding("nicks-cut", { zone, count: here.length, shortestMm, longestMm, leastOpenMm, mostOpenMm, percent: 100 * here.reduce((sum, n) => sum + n.takesAway, 0) }, here[0]!.at)];
  });
}

function featherFindings(feather: Readonly<Record<Half, FeatherRelief>>): Finding[] {
  return halves.flatMap((half) => {
    const { holds, withNicksMm, onLastMm } = feather[half];
    return holds ? [] : [finding("feather-not-true", { half, overMm: withNicksMm - onLastMm, leastMm: featherLimits.least, mostMm: featherLimits.most })];
  });
}

const seamFindings = (seams: readonly SeamWorth[]): Finding[] =>
  seams.map(({ seam, gain, seamMm, strain }) => finding("seam-worth", { seam, percent: 100 * gain, seamMm, givePercent: 100 * strain.give, gatherPercent: 100 * strain.gather }));
