import { distanceInSpace } from "#flatten/distance.ts";
import type { Point3 } from "#last/last.ts";
import { halves, type Half } from "#lines/feather.ts";
import { mostStandOffMm, throatFrom } from "#shell/check-rows.ts";
import type { Shell } from "#shell/shell.ts";
import { vertexMeans } from "#shell/strain.ts";
import { toplineOf } from "#shell/tension.ts";
import type { FeatherRing } from "./feather-ring.ts";
import { hollowUnder } from "./hollow.ts";
import type { Trouble } from "./lasted.ts";
import type { CutUpper, Fabric } from "./upper.ts";

export interface AtRest {
  readonly cut: Pick<CutUpper, "over" | "triangles" | "flat">;
  /** First vertex of the sheet at each vertex of the shell. */
  readonly sheetOf: Int32Array;
  /** x y z and height over the surface of each vertex of the sheet, mm. */
  readonly positions: Float64Array;
  readonly standOff: Float64Array;
  readonly most: Float64Array;
  readonly least: Float64Array;
}

/** A topline that has slid by some millimetres spans the hollow at another height, so a taut one may stand off by this much more than the drawn one's chord. */
const asTaut = { share: 1.15, mm: 0.5 } as const;

/** Where along a flank the topline stands off most. */
export interface LooseFlank extends Trouble {
  readonly half: Half;
  readonly fromBackMm: number;
}

/** Flanks that stand off by more than a maker lets pass; behind a flank lies the back seam, before it the throat's curve. */
export function looseFlanks({ cut: { over }, sheetOf, standOff, positions }: AtRest): readonly LooseFlank[] {
  return halves.flatMap((half) => {
    const ids = toplineOf(over, half), arc = arcOf(over, ids), hollow = hollowUnder(over, half);
    let top = -1;
    ids.forEach((v, k) => {
      if (arc[k]! > throatFrom * arc[arc.length - 1]!) return;
      const by = standOff[sheetOf[v]!]!;
      if (by > mostStandOffMm && (top < 0 || by > standOff[sheetOf[ids[top]!]!]!)) top = k;
    });
    if (top < 0) return [];
    const v = sheetOf[ids[top]!]!, by = standOff[v]!;
    return [{ kind: "stands off", at: pointAt(positions, v), by, half, fromBackMm: arc[top]!, ...(by <= asTaut.share * hollow[top]! + asTaut.mm && { spans: true as const }) } as const];
  });
}

/** The worst place where the upper is stretched beyond what its grain, or it altogether, bears; means round a vertex, since one sliver of a triangle says nothing. */
export function overStretched(rest: AtRest, { grainLimit, breakLimit }: Pick<Fabric, "grainLimit" | "breakLimit">): readonly Trouble[] {
  const means = meansOf(rest, rest.most);
  const worst = means.reduce((best, mean, v) => (mean > means[best]! ? v : best), 0);
  const by = means[worst]! - 1, at = pointAt(rest.positions, worst);
  if (by > breakLimit) return [{ kind: "tears", at, by }];
  return by > grainLimit ? [{ kind: "grain", at, by }] : [];
}

/** Leather that does not gather any more and lies in pleats along a part of the feather edge. */
export interface Pleats extends Trouble {
  /** How much leather the pleats take up along the edge, mm. */
  readonly takenMm: number;
  readonly where: "toe" | "seat";
}

/** Round toe and seat, so far to either side along the feather line, pleats are made, mm. */
const pleatedMm = { toe: 80, seat: 60 } as const;

/** `gatherLimit`: Green's strain down to which leather gathers without a pleat. */
export function pleatsAt(rest: AtRest, ring: FeatherRing, gatherLimit: number): readonly Pleats[] {
  const { sheetOf, positions, cut } = rest;
  const means = meansOf(rest, rest.least), bears = Math.sqrt(1 + 2 * gatherLimit), round = ring.at[ring.at.length - 1]!;
  return (["toe", "seat"] as const).flatMap((where) => {
    let takenMm = 0, worst = -1;
    for (let k = 0; k + 1 < ring.ids.length; k++) {
      const middle = (ring.at[k]! + ring.at[k + 1]!) / 2;
      const from = where === "toe" ? Math.abs(middle - ring.at[ring.toe]!) : Math.min(middle, round - middle);
      if (from > pleatedMm[where]) continue;
      const a = sheetOf[ring.ids[k]!]!, b = sheetOf[ring.ids[k + 1]!]!;
      const flatMm = Math.sqrt((cut.flat[2 * a]! - cut.flat[2 * b]!) ** 2 + (cut.flat[2 * a + 1]! - cut.flat[2 * b + 1]!) ** 2);
      takenMm += Math.max(0, bears * flatMm - distanceInSpace(positions, a, b));
      if (worst < 0 || means[a]! < means[worst]!) worst = a;
    }
    return worst >= 0 && takenMm > 0 ? [{ kind: "pleats", at: pointAt(positions, worst), by: 1 - means[worst]!, takenMm, where } as const] : [];
  });
}

const meansOf = ({ cut, positions }: AtRest, perTriangle: Float64Array): Float64Array => vertexMeans({ positions, triangles: cut.triangles }, perTriangle);
const pointAt = (p: Float64Array, v: number): Point3 => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!];

function arcOf({ mesh: { positions } }: Shell, ids: Uint32Array): Float64Array {
  const arc = new Float64Array(ids.length);
  for (let k = 1; k < arc.length; k++) arc[k] = arc[k - 1]! + distanceInSpace(positions, ids[k - 1]!, ids[k]!);
  return arc;
}
