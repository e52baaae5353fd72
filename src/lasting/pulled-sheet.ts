import type { Ground } from "#wrap/ground.ts";
import type { SheetInput } from "#wrap/sheet.ts";
import { toplineOf } from "#shell/tension.ts";
import { halves } from "#lines/feather.ts";
import type { FeatherRing } from "./feather-ring.ts";
import { LeatherSheet } from "./forward/leather-sheet.ts";
import { sheetVertices, type CutUpper, type Fabric } from "./upper.ts";

export interface SheetOptions {
  /** Coulomb friction on the last, and what light hands press toward it, N/mm². */
  readonly friction: number;
  readonly press: number;
  /** Whether the centre line is kept in the centre plane. */
  readonly guided?: boolean;
}

/**
 * How firmly the last resists being entered, N/mm³: under 0.05 N/mm², as round the toe, leather goes in by 0.01 mm. A harder one takes twice
 * the steps and moves no end by more than 0.05 mm.
 */
const lastStiffness = 5;

/** A cut upper on its last: the mechanics' sheet, and ways to speak of it by the feather ring and by the shell. */
export class PulledSheet {
  readonly sheet: LeatherSheet;
  readonly cut: CutUpper;
  readonly ring: FeatherRing;
  /** First vertex of the sheet at each vertex of the shell. */
  readonly sheetOf: Int32Array;

  /** `start`: x y z of each vertex of the sheet, mm. */
  constructor(cut: CutUpper, fabric: Fabric, ring: FeatherRing, ground: Ground, start: Float64Array, { friction, press, guided = false }: SheetOptions) {
    this.cut = cut;
    this.ring = ring;
    this.sheetOf = sheetVertices(cut);
    const centre = Uint32Array.from(cut.over.edges.centre, (v) => this.sheetOf[v]!);
    const input: SheetInput = {
      triangles: cut.triangles,
      flat: cut.flat,
      taped: cut.sewn,
      ...(guided && { guided: { vertices: centre, across: Float64Array.from({ length: 3 * centre.length }, (_, k) => (k % 3 === 1 ? 1 : 0)) } }),
    };
    const bars = fabric.tapeN > 0 ? { bars: { pairs: toplinePairs(cut, this.sheetOf), stiffness: fabric.tapeN } } : {};
    this.sheet = new LeatherSheet({ sheet: input, law: fabric.law, bend: fabric.bend, ...bars, form: ground, friction, press, formStiffness: lastStiffness }, start);
  }

  /** Pulls at vertices of the ring, N outward each. */
  pull(places: Uint32Array, pullN: ArrayLike<number>): void {
    const { outward } = this.ring, { load } = this.sheet;
    places.forEach((k, i) => {
      for (let d = 0; d < 3; d++) load[3 * this.at(k) + d] = pullN[i]! * outward[3 * k + d]!;
    });
  }

  tack(places: Uint32Array): void {
    this.sheet.tack(Array.from(places, (k) => this.at(k)));
  }

  /** Vertex of the sheet at a place of the ring. */
  at(k: number): number {
    return this.sheetOf[this.ring.ids[k]!]!;
  }

  /** What the tacks hold at each place of the ring, N outward; where seams meet there, what holds all of it. */
  heldN(): Float64Array {
    const forces = this.sheet.tackForces(), { outward, ids } = this.ring;
    const sum = new Float64Array(this.cut.over.mesh.positions.length);
    this.cut.source.forEach((v, s) => {
      for (let d = 0; d < 3; d++) sum[3 * v + d]! += forces[3 * s + d]!;
    });
    return Float64Array.from(ids, (v, k) => sum[3 * v]! * outward[3 * k]! + sum[3 * v + 1]! * outward[3 * k + 1]! + sum[3 * v + 2]! * outward[3 * k + 2]!);
  }

  /** Places of the shell's vertices, x y z mm. */
  shellPositions(): Float64Array {
    const positions = this.sheet.positions(), out = new Float64Array(3 * this.sheetOf.length);
    this.sheetOf.forEach((s, v) => out.set(s < 0 ? this.cut.over.mesh.positions.subarray(3 * v, 3 * v + 3) : positions.subarray(3 * s, 3 * s + 3), 3 * v));
    return out;
  }
}

/** Where each vertex of the sheet would lie if the upper lay just where it should, x y z mm. */
export function startOf({ over, source }: CutUpper): Float64Array {
  const out = new Float64Array(3 * source.length);
  source.forEach((v, s) => out.set(over.mesh.positions.subarray(3 * v, 3 * v + 3), 3 * s));
  return out;
}

/**
 * Pieces of the topline between two vertices of one sheet, so that each keeps its own flat length. Where a seam meets the topline its edge
 * goes on in another sheet.
 */
function toplinePairs({ over, source, triangles }: CutUpper, sheetOf: Int32Array): Uint32Array {
  const along = new Set(halves.flatMap((half) => {
    const ids = toplineOf(over, half);
    return Array.from(ids.subarray(1), (v, k) => pairKey(ids[k]!, v, sheetOf.length));
  }));
  const pairs: number[] = [];
  for (let k = 0; k < triangles.length; k++) {
    const a = triangles[k]!, b = triangles[k % 3 === 2 ? k - 2 : k + 1]!;
    if (along.has(pairKey(source[a]!, source[b]!, sheetOf.length))) pairs.push(a, b);
  }
  return Uint32Array.from(pairs);
}

const pairKey = (v: number, w: number, many: number): number => Math.min(v, w) * many + Math.max(v, w);
