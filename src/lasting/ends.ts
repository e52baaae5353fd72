import { ClosestPoint } from "#mesh/closest.ts";
import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import { arcNearest, curveOf } from "#last/surface-curve.ts";
import { Arcs } from "#lines/arcs.ts";
import { halves, type Half } from "#lines/feather.ts";
import { heightMark, lowestMark } from "#lines/heights.ts";
import type { Lines } from "#lines/lines.ts";
import { toplineOf, type ByHalf } from "#shell/tension.ts";
import type { LastGround } from "./ground-of.ts";
import type { Ends } from "./lasted.ts";
import { OwnSurface } from "./own-surface.ts";
import type { CutUpper } from "./upper.ts";

/** What the lines ask for. */
export function askedEnds({ settings, quarterHeights, lowestMedial, lowestLateral }: Lines): Ends {
  const side = (half: Half): readonly [number, number, number] => quarterHeights[half].map(({ heightMm }) => heightMm) as unknown as readonly [number, number, number];
  return {
    throatDepthMm: settings.throatDepthMm,
    backHeightMm: settings.backHeightMm,
    sideMm: { medial: side("medial"), lateral: side("lateral") },
    lowestMm: { medial: lowestMedial.heightMm, lateral: lowestLateral.heightMm },
  };
}

/** Where the topline ended, and how far the throat stands off the centre line: above 0 toward +y, mm. */
export interface MeasuredEnds {
  readonly ends: Ends;
  readonly asideMm: number;
}

/** A height mark on the last: on a half at `x` along it, or at the back; and how far above it a draft stops, mm. */
export type Mark = { readonly stopAboveMm: number } & ({ readonly half: Half; readonly x: number } | { readonly half?: undefined });

type Drawn = Pick<Lines, "toplineMedial" | "toplineLateral" | "quarterHeights">;

/**
 * Measures the lasted topline as a tape does on the last itself: throat along the centre ridge from the toe point, back up the back curve,
 * sides up from the same places of the feather line at which the drawn line was measured. The drawn line is carried along by the shell's
 * vertices on it, so an upper that lies just on the drawn line measures just what was asked, however coarse its triangles are.
 */
export class EndsGauge {
  readonly #board: { readonly last: Last; readonly arcs: Arcs };
  readonly #lines: Drawn;
  readonly #onLast: Float64Array;
  readonly #own: OwnSurface;
  readonly #last: ClosestPoint;
  /** Vertices of the shell on each half of the topline, back → throat, and their running lengths on the drawn line. */
  readonly #rows: ByHalf<{ readonly ids: Uint32Array; readonly at: Float64Array }>;

  constructor(last: Last, lines: Drawn, { onLast }: Pick<CutUpper, "onLast">, ground: LastGround) {
    this.#board = { last, arcs: new Arcs(last) };
    this.#lines = lines;
    this.#onLast = onLast.mesh.positions;
    this.#own = new OwnSurface(ground);
    this.#last = new ClosestPoint(last.mesh);
    const row = (half: Half) => {
      const ids = toplineOf(onLast, half), curve = drawnOf(lines, half);
      return { ids, at: Float64Array.from(ids, (v) => arcNearest(curve, pointAt(this.#onLast, v))) };
    };
    this.#rows = { medial: row("medial"), lateral: row("lateral") };
  }

  /** `positions`: x y z of each vertex of the shell where the upper lies, mm. */
  measure(positions: Float64Array): MeasuredEnds {
    const { last } = this.#board;
    const carried = { medial: this.#carried("medial", positions), lateral: this.#carried("lateral", positions) };
    const seatX = last.landmarks.seatPoint[0];
    const side = (half: Half): readonly [number, number, number] =>
      this.#lines.quarterHeights[half].map(({ foot }) => heightMark(this.#board, half, carried[half], foot[0] - seatX).heightMm) as unknown as readonly [number, number, number];
    const throat = throatOf(carried), backs = halves.map((half) => pointAt(carried[half].points, 0));
    return {
      ends: {
        throatDepthMm: arcNearest(last.centreRidge, throat.at),
        backHeightMm: arcNearest(last.backCurve, middle(backs[0]!, backs[1]!)),
        sideMm: { medial: side("medial"), lateral: side("lateral") },
        lowestMm: { medial: lowestMark(this.#board, "medial", carried.medial).heightMm, lateral: lowestMark(this.#board, "lateral", carried.lateral).heightMm },
      },
      asideMm: throat.asideMm,
    };
  }

  /**
   * How far the topline stands above the drawn line, mm: at the back, or on a half at `x` along the last, by a tape laid up from the feather
   * line there. `positions` as in {@link measure}.
   */
  overMark(mark: Mark, positions: Float64Array): number {
    const { last } = this.#board;
    if (mark.half === undefined) {
      const backs = halves.map((half) => pointAt(this.#carried(half, positions).points, 0)), drawn = halves.map((half) => pointAt(drawnOf(this.#lines, half).points, 0));
      return arcNearest(last.backCurve, middle(backs[0]!, backs[1]!)) - arcNearest(last.backCurve, middle(drawn[0]!, drawn[1]!));
    }
    const behindSeat = mark.x - last.landmarks.seatPoint[0];
    return heightMark(this.#board, mark.half, this.#carried(mark.half, positions), behindSeat).heightMm - heightMark(this.#board, mark.half, drawnOf(this.#lines, mark.half), behindSeat).heightMm;
  }

  /** The drawn line moved on the last as its vertices were, between two vertices in proportion. */
  #carried(half: Half, positions: Float64Array): SurfaceCurve {
    const { ids, at } = this.#rows[half], { points, arc } = drawnOf(this.#lines, half);
    const moves = Array.from(ids, (v) => less(this.#own.under(pointAt(positions, v)), pointAt(this.#onLast, v)));
    const out = new Float64Array(points.length), q = new Float64Array(3);
    for (let i = 0, k = 0, near = -1; i < arc.length; i++) {
      while (k + 2 < at.length && at[k + 1]! < arc[i]!) k++;
      const t = Math.min(1, Math.max(0, (arc[i]! - at[k]!) / (at[k + 1]! - at[k]!))), [a, b] = [moves[k]!, moves[k + 1]!];
      const moved = (d: 0 | 1 | 2): number => points[3 * i + d]! + a[d] + t * (b[d] - a[d]);
      near = this.#last.findInto(q, moved(0), moved(1), moved(2), near);
      out.set(q, 3 * i);
    }
    return curveOf(out);
  }
}

const drawnOf = ({ toplineMedial, toplineLateral }: Drawn, half: Half): SurfaceCurve => (half === "medial" ? toplineMedial : toplineLateral);
const pointAt = (p: Float64Array, v: number): Point3 => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!];
const less = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const middle = (a: Point3, b: Point3): Point3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];

/** Where the topline crosses the centre plane near the throat, and where the throat's own place has come to. */
function throatOf(topline: ByHalf<SurfaceCurve>): { readonly at: Point3; readonly asideMm: number } {
  const own = pointAt(topline.medial.points, topline.medial.arc.length - 1);
  let at = own, least = Infinity;
  for (const half of halves) {
    const { points: p, arc } = topline[half];
    for (let i = arc.length - 1; i > 0 && arc[arc.length - 1]! - arc[i]! < nearThroatMm; i--) {
      const [a, b] = [pointAt(p, i), pointAt(p, i - 1)];
      if (a[1] * b[1] > 0) continue;
      const t = a[1] === b[1] ? 0 : a[1] / (a[1] - b[1]), far = arc[arc.length - 1]! - arc[i]!;
      if (far < least) [at, least] = [[a[0] + t * (b[0] - a[0]), 0, a[2] + t * (b[2] - a[2])], far];
      break;
    }
  }
  return { at, asideMm: own[1] };
}
/** Farther from the throat along the topline no centre is looked for, mm. */
const nearThroatMm = 30;
