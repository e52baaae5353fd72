import { finding, type Finding } from "#base/findings.ts";
import type { Point3 } from "#last/last.ts";
import { halves, type Half } from "#lines/feather.ts";
import { arcLengths, directionAt, pointAt } from "#plane/along.ts";
import { mirrorPolyline } from "#plane/mirror.ts";
import type { Polyline } from "#plane/outline.ts";
import { edgeCurve, edgeEnd, onEdge, type LaidShell } from "./relief-sheet.ts";

/** One half's edges on the flat, mm: topline from the back point to the throat, back from the seat up to the back point, feather from the seat to the toe point. */
export interface HalfEdges {
  readonly topline: Polyline;
  readonly back: Polyline;
  readonly feather: Polyline;
}

/** A place of the folded halves' mean curve where they are compared. */
export interface HalfStation {
  /** Share of the curve's length from its first point. */
  readonly share: number;
  /** Running length to the curve's last point (throat, back point or toe), mm. */
  readonly toEndMm: number;
  /** Medial less lateral, across the mean curve, mm: + where the medial half's line lies farther in towards the centre line. */
  readonly differenceMm: number;
  /** How far the farther of the two lies from the mean, mm. */
  readonly offMeanMm: number;
}

/**
 * One form for both halves: topline and back are the mean, the feather edges stay each its own. All lie on +y (lateral ones folded
 * over). `src/pieces` may take {@link unfolded} of it in place of the flat shell's own edges.
 */
export interface MeanForm {
  readonly topline: Polyline;
  readonly back: Polyline;
  readonly featherMedial: Polyline;
  readonly featherLateral: Polyline;
}

export interface Halves {
  readonly topline: readonly HalfStation[];
  readonly back: readonly HalfStation[];
  readonly feather: readonly HalfStation[];
  /** The topline's station where the halves differ most, and by how much. */
  readonly mostDifferent: HalfStation;
  readonly mostDifferentMm: number;
  readonly keepSeparate: boolean;
  readonly mean: MeanForm;
  /** What there is to say where the halves are to share the mean form. */
  readonly findings: readonly Finding[];
}

/** A half may lie so far off the mean at the topline before both are better kept separate, mm (handbook of hand pattern-making, common practice). */
export const offMeanLimitMm = 3;
const stationMm = 10;

/** Both halves of a shell in the flat shell's frame, folded on the centre line so that each lies on +y. Points are the shell's own vertices. */
export function foldedHalves(laid: LaidShell): Readonly<Record<Half, HalfEdges>> {
  const e = laid.shell.edges;
  const line = (ids: Uint32Array): Polyline => ({ xy: edgeCurve(laid, ids).uv });
  const medial = { topline: line(e.toplineMedial), back: line(e.backMedial), feather: line(e.featherMedial) };
  const lateral = { topline: line(e.toplineLateral), back: line(e.backLateral), feather: line(e.featherLateral) };
  return { medial: onPlusY(medial), lateral: onPlusY(lateral) };
}

const mirrored = ({ topline, back, feather }: HalfEdges): HalfEdges => ({ topline: mirrorPolyline(topline), back: mirrorPolyline(back), feather: mirrorPolyline(feather) });
const onPlusY = (edges: HalfEdges): HalfEdges => (edges.feather.xy[1]! < 0 ? mirrored(edges) : edges);

/** The mean of two folded halves: half-distance between places at equal shares of the length, seen from the medial half's points. */
export function meanForm({ medial, lateral }: Readonly<Record<Half, HalfEdges>>): MeanForm {
  return { topline: meanLine(medial.topline, lateral.topline), back: meanLine(medial.back, lateral.back), featherMedial: medial.feather, featherLateral: lateral.feather };
}

/**
 * The mean form as two halves that lie as on a right shoe's flat pattern: medial on +y, lateral on −y, topline and back each other's
 * exact mirror image. In `src/pieces/net-upper.ts` these take the place of `raw(edges.toplineMedial)` and so on; each feather line still
 * ends at its own half's seat point, which lies off the mean's by half of what the back edges differ there.
 */
export function unfolded({ topline, back, featherMedial, featherLateral }: MeanForm): Readonly<Record<Half, HalfEdges>> {
  return { medial: { topline, back, feather: featherMedial }, lateral: mirrored({ topline, back, feather: featherLateral }) };
}

/** Folds a flat shell on its centre line and compares its halves. Method and limits: docs/method/relief.md. */
export function halvesOf(laid: LaidShell): Halves {
  const folded = foldedHalves(laid);
  const mean = meanForm(folded);
  const topline = stationsOn(mean.topline, folded.medial.topline, folded.lateral.topline);
  const mostDifferent = topline.reduce((most, s) => (Math.abs(s.differenceMm) > Math.abs(most.differenceMm) ? s : most));
  const farthest = topline.reduce((most, s) => (s.offMeanMm > most.offMeanMm ? s : most));
  const keepSeparate = farthest.offMeanMm > offMeanLimitMm;
  const code = { offMeanMm: farthest.offMeanMm, fromThroatMm: farthest.toEndMm };
  const at = placeOn(laid, farthest.share);
  const back = stationsOn(mean.back, folded.medial.back, folded.lateral.back);
  const offMeanMm = [...topline, ...back].reduce((most, s) => Math.max(most, s.offMeanMm), 0);
  return {
    topline,
    back,
    feather: stationsOn(meanLine(folded.medial.feather, folded.lateral.feather), folded.medial.feather, folded.lateral.feather),
    mostDifferent,
    mostDifferentMm: Math.abs(mostDifferent.differenceMm),
    keepSeparate,
    mean,
    findings: [
      keepSeparate ? finding("halves-differ", { ...code, limitMm: offMeanLimitMm, inward: halves[farthest.differenceMm > 0 ? 0 : 1]! }, at) : finding("halves-alike", code, at),
      finding("tried-on-own-halves", { offMeanMm }),
    ],
  };
}

function placeOn(laid: LaidShell, share: number): Point3 {
  const curve = edgeCurve(laid, laid.shell.edges.toplineMedial);
  return onEdge(curve, share * edgeEnd(curve)).point;
}

function meanLine(a: Polyline, b: Polyline): Polyline {
  const arcA = arcLengths(a), arcB = arcLengths(b);
  const n = arcA.length;
  const xy = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const first = i === 0, last = i === n - 1;
    const other = first ? b.xy.subarray(0, 2) : last ? b.xy.subarray(b.xy.length - 2) : pointAt(b, arcB, (arcA[i]! / arcA[n - 1]!) * arcB[arcB.length - 1]!);
    xy[2 * i] = (a.xy[2 * i]! + other[0]!) / 2;
    xy[2 * i + 1] = (a.xy[2 * i + 1]! + other[1]!) / 2;
  }
  return { xy };
}

function stationsOn(mean: Polyline, medial: Polyline, lateral: Polyline): HalfStation[] {
  const arc = arcLengths(mean), total = arc[arc.length - 1]!;
  const count = Math.max(4, Math.round(total / stationMm));
  return Array.from({ length: count + 1 }, (_, k) => {
    const s = (total * k) / count;
    const p = pointAt(mean, arc, s), [dx, dy] = directionAt(mean, arc, s);
    // On +y, going forward, the centre line lies to the right.
    const inward = (line: Polyline): number => alongNormal(line, p, [dy, -dx], k / count);
    const a = inward(medial), b = inward(lateral);
    return { share: k / count, toEndMm: total - s, differenceMm: a - b, offMeanMm: Math.max(Math.abs(a), Math.abs(b)) };
  });
}

/** How far along a unit normal from p a line is met, nearest first; where it is not met, as at its ends, the place of equal share counts. */
function alongNormal(line: Polyline, p: readonly [number, number], [nx, ny]: readonly [number, number], share: number): number {
  const { xy } = line;
  let best = Infinity;
  for (let i = 0; i + 3 < xy.length; i += 2) {
    const ax = xy[i]! - p[0], ay = xy[i + 1]! - p[1], bx = xy[i + 2]! - p[0], by = xy[i + 3]! - p[1];
    const acrossA = ax * ny - ay * nx, acrossB = bx * ny - by * nx;
    if (acrossA * acrossB > 0 || acrossA === acrossB) continue;
    const t = acrossA / (acrossA - acrossB);
    const along = (ax + t * (bx - ax)) * nx + (ay + t * (by - ay)) * ny;
    if (Math.abs(along) < Math.abs(best)) best = along;
  }
  if (best < Infinity) return best;
  const arc = arcLengths(line);
  const q = pointAt(line, arc, share * arc[arc.length - 1]!);
  return (q[0] - p[0]) * nx + (q[1] - p[1]) * ny;
}
