import { finding, type Finding } from "#base/findings.ts";
import { halves, type Half } from "#lines/feather.ts";
import { arcLengths, nearestOn, reversed } from "#plane/along.ts";
import { evenWidth, offsetEdge } from "#plane/edge-offset.ts";
import { fairLine } from "#plane/fair.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { apart } from "#plane/measure.ts";
import type { ShellSettings } from "#shell/settings.ts";
import type { Draft } from "../draft.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { bendsOf, mostBends } from "../even.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { placeBlock } from "../labels.ts";
import { lineMark, notchDepthMm, straightMarks } from "../marks.ts";
import { edgePoint, type Edge } from "../net-upper.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { awayOnFeather, type HeelNet } from "../lining/heel-net.ts";
import { flatAt, reachOf } from "../lining/on-last.ts";
import { straight } from "../lining/panels.ts";
import { closedLine, metLines, outlineOf, rounded, within } from "./ring.ts";

export type CounterSizes = Pick<ShellSettings, "counterMm" | "counterBelowMm" | "counterInnerMm" | "counterOuterMm" | "skiveMm" | "skiveFeatherMm">;

export interface StiffenerInput {
  readonly heel: HeelNet;
  readonly sizes: CounterSizes;
  readonly settings: PieceSettings;
  /** For the height that is usual at this size. */
  readonly lastLengthMm: number;
  readonly labels: Labels;
}

/** Usual heights at the back on EU 37, whose last is 244 mm long: 40 to 46 mm (common practice; a national standard has 44 mm at women's 240). */
export const usualHeight = [40, 46] as const;
const atLastLengthMm = 244;
/** Less than this cannot be skived at the top and along the feather line at once, mm (our own limit). */
const leastHeightMm = 20;

/**
 * The heel stiffener in one piece, out of the heel's own sheet: wings along the feather line, ends leaning back and rounded, lasted
 * under the seat. What is full inside its skive line is what the upper was laid over (docs/method/shell.md).
 */
export function cutStiffener({ heel, sizes, settings, lastLengthMm, labels }: StiffenerInput): { readonly draft?: Draft; readonly findings: readonly Finding[] } {
  if (sizes.counterMm === 0) return { findings: [] };
  const [seat, back] = [edgePoint(heel.feather, heel.seat), edgePoint(heel.topline, heel.back)];
  const backMm = apart(seat, back);
  const heightMm = backMm - sizes.counterBelowMm;
  if (heightMm < leastHeightMm) return { findings: [finding("stiffener-crosses", { heightMm: backMm })] };
  const findings: Finding[] = [...judgeHeight(heightMm, lastLengthMm)];
  const net = netLines(heel, sizes, settings, findings);
  const moved = (lines: NetLines, featherMm: number, endMm: number, topMm: number): readonly Polyline[] => [
    by(lines.feather, featherMm),
    by(lines.outer, endMm),
    by(lines.topline, topMm),
    by(lines.inner, endMm),
  ];
  const { counterLastingMm, counterRoundMm } = settings;
  const { counterBelowMm, skiveMm, skiveFeatherMm } = sizes;
  const outline = evenRing(moved(net, counterLastingMm, 0, -counterBelowMm), [counterRoundMm / 2, counterRoundMm, counterRoundMm, counterRoundMm / 2]);
  const full = metLines(moved(net, -skiveFeatherMm, -skiveMm, -counterBelowMm - skiveMm), 20);
  if (!outline) return { findings: [...findings, finding("stiffener-crosses", { heightMm: backMm })] };
  const low: Xy = beyond(back, seat, counterLastingMm);
  const marks: Drawn[] = [
    ...(full ? [lineMark("skive to nothing", "skive", closedLine(full))] : []),
    lineMark("feather line", "net", within(net.feather, outline)),
    ...straightMarks("back line", "centre", outline, beyond(seat, back, 20), beyond(back, seat, 40)),
    { kind: "notch", name: "seat: snip", at: low, toward: beyond(back, seat, counterLastingMm - notchDepthMm) },
  ];
  // There is seldom room beside the skive lines, which text may cross.
  const avoid = marks.flatMap((m) => (m.kind === "line" && m.use === "centre" ? [m.line] : []));
  const lines = pieceLines({ name: "stiffener", material: "stiffener", notes: [`${heightMm.toFixed(0)} mm high at the back,`, "skived all round,", "seen from outside"], count: 1, labels });
  const near: Xy = [(seat[0] + back[0]) / 2 - 30, (seat[1] + back[1]) / 2];
  const label = placeBlock(lines, { within: outline, avoid, near, angleDeg: 0 });
  return { draft: { name: "stiffener", material: "stiffener", net: false, outline, marks, labels: [label], directionDeg: 0, ground: "stiffener" }, findings };
}

/** The lines that a stiffener is drawn by, counter-clockwise: feather line, outer end up, topline, inner end down. */
interface NetLines {
  readonly feather: Polyline;
  readonly outer: Polyline;
  readonly topline: Polyline;
  readonly inner: Polyline;
}

function netLines(heel: HeelNet, { counterBelowMm, counterInnerMm, counterOuterMm }: CounterSizes, { counterRakeMm }: PieceSettings, findings: Finding[]): NetLines {
  const top = offsetEdge(heel.topline.line, evenWidth(heel.topline.line, -counterBelowMm));
  const end = (half: Half): Polyline => {
    const scale = heel.scales[half].feather;
    const askedMm = half === "medial" ? counterInnerMm : counterOuterMm;
    const mostMm = reachOf(scale) - 1;
    if (askedMm > mostMm) findings.push(finding("stiffener-beyond-sheet", { half, wingMm: askedMm, mostMm }));
    const foot = flatAt(scale, Math.min(askedMm, mostMm));
    const below = edgePoint(heel.feather, foot - awayOnFeather(half) * counterRakeMm);
    const { x, y } = nearestOn(top, arcLengths(top), below[0], below[1]);
    return straight([edgePoint(heel.feather, foot), [x, y]]);
  };
  const [inner, outer] = halves.map(end) as [Polyline, Polyline];
  return { feather: heel.feather.line, outer, topline: heel.topline.line, inner: reversed(inner) };
}

/** The lower edge is trimmed after lasting, so it may be moved farther than the upper one, mm. */
const fairing = [[0, 0], [0.05, 0.05], [0.22, 0.11], [0.6, 0.22], [1.2, 0.3]] as const;

/**
 * The outline of lines that follow each other, its corners rounded: lower and upper edge as they are where they run even together with the
 * ends between them, or else their fair lines, with as much room as that takes; none where the lines do not meet.
 */
function evenRing([lower, outer, upper, inner]: readonly Polyline[], radiiMm: readonly number[]): Outline | undefined {
  let best: { readonly outline: Outline; readonly bends: number } | undefined;
  for (const [lowerMm, upperMm] of fairing) {
    const ring = metLines([fairWithin(lower!, lowerMm), outer!, fairWithin(upper!, upperMm), inner!], 60);
    if (!ring) continue;
    const outline = outlineOf(rounded(ring, radiiMm));
    const bends = bendsOf(outline);
    if (!best || bends < best.bends) best = { outline, bends };
    if (bends <= mostBends) break;
  }
  return best?.outline;
}

const fairWithin = (line: Polyline, toleranceMm: number): Polyline => (toleranceMm === 0 ? line : fairLine(line, { toleranceMm }));

const by = (line: Edge["line"], mm: number): Polyline => (mm === 0 ? line : offsetEdge(line, evenWidth(line, mm)));

function judgeHeight(heightMm: number, lastLengthMm: number): readonly Finding[] {
  const [least, most] = usualHeight.map((mm) => (mm * lastLengthMm) / atLastLengthMm) as [number, number];
  // Half a millimetre is less than is seen.
  return heightMm < least - 0.5 || heightMm > most + 0.5 ? [finding("stiffener-height", { heightMm, least, most })] : [];
}


/** The point so far beyond b on the way from a. */
function beyond(a: Xy, b: Xy, mm: number): Xy {
  const size = apart(a, b);
  return [b[0] + (mm * (b[0] - a[0])) / size, b[1] + (mm * (b[1] - a[1])) / size];
}
