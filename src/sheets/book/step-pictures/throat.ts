import { arcLengths, directionAt, nearestOn, pointAt } from "#plane/along.ts";
import type { Polyline } from "#plane/outline.ts";
import type { SheetInput } from "../../input.ts";
import { upperPieces } from "../cover.ts";
import { plain } from "../numbers.ts";
import { edgeAlong } from "./bands.ts";
import { linesOf, thinned } from "./laid-pieces.ts";
import { scaled, scaledPoint } from "./ply.ts";
import type { Picture } from "./sketch-lines.ts";
import { heavyMm, lightMm, plainMm, Sketch, type Xy } from "./sketch.ts";

/** Snips are so far apart, and end so far before the fold, mm: as the step tells. */
const snipEveryMm = 3.5, snipClearMm = 1;
/** So much of the fold line to either side of the throat is shown, mm; drawn over true size. */
const reachMm = 30, scale = 1 / 2;
/** Where the edge must grow by so much of its length, or less, it is hollow enough to be snipped. */
const hollow = 0.02;

/** The fold at the throat as it lies flat: where the edge is shorter than the line it comes to lie on, it is snipped. */
export function throatSnips({ pieces, pieceSettings: s }: SheetInput): Picture | undefined {
  const piece = upperPieces(pieces).find((p) => p.marks.some((m) => m.kind === "notch" && m.name === "throat") && linesOf(p, "fold").length > 0);
  const throat = piece?.marks.find((m) => m.kind === "notch" && m.name === "throat");
  const fold = piece && linesOf(piece, "fold", "fold line of the topline")[0]?.line;
  if (!piece || throat?.kind !== "notch" || !fold) return undefined;
  const arc = arcLengths(fold), middle = nearestOn(fold, arc, ...throat.at).s, from = Math.max(0, middle - reachMm), to = Math.min(arc[arc.length - 1]!, middle + reachMm);
  const edge: Xy[] = [], line: Xy[] = [], sketch = new Sketch();
  const outward = wayOut(fold, arc, middle, throat.at);
  const out = (at: number): { readonly p: Xy; readonly n: Xy; readonly mm: number } => {
    const p = pointAt(fold, arc, at), [ux, uy] = directionAt(fold, arc, at), n: Xy = [outward * uy, -outward * ux];
    return { p, n, mm: edgeAlong(piece.outline, p, n) };
  };
  const snips: (readonly [Xy, Xy])[] = [];
  for (let at = from; at <= to; at += snipEveryMm) {
    const here = out(at);
    if (here.mm > 3 * s.toplineFoldMm) continue;
    const far: Xy = [here.p[0] + here.mm * here.n[0], here.p[1] + here.mm * here.n[1]];
    line.push(here.p);
    edge.push(far);
    if (edge.length > 1 && dist(edge) < (1 - hollow) * dist(line)) snips.push([far, [here.p[0] + snipClearMm * here.n[0], here.p[1] + snipClearMm * here.n[1]]]);
  }
  const flat = (all: readonly Xy[]): number[] => scaled(all.flat(), scale);
  sketch.stroke(flat(thinned(line.flat())), plainMm, { dashMm: [1.6, 0.8], name: "picture-fold-topline-line" });
  sketch.stroke(flat(edge), plainMm);
  for (const [a, b] of snips) sketch.stroke(flat([a, b]), heavyMm / 1.5);
  const inside = out(middle), aside = (mm: number): Xy => scaledPoint([inside.p[0] - mm * inside.n[0], inside.p[1] - mm * inside.n[1]], scale);
  sketch.key("fold line: nothing is snipped through it", scaledPoint(inside.p, scale), [-inside.n[0], -inside.n[1]]);
  const last = snips[snips.length - 1];
  if (last) sketch.key(`snips every ${plain(snipEveryMm)} mm, ending ${plain(snipClearMm)} mm before the line`, scaledPoint(last[0], scale), [inside.n[0], inside.n[1]]);
  // The front centre, ahead of the throat.
  sketch.line(aside(9), aside(3), lightMm, { dashMm: [2, 0.6, 0.4, 0.6] });
  return { title: `The throat lying flat, 1 : ${1 / scale}`, sketch };
}

/** The side of the fold line on which the edge lies: that of the throat's notch. */
function wayOut(fold: Polyline, arc: Float64Array, at: number, [tx, ty]: Xy): 1 | -1 {
  const [px, py] = pointAt(fold, arc, at), [ux, uy] = directionAt(fold, arc, at);
  return uy * (tx - px) - ux * (ty - py) >= 0 ? 1 : -1;
}

/** The length of the last two points of a line. */
const dist = (line: readonly Xy[]): number => {
  const [a, b] = line.slice(-2) as [Xy, Xy];
  return Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);
};
