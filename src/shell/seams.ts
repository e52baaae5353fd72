import type { Watch } from "#base/watch.ts";
import { halves, type Half } from "#lines/feather.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { SlitTable } from "./relief-lay.ts";
import { atShare, jointMm } from "./relief-places.ts";
import { edgeCurve, edgeEnd, onEdge, sheetOf, type EdgeCurve, type LaidShell, type SheetLine } from "./relief-sheet.ts";
import type { StrainSummary } from "./shell.ts";
import { closeBack } from "./slit.ts";

/** Ways to open the shell so that it can be laid flat. Where the back is not named it is closed. */
export const seamKinds = ["back", "inner-waist", "sides", "back-and-inner-waist", "back-and-sides"] as const;
export type SeamKind = (typeof seamKinds)[number];

/** What one way of cutting the upper takes away of the stretch, beside the back seam alone. */
export interface SeamWorth {
  readonly seam: SeamKind;
  readonly pieces: number;
  /** Length of all its seams on the surface, mm. */
  readonly seamMm: number;
  readonly strain: StrainSummary;
  /** Area mean of σ₁² + σ₂² + σ₁⁻² + σ₂⁻²: 4 for no stretch at all. */
  readonly energy: number;
  /** Share of the stretch energy of the shell with the back seam alone that is gone; below 0 it is worse than that. */
  readonly gain: number;
  /** Gain by mm of seam. */
  readonly gainPerMm: number;
}

/** Inner waist seam: share of the length from the heel at the feather edge (trade: 40 to 45 %, in front of the heel breast). */
const innerWaistShare = 0.425;
/** Side seam: how far behind the throat it meets the topline (an early handbook for cordwainers, 1813: 1 to 1½ inches, 25 to 38 mm; nearer it tears). */
const behindThroatMm = 32;
/** Side seam: at the feather edge so far behind the joint at least, so that it does not rub there (common practice, no source). */
const behindJointMm = 10;
const triangles = 4000;

/** Lays the shell flat with each way of seams and ranks them, most gain first. `laid` lies in the flat shell's frame. */
export function rankSeams(laid: LaidShell, watch: Watch): readonly SeamWorth[] {
  const lines = [innerWaist(laid), ...halves.map((half) => side(laid, half))];
  const sheet = sheetOf(laid, lines, triangles);
  const closed = closeBack(sheet.shell);
  const table = SlitTable.of(sheet, closed.shell.mesh);
  const [waist, sideMedial, sideLateral] = sheet.paths.map(closed.renamed) as [Uint32Array, Uint32Array, Uint32Array];
  const back = closed.shell.edges.backMedial;
  const rows: Record<SeamKind, readonly Uint32Array[]> = {
    "back": [back],
    "inner-waist": [waist],
    "sides": [sideMedial, sideLateral],
    "back-and-inner-waist": [back, waist],
    "back-and-sides": [back, sideMedial, sideLateral],
  };
  const worths = seamKinds.map((seam, k) => {
    watch("seams", k / seamKinds.length);
    const { energy, strain, parts } = table.lay(rows[seam]);
    return { seam, pieces: parts, seamMm: rows[seam].reduce((sum, row) => sum + edgeEnd(edgeCurve({ shell: closed.shell, uv: new Float64Array(0) }, row)), 0), strain, energy };
  });
  watch("seams", 1);
  const stretch = worths[0]!.energy - 4;
  const gainOf = (energy: number): number => (stretch > 0 ? (stretch - (energy - 4)) / stretch : 0);
  return worths
    .map((w) => ({ ...w, gain: gainOf(w.energy), gainPerMm: gainOf(w.energy) / w.seamMm }))
    .sort((a, b) => b.gain - a.gain);
}

function innerWaist(laid: LaidShell): SheetLine {
  const { featherMedial, toplineMedial } = laid.shell.edges;
  const feather = edgeCurve(laid, featherMedial), topline = edgeCurve(laid, toplineMedial);
  const atMm = atShare(feather, innerWaistShare);
  const [x, y] = onEdge(feather, atMm).flat;
  return lineBetween("medial", feather, atMm, topline, surfaceMm(topline, x, y));
}

function side(laid: LaidShell, half: Half): SheetLine {
  const e = laid.shell.edges;
  const feather = edgeCurve(laid, half === "medial" ? e.featherMedial : e.featherLateral), topline = edgeCurve(laid, half === "medial" ? e.toplineMedial : e.toplineLateral);
  const wanted = laid.uv[2 * e.centre[e.centre.length - 1]!]! - behindThroatMm;
  let k = 0;
  while (k + 1 < topline.arc.length && topline.uv[2 * k]! < wanted) k++;
  const toplineMm = topline.arc[k]!;
  const atMm = Math.min(surfaceMm(feather, topline.uv[2 * k]!, topline.uv[2 * k + 1]!), jointMm(feather) - behindJointMm);
  return lineBetween(half, feather, atMm, topline, toplineMm);
}

/** Running length, on the surface, of an edge's place that is nearest to a point of the flat. */
function surfaceMm({ uv, arc }: EdgeCurve, x: number, y: number): number {
  const flatArc = arcLengths({ xy: uv });
  const { s } = nearestOn({ xy: uv }, flatArc, x, y);
  let k = 0;
  while (k + 2 < arc.length && flatArc[k + 1]! < s) k++;
  return arc[k]! + ((s - flatArc[k]!) / (flatArc[k + 1]! - flatArc[k]!)) * (arc[k + 1]! - arc[k]!);
}

const stepMm = 4;

function lineBetween(half: Half, feather: EdgeCurve, atMm: number, topline: EdgeCurve, toplineMm: number): SheetLine {
  const [ax, ay] = onEdge(feather, atMm).flat, [bx, by] = onEdge(topline, toplineMm).flat;
  const count = Math.max(2, Math.round(Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2) / stepMm));
  const inner = new Float64Array(2 * (count - 1));
  for (let i = 1; i < count; i++) inner.set([ax + ((bx - ax) * i) / count, ay + ((by - ay) * i) / count], 2 * (i - 1));
  return { half, atMm, inner, toplineMm };
}

