import { finding, type Finding } from "#base/findings.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import type { Point3 } from "#last/last.ts";
import { halves, type Half } from "#lines/feather.ts";
import { featherOver, featherRow, heelGapOf, mostOver, openingAt } from "./relief-card.ts";
import { rowLengths, SlitTable, type SlitLay } from "./relief-lay.ts";
import { NickChooser, type ChosenNick } from "./relief-nicks.ts";
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
  /** Share of the stretch of the shell without nicks: of its stretch energy together with what keeps topline, back and centre to length. */
  readonly takesAway: number;
  readonly at: Point3;
  /** Mouth and end on the flat shell that was asked about, not slit: x0 y0 x1 y1. */
  readonly onFlat: Float64Array;
}

/** One half's feather edge where it lies, over all that is beneath the upper, and, openings left out, on the flat, mm. */
export interface FeatherRelief {
  readonly overMm: number;
  readonly withoutNicksMm: number;
  readonly withNicksMm: number;
  /** What of it comes from the topline being cut shorter than where it lies. */
  readonly drawnMm: number;
  /** By how much it may be longer than where it lies: {@link featherLimits}, and what the shorter topline adds. */
  readonly mostMm: number;
  /** Whether with the nicks it is neither too short nor too long. */
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
  /** Share of the stretch that all nicks together take away, counted as in {@link Nick.takesAway}. */
  readonly gain: number;
  /** Gap between the heel ends at the topline as the card lies of itself, mm, below 0 where they have swung past each other: nicks let them swing. */
  readonly heelGapMm: { readonly withoutNicks: number; readonly withNicks: number };
  readonly seams: readonly SeamWorth[];
  readonly mustNot: readonly NoSlit[];
  readonly findings: readonly Finding[];
}

/**
 * By how much a half's feather edge may be longer on the flat than where it lies, mm (handbook of hand pattern-making, common practice).
 * It stands there for the base pattern, and is read as one for a topline not drawn shorter yet; drawn, it may be longer by what that adds.
 */
export const featherLimits = { least: -2, most: 4 } as const;

/** While a half's feather edge is too long still, a mm of slit is worth it that shortens it by so much, mm. */
const leastTrueUp = 0.01;

/** How fine the sheet is that nicks are tried on, and the one that the chosen ones are measured on. */
const trialTriangles = 2000;
const fineTriangles = 9000;
/** The trial sheet reads feather edges shorter than the fine one by about this, mm; where it is more, that is found by measuring. */
const trialReadsShortMm = 1;
/** How often nicks are chosen further where the fine sheet shows a feather edge too long still, and by how much more than it shows, mm. */
const mostRounds = 4;
const spareMm = 0.1;

/**
 * Where to nick the card and which seams are worth their length. `laid` is a flat shell (its frame, mm); it is not changed: nicks are
 * advice, and lie in what is pulled under in lasting. Method, source and limits: docs/method/relief.md.
 */
export function reliefOf(laid: LaidShell, watch: Watch = unwatched): Relief {
  const { drawn, chosen, cut, sheet, before, after } = nickedTrue(laid, (stage, part) => watch(stage, 0.85 * part));
  const nicks = chosen.map((nick, i) => nickOf(sheet, laid, cut[i]!, i, nick, after)).sort((a, b) => halves.indexOf(a.half) - halves.indexOf(b.half) || a.fromSeatMm - b.fromSeatMm);
  const feather = { medial: featherOf(sheet, "medial", before, after, drawn.medial), lateral: featherOf(sheet, "lateral", before, after, drawn.lateral) };
  const stretch = before.total - 4;
  const seams = rankSeams(laid, (stage, part) => watch(stage, 0.85 + 0.15 * part));
  return {
    nicks,
    feather,
    strain: before.strain,
    strainWithNicks: after.strain,
    gain: stretch > 0 ? (before.total - after.total) / stretch : 0,
    heelGapMm: { withoutNicks: heelGapOf(sheet, before), withNicks: heelGapOf(sheet, after) },
    seams,
    mustNot: [
      { edge: "topline", reason: finding("no-slit-topline", {}) },
      { edge: "back", reason: finding("no-slit-back", {}) },
      { edge: "centre", reason: finding("no-slit-centre", {}) },
    ],
    findings: [...zoneFindings(nicks), ...featherFindings(feather, (half) => mostOver(sheet, half, after)), ...seamFindings(seams)],
  };
}

/** Nicks, and the card laid on a fine sheet without and with them. */
interface Nicked {
  readonly chosen: readonly ChosenNick[];
  readonly cut: readonly NickPlace[];
  readonly sheet: Sheet;
  readonly before: SlitLay;
  readonly after: SlitLay;
}

/** Nicks until no more is worth it and, measured on the fine sheet, the feather edges are no longer than they may be; or as near as nicks bring them. */
function nickedTrue(laid: LaidShell, watch: Watch): Nicked & { readonly drawn: Readonly<Record<Half, number>> } {
  const places = nickPlaces(laid);
  const trial = sheetOf(laid, places, trialTriangles);
  const chooser = new NickChooser(SlitTable.of(trial), places, trial.paths, watch);
  const undrawn = SlitTable.undrawn(trial).lay([], chooser.now.corners);
  const drawnOf = (half: Half): number => Math.max(0, featherOver(trial, half, chooser.now) - featherOver(trial, half, undrawn));
  const drawn = { medial: drawnOf("medial"), lateral: drawnOf("lateral") };
  const readsShort = { medial: trialReadsShortMm, lateral: trialReadsShortMm };
  const tooLong = (lay: SlitLay): number => halves.reduce((sum, half) => sum + Math.max(0, featherOver(trial, half, lay) + readsShort[half] - featherLimits.most - drawn[half]), 0);
  const further = (): boolean => chooser.towards({ valueOf: tooLong, leastPerMm: leastTrueUp });
  chooser.byStretch();
  further();
  for (let round = 1; ; round++) {
    const measured = measuredFine(laid, places, chooser.nicks);
    const over = (half: Half): number => featherOver(measured.sheet, half, measured.after);
    if (round === mostRounds || halves.every((half) => over(half) <= featherLimits.most + drawn[half])) return { ...measured, drawn };
    for (const half of halves) readsShort[half] = over(half) - featherOver(trial, half, chooser.now) + spareMm;
    if (!further()) return { ...measured, drawn };
  }
}

function measuredFine(laid: LaidShell, places: readonly NickPlace[], chosen: readonly ChosenNick[]): Nicked {
  const cut = chosen.map(({ place, count }) => ({ ...places[place]!, inner: places[place]!.inner.slice(0, 2 * count) }));
  const sheet = sheetOf(laid, cut, fineTriangles);
  const table = SlitTable.of(sheet);
  const before = table.lay([]);
  return { chosen, cut, sheet, before, after: table.lay(sheet.paths, before.corners) };
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

function featherOf(sheet: Sheet, half: Half, before: SlitLay, after: SlitLay, drawnMm: number): FeatherRelief {
  const row = featherRow(sheet, half), { mesh } = sheet.shell;
  const without = rowLengths(mesh, before, row), withNicks = rowLengths(mesh, after, row);
  const over = withNicks.flatMm - withNicks.surfaceMm, mostMm = featherLimits.most + drawnMm;
  return { overMm: without.surfaceMm, withoutNicksMm: without.flatMm, withNicksMm: withNicks.flatMm, drawnMm, mostMm, holds: over >= featherLimits.least && over <= mostMm };
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

function featherFindings(feather: Readonly<Record<Half, FeatherRelief>>, placeOf: (half: Half) => Point3): Finding[] {
  return halves.flatMap((half) => {
    const { holds, withNicksMm, overMm, drawnMm, mostMm } = feather[half];
    return holds ? [] : [finding("feather-not-true", { half, longerMm: withNicksMm - overMm, leastMm: featherLimits.least, mostMm, drawnMm }, placeOf(half))];
  });
}

const seamFindings = (seams: readonly SeamWorth[]): Finding[] =>
  seams.map(({ seam, gain, seamMm, strain }) => finding("seam-worth", { seam, percent: 100 * gain, seamMm, givePercent: 100 * strain.give, gatherPercent: 100 * strain.gather }));
