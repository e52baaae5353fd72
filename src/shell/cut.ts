import { must } from "#base/bug.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { SurfaceCurve } from "#last/last.ts";
import { curveLength, pointOn, upTo } from "#last/surface-curve.ts";
import type { DrawingBoard, DrawnLines } from "#lines/draw.ts";
import { flatOn, type DoubleCurve, type Forme } from "#lines/forme.ts";
import { fillOutline } from "#plane/fill.ts";
import { area, signedArea } from "#plane/measure.ts";
import { movedLike } from "#plane/moved-mesh.ts";
import type { Shell, ShellEdges } from "./shell.ts";

/** How fine the shell is cut: enough for a tenth of a millimetre along the outline. */
export const fineTriangles = 12_000;

/** A shell as it was cut, and what another one may be cut like it from. */
export interface CutShell extends Shell {
  /** Where its vertices lie on the drawing plane: x0 y0 … */
  readonly plane: Float64Array;
  /** The fineness that was asked for. */
  readonly triangles: number;
}

/**
 * Cuts the upper's surface off the last exactly along feather line, topline and back: those lines are edges of the new mesh, with
 * points taken from the lines themselves. The inside is filled with even triangles on the drawing plane and lifted on to the last.
 *
 * `like` is a shell cut along nearly the same lines, as while one of them is dragged: its triangles are kept and only their corners
 * moved, as long as they stay well shaped. That is much quicker, and what was made for the former triangles can be used again.
 */
export function cutShell({ last, forme }: DrawingBoard, { topline, lines }: DrawnLines, triangles = fineTriangles, like?: CutShell): CutShell {
  const spacing = Math.sqrt((planeArea(forme, topline) * 4) / (Math.sqrt(3) * triangles));
  const kept = like?.triangles === triangles ? like.edges : undefined;
  const rim = new Rim(spacing);
  const backCurve = upTo(last.backCurve, lines.settings.backHeightMm);
  const centreCurve = upTo(last.centreRidge, lines.settings.throatDepthMm);
  // One way round: seat → toe over the inside, toe → seat over the outside, up the outer bank, along the topline, down the inner bank.
  const featherMedial = rim.edge(forme.feather.medial, forme.feather.medial, { like: kept?.featherMedial });
  const featherLateral = rim.edge(forme.feather.lateral, forme.feather.lateral, { backward: true, like: kept?.featherLateral });
  const backLateral = rim.edge(backCurve, forme.back.lateral, { like: kept?.backLateral });
  const toplineLateral = rim.edge(topline.lateral, topline.lateral, { like: kept?.toplineLateral });
  const toplineMedial = rim.edge(topline.medial, topline.medial, { backward: true, like: kept?.toplineMedial });
  const backMedial = rim.close(backCurve, forme.back.medial, kept?.backMedial);
  const toe = featherMedial[featherMedial.length - 1]!, throat = toplineLateral[toplineLateral.length - 1]!;
  const centre = rim.inner(centreCurve, forme.centre, kept?.centre);

  const turned = signedArea({ xy: Float64Array.from(rim.flat) }) < 0;
  const n = rim.flat.length / 2;
  const place = (i: number) => (turned ? (n - i) % n : i);
  const outline = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) outline.set([rim.flat[2 * i]!, rim.flat[2 * i + 1]!], 2 * place(i));
  const filled =
    (kept && movedLike({ xy: like!.plane, triangles: like!.mesh.triangles }, Float64Array.from([...outline, ...centre.flat]))) ??
    fillOutline({ outline, lines: [{ xy: Float64Array.from(centre.flat), startsAt: place(toe), endsAt: place(throat) }], spacing });

  const positions = new Float64Array((filled.xy.length / 2) * 3);
  for (let i = 0; i < n; i++) positions.set(rim.points.slice(3 * i, 3 * i + 3), 3 * place(i));
  positions.set(centre.points, 3 * n);
  const given = n + centre.points.length / 3;
  for (let v = given; v < filled.xy.length / 2; v++) {
    const p = forme.toLast([filled.xy[2 * v]!, filled.xy[2 * v + 1]!]);
    if (!p) throw new Refusal(finding("topline-crosses-feather", {}));
    for (let d = 0; d < 3; d++) positions[3 * v + d] = p[d]!;
  }
  const named = (ids: readonly number[], backward = false) => Uint32Array.from((backward ? [...ids].reverse() : ids).map(place));
  const edges: ShellEdges = {
    featherMedial: named(featherMedial),
    featherLateral: named(featherLateral, true),
    backLateral: named(backLateral),
    backMedial: named(backMedial, true),
    toplineLateral: named(toplineLateral),
    toplineMedial: named(toplineMedial, true),
    centre: Uint32Array.from([place(toe), ...centre.points.filter((_, i) => i % 3 === 0).map((_, i) => n + i), place(throat)]),
  };
  return { mesh: { positions, triangles: filled.triangles }, edges, plane: filled.xy, triangles };
}

/** Area of the shell on the drawing plane, which is near enough to that on the last to choose the edge length. */
function planeArea(forme: Forme, topline: DrawnLines["topline"]): number {
  const backward = (xy: Float64Array) => Array.from({ length: xy.length / 2 }, (_, i) => xy.length - 2 - 2 * i).flatMap((i) => [xy[i]!, xy[i + 1]!]);
  return area({ xy: Float64Array.from([...forme.feather.medial.flat, ...backward(forme.feather.lateral.flat), ...topline.lateral.flat, ...backward(topline.medial.flat)]) });
}

/** Gathers the rim of the shell edge by edge; each edge starts where the last one ended. */
class Rim {
  readonly points: number[] = [];
  readonly flat: number[] = [];
  readonly #spacing: number;
  constructor(spacing: number) {
    this.#spacing = spacing;
  }

  /** Adds an edge sampled evenly on the last, into as many parts as `like` has; `plane` tells where the same lengths lie on the drawing plane. Returns its vertex ids, both ends included. */
  edge(onLast: SurfaceCurve, plane: DoubleCurve, { backward = false, like }: { readonly backward?: boolean; readonly like?: Uint32Array | undefined } = {}): number[] {
    const ids: number[] = [];
    const total = curveLength(onLast);
    const count = this.#parts(total, like);
    for (let k = 0; k <= count; k++) {
      if (k === 0 && this.points.length > 0) {
        ids.push(this.points.length / 3 - 1);
        continue;
      }
      ids.push(this.#put(onLast, plane, (total * (backward ? count - k : k)) / count));
    }
    return ids;
  }

  /** The last edge, walked backward, ends at the very first point of the rim. */
  close(onLast: SurfaceCurve, plane: DoubleCurve, like?: Uint32Array): number[] {
    const ids = this.edge(onLast, plane, { backward: true, like });
    must(ids[ids.length - 1] === this.points.length / 3 - 1, "the rim's last point is not its last vertex");
    this.points.length -= 3;
    this.flat.length -= 2;
    ids[ids.length - 1] = 0;
    return ids;
  }

  /** Points inside the shell along a line between two rim points, ends left out; not added to the rim. */
  inner(onLast: SurfaceCurve, plane: DoubleCurve, like?: Uint32Array): { readonly points: number[]; readonly flat: number[] } {
    const points: number[] = [], flat: number[] = [];
    const total = curveLength(onLast);
    const count = this.#parts(total, like);
    for (let k = 1; k < count; k++) {
      const at = (total * k) / count;
      points.push(...pointOn(onLast, at));
      flat.push(...flatOn(plane, at));
    }
    return { points, flat };
  }

  /** Into how many parts an edge is divided: as many as the one it is cut like, else by its length. */
  #parts(total: number, like: Uint32Array | undefined): number {
    return like ? like.length - 1 : Math.max(2, Math.round(total / this.#spacing));
  }

  #put(onLast: SurfaceCurve, plane: DoubleCurve, at: number): number {
    this.points.push(...pointOn(onLast, at));
    this.flat.push(...flatOn(plane, at));
    return this.points.length / 3 - 1;
  }
}
