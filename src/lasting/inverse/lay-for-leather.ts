import type { Watch } from "#base/watch.ts";
import { vertexCount } from "#mesh/mesh.ts";
import type { Law } from "#leather/law.ts";
import type { Shell } from "#shell/shell.ts";
import type { Pulls } from "../pulls.ts";
import type { Fabric } from "../upper.ts";
import { InverseSheet, type Inverse } from "./inverse-sheet.ts";

export interface LayForLeatherOptions {
  /** A left shoe: the law's directions are told for a right one. */
  readonly mirrored?: boolean;
  /** Friction on what lies beneath, as a share; none without. */
  readonly friction?: number;
  /** A flat shape found before, to begin from: quicker after a change of pulls or direction. */
  readonly like?: Float64Array;
  /** Kept from a shell of the very same triangles, which is quicker. */
  readonly sheet?: InverseSheet;
  readonly toleranceMm?: number;
  readonly exact?: boolean;
  readonly watch?: Watch;
}

/** So far beyond its neighbours a pull is felt where nothing else holds the leather: twice the way between two tacks, mm (ours). */
const tacksMm = 80;
/** Radius of the wall over which a pull is drawn, mm: it falls off over radius / friction, as round a post (Euler and Eytelwein). Ours, about that of the forepart. */
const wallMm = 40;
/** Strain at which the leather's stiffness is taken for it. */
const pulledStrain = 0.03;

/**
 * The flat sheet that takes the shape of the shell `over` what lies beneath when it is pulled at the feather line. `laid` is the shell laid
 * flat with least stretch: where a light hand lays the leather down, and the frame (toe point at the origin, throat → toe along +x). Pulls
 * are those at the shell's feather vertices. Topline and back are cut no longer than they were laid, which is the maker's own choice. Method, and why the
 * sheet sticks to where it was laid: docs/method/inverse.md.
 */
export function layForLeather({ over }: { readonly over: Shell }, laid: Float64Array, fabric: Fabric, pulls: Pick<Pulls, "perMm">, options: LayForLeatherOptions = {}): Inverse {
  const { mesh: { positions, triangles }, edges } = over;
  const { like = laid, friction = 0, mirrored = false, sheet = new InverseSheet(vertexCount(over.mesh), triangles) } = options;
  const rows = [edges.toplineMedial, edges.toplineLateral];
  const reachMm = 1 / (1 / tacksMm + friction / wallMm);
  return sheet.run({
    positions, mirrored, start: like, exact: options.exact ?? false,
    law: fabric.law,
    frame: { from: edges.centre[edges.centre.length - 1]!, origin: edges.centre[0]! },
    pulls: [{ vertices: edges.featherMedial, perMm: pulls.perMm.medial }, { vertices: edges.featherLateral, perMm: pulls.perMm.lateral }],
    stick: { from: laid, perMm3: stiffnessOf(fabric.law) / (reachMm * reachMm) },
    cut: { rows: [...rows, edges.backMedial, edges.backLateral], of: laid },
    ...(fabric.tapeN > 0 && { tape: { rows, stiffN: fabric.tapeN } }),
    ...(options.toleranceMm !== undefined && { toleranceMm: options.toleranceMm }),
    ...(options.watch && { watch: options.watch }),
  });
}

/** Mean stiffness of the pulled leather along and across, N/mm. */
function stiffnessOf(law: Law): number {
  const out = new Float64Array(9);
  law.into(out, pulledStrain, pulledStrain, 0);
  return 0.5 * (out[3]! + out[4]!);
}
