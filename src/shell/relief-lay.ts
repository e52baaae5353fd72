import { must } from "#base/bug.ts";
import { Flattener } from "#flatten/flatten.ts";
import { triangleArea } from "#mesh/area.ts";
import { triangleCount, vertexCount, type Mesh } from "#mesh/mesh.ts";
import { neighbours, nextCorner } from "#mesh/neighbours.ts";
import { partOfTriangle } from "#mesh/topology.ts";
import { edgeWeightPerMm } from "./lay-flat.ts";
import type { LaidShell } from "./relief-sheet.ts";
import type { Shell, StrainSummary } from "./shell.ts";
import { halfEdgesOn, slit } from "./slit.ts";
import { summarise } from "./strain.ts";

/** A shell laid flat with slits in it. Flat places are given by triangle corner (u v, three a triangle), since the banks of a slit part. */
export interface SlitLay {
  readonly corners: Float64Array;
  /** Area mean of σ₁² + σ₂² + σ₁⁻² + σ₂⁻², 4 for no stretch at all, and with it what keeps topline, back and centre to their length. */
  readonly energy: number;
  readonly total: number;
  readonly stretchMax: Float64Array;
  readonly stretchMin: Float64Array;
  /** Worked out when it is asked for: trials never ask. */
  readonly strain: StrainSummary;
  /** How many pieces the cuts make. */
  readonly parts: number;
}

/**
 * How much more firmly the held edges keep their length than when the pattern is laid flat. There the topline is asked for more than it
 * gives; here it is asked for what it came to, and must not creep back. At 20 it is out by less than 0.1 mm.
 */
const moreFirmly = 20;

/** Lays one shell flat again and again with other slits. */
export class SlitTable {
  readonly mesh: Mesh;
  readonly #twin: Int32Array;
  /** Half-edges that are held to a length, and the lengths, mm. */
  readonly #held: ReadonlyMap<number, number>;
  readonly #areas: Float64Array;
  readonly #area: number;

  /** `held`: lengths that half-edges are to have on the flat, mm. */
  constructor(mesh: Mesh, held: ReadonlyMap<number, number> = new Map()) {
    this.mesh = mesh;
    this.#twin = neighbours(mesh).twin;
    this.#held = held;
    this.#areas = Float64Array.from({ length: triangleCount(mesh) }, (_, t) => triangleArea(mesh, t));
    this.#area = this.#areas.reduce((sum, a) => sum + a, 0);
  }

  /**
   * The table of a shell whose topline, back and centre are held to the lengths they have where it lies flat, so that without slits it
   * comes to lie like that. `mesh` are the same triangles where they hang together otherwise, as where the back is closed.
   */
  static of({ shell, uv }: LaidShell, mesh = shell.mesh): SlitTable {
    const { mesh: laid } = shell;
    return new SlitTable(mesh, new Map(trueHalfEdges(shell).map((h) => [h, apart(uv, 2, laid.triangles[h]!, laid.triangles[nextCorner(h)]!)])));
  }

  /** The same with those edges as long as where they lie: the card before its topline is drawn shorter. */
  static undrawn({ shell }: Pick<LaidShell, "shell">): SlitTable {
    const { positions, triangles } = shell.mesh;
    return new SlitTable(shell.mesh, new Map(trueHalfEdges(shell).map((h) => [h, apart(positions, 3, triangles[h]!, triangles[nextCorner(h)]!)])));
  }

  /** Cuts along the paths (vertices of the whole mesh) and lays every part flat. `start` are the corners of a lay with no other slits than these. */
  lay(paths: readonly ArrayLike<number>[], start?: Float64Array, toleranceMm = 0.01): SlitLay {
    const { mesh } = slit(this.mesh, paths, this.#twin);
    const { part, count } = partOfTriangle(mesh);
    const corners = new Float64Array(2 * mesh.triangles.length);
    const stretchMax = new Float64Array(part.length), stretchMin = new Float64Array(part.length);
    let energy = 0, total = 0;
    for (let p = 0; p < count; p++) {
      const piece = this.#piece(mesh, part, p);
      const laid = new Flattener(vertexCount(piece.mesh), piece.mesh.triangles, { edges: piece.edges }).run(piece.mesh.positions, { mayLap: true, toleranceMm, ...(start && { start: piece.startFrom(start) }) });
      energy += piece.share * laid.energy;
      total += piece.share * laid.steps.at(-1)!.energy;
      piece.faces.forEach((t, k) => {
        stretchMax[t] = laid.stretchMax[k]!;
        stretchMin[t] = laid.stretchMin[k]!;
        for (let c = 0; c < 3; c++) for (let d = 0; d < 2; d++) corners[2 * (3 * t + c) + d] = laid.uv[2 * piece.mesh.triangles[3 * k + c]! + d]!;
      });
    }
    return {
      corners,
      energy,
      total,
      stretchMax,
      stretchMin,
      get strain() {
        return summarise(mesh, stretchMax, stretchMin);
      },
      parts: count,
    };
  }

  /** One part of a cut mesh as a mesh of its own. */
  #piece(mesh: Mesh, part: Uint32Array, p: number) {
    const faces: number[] = [];
    let area = 0;
    for (let t = 0; t < part.length; t++)
      if (part[t] === p) {
        faces.push(t);
        area += this.#areas[t]!;
      }
    const share = area / this.#area;
    const place = new Int32Array(vertexCount(mesh)).fill(-1);
    const corner: number[] = [];
    const triangles = new Uint32Array(3 * faces.length);
    faces.forEach((t, k) => {
      for (let c = 0; c < 3; c++) {
        const v = mesh.triangles[3 * t + c]!;
        if (place[v] === -1) place[v] = corner.push(3 * t + c) - 1;
        triangles[3 * k + c] = place[v]!;
      }
    });
    const positions = new Float64Array(3 * corner.length);
    corner.forEach((h, v) => positions.set(mesh.positions.subarray(3 * mesh.triangles[h]!, 3 * mesh.triangles[h]! + 3), 3 * v));
    const startFrom = (corners: Float64Array) => Float64Array.from({ length: 2 * corner.length }, (_, i) => corners[2 * corner[i >> 1]! + (i & 1)]!);
    return { mesh: { positions, triangles } as Mesh, faces, share, startFrom, edges: this.#heldOf({ positions, triangles }, mesh, place, part, p, share) };
  }

  /** Held edges of a part. Weights are shared out by area, so that the parts' energies add up to that of the whole. */
  #heldOf(piece: Mesh, mesh: Mesh, place: Int32Array, part: Uint32Array, p: number, share: number) {
    const a: number[] = [], b: number[] = [], weight: number[] = [], scale: number[] = [];
    const seen = new Set<number>();
    for (const [h, flatMm] of this.#held) {
      if (part[Math.floor(h / 3)] !== p) continue;
      const v = place[mesh.triangles[h]!]!, w = place[mesh.triangles[nextCorner(h)]!]!;
      const key = Math.min(v, w) * place.length + Math.max(v, w);
      if (seen.has(key)) continue;
      seen.add(key);
      a.push(v);
      b.push(w);
      const mm = apart(piece.positions, 3, v, w);
      weight.push((moreFirmly * edgeWeightPerMm * mm) / share);
      scale.push(flatMm / mm);
    }
    return { a: Uint32Array.from(a), b: Uint32Array.from(b), weight: Float64Array.from(weight), scale: Float64Array.from(scale) };
  }
}

const trueHalfEdges = ({ mesh, edges: e }: Shell): number[] => [e.toplineMedial, e.toplineLateral, e.backMedial, e.backLateral, e.centre].flatMap((row) => [...halfEdgesOn(mesh, row)]);

function apart(list: Float64Array, width: 2 | 3, v: number, w: number): number {
  let sum = 0;
  for (let d = 0; d < width; d++) sum += (list[width * v + d]! - list[width * w + d]!) ** 2;
  return Math.sqrt(sum);
}

/** Length of a row of vertices of the whole mesh on the surface and on the flat, openings left out, mm. The row lies on the rim. */
export function rowLengths({ positions, triangles }: Mesh, { corners }: Pick<SlitLay, "corners">, row: Uint32Array): { readonly surfaceMm: number; readonly flatMm: number } {
  const halfEdges = halfEdgesOn({ positions, triangles }, row);
  must(halfEdges.length === row.length - 1, "an edge on the rim has one triangle beside each of its steps");
  let surfaceMm = 0, flatMm = 0;
  for (const h of halfEdges) {
    surfaceMm += apart(positions, 3, triangles[h]!, triangles[nextCorner(h)]!);
    flatMm += apart(corners, 2, h, nextCorner(h));
  }
  return { surfaceMm, flatMm };
}
