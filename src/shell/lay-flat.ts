import { must } from "#base/bug.ts";
import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { flatten, type FlattenOptions, type Flattening } from "#flatten/flatten.ts";
import type { FlatShell, Shell, ShellEdges } from "./shell.ts";
import { summarise, vertexMeans } from "./strain.ts";

/**
 * How firmly the edges that a maker keeps true (topline, back, centre) hold their length against the rest; the feather edge, where
 * the leather is pulled under, absorbs what is left. Per mm of edge, so that it does not depend on the mesh. At 0.05 they come out
 * true to about 0.1 mm; without, they are 1 to 2.5 mm off.
 */
export const edgeWeightPerMm = 0.05;
/** Stiffness of the thread that swings the heel ends together; the mode is soft, so this all but fixes the gap. */
const springWeight = 10;
/** What must stay between the heel ends, so that the back seam's allowances have room, mm. */
const leastGapMm = 10;

/** Above this, leather is pulled further than lasting usually asks: 6 to 12 % across the forepart, 15 % and more only at toe corners (common practice, no source). */
const muchStretch = 0.15;

/** Where the leather must stretch most. */
function worstPlace({ mesh }: Shell, flat: Flattening): [number, number, number] {
  const means = vertexMeans(mesh, flat.stretchMax);
  let worst = 0;
  for (let v = 1; v < means.length; v++) if (means[v]! > means[worst]!) worst = v;
  return [mesh.positions[3 * worst]!, mesh.positions[3 * worst + 1]!, mesh.positions[3 * worst + 2]!];
}

/** Lays the shell flat as it lies of itself, without spring. */
export function layFree(shell: Shell): Flattening {
  return flatten(shell.mesh, { edges: trueEdges(shell) });
}

/**
 * The flat shell, heel ends swung together by `springMm` at the topline from where they lie of themselves in `free`.
 * @throws Refusal `spring-too-wide` when less than {@link leastGapMm} would be left between them; swung outward by as much and more means nothing either.
 */
export function layFlat(shell: Shell, springMm: number, free: Flattening = layFree(shell)): FlatShell {
  const flat = springMm === 0 ? free : swing(shell, free, springMm);
  const uv = settleFrame(flat.uv, shell.edges);
  const findings: Finding[] = [];
  if (flat.flipped > 0) findings.push(finding("flat-pattern-folds", { triangles: flat.flipped }));
  const unsprung = summarise(shell.mesh, free.stretchMax, free.stretchMin);
  const strain = springMm === 0 ? unsprung : summarise(shell.mesh, flat.stretchMax, flat.stretchMin);
  if (strain.give > muchStretch) findings.push(finding("stretch-high", { percent: 100 * strain.give }, worstPlace(shell, flat)));
  return { shell, uv, stretchMax: flat.stretchMax, stretchMin: flat.stretchMin, strain, springMm, unsprung, findings };
}

function swing(shell: Shell, free: Flattening, springMm: number): Flattening {
  const a = last(shell.edges.backMedial), b = last(shell.edges.backLateral);
  const gap = heelGap({ shell, uv: free.uv });
  const mostMm = Math.floor(gap - leastGapMm);
  if (!(Math.abs(springMm) <= mostMm)) throw new Refusal(finding("spring-too-wide", { springMm, mostMm }));
  return flatten(shell.mesh, { edges: trueEdges(shell), start: free.uv, ties: [{ a, b, targetMm: gap - springMm, weight: springWeight }] });
}

/** Gap between the heel ends at the topline, mm. */
export function heelGap({ uv, shell }: Pick<FlatShell, "uv" | "shell">): number {
  const a = last(shell.edges.backMedial), b = last(shell.edges.backLateral);
  return Math.sqrt((uv[2 * a]! - uv[2 * b]!) ** 2 + (uv[2 * a + 1]! - uv[2 * b + 1]!) ** 2);
}

const last = (ids: Uint32Array): number => ids[ids.length - 1]!;

function trueEdges({ mesh: { positions: p }, edges: e }: Shell): NonNullable<FlattenOptions["edges"]> {
  const a: number[] = [], b: number[] = [], weight: number[] = [];
  for (const ids of [e.toplineMedial, e.toplineLateral, e.backMedial, e.backLateral, e.centre])
    for (let i = 0; i + 1 < ids.length; i++) {
      const v = 3 * ids[i]!, w = 3 * ids[i + 1]!;
      a.push(ids[i]!);
      b.push(ids[i + 1]!);
      weight.push(edgeWeightPerMm * Math.sqrt((p[v]! - p[w]!) ** 2 + (p[v + 1]! - p[w + 1]!) ** 2 + (p[v + 2]! - p[w + 2]!) ** 2));
    }
  return { a: Uint32Array.from(a), b: Uint32Array.from(b), weight: Float64Array.from(weight) };
}

/** Toe point to the origin, throat → toe along +x. */
function settleFrame(uv: Float64Array, { centre }: ShellEdges): Float64Array {
  const toe = centre[0]!, throat = last(centre);
  const dx = uv[2 * toe]! - uv[2 * throat]!, dy = uv[2 * toe + 1]! - uv[2 * throat + 1]!;
  const size = Math.sqrt(dx * dx + dy * dy);
  must(size > 0, "toe and throat of the flat shell coincide");
  const out = new Float64Array(uv.length);
  for (let i = 0; i < uv.length; i += 2) {
    const x = uv[i]! - uv[2 * toe]!, y = uv[i + 1]! - uv[2 * toe + 1]!;
    out[i] = (x * dx + y * dy) / size + 0;
    out[i + 1] = (y * dx - x * dy) / size + 0;
  }
  return out;
}

/** Length of an edge on the flat shell, mm. */
export function flatLength({ uv }: Pick<FlatShell, "uv">, ids: Uint32Array): number {
  let sum = 0;
  for (let i = 0; i + 1 < ids.length; i++) sum += Math.sqrt((uv[2 * ids[i]!]! - uv[2 * ids[i + 1]!]!) ** 2 + (uv[2 * ids[i]! + 1]! - uv[2 * ids[i + 1]! + 1]!) ** 2);
  return sum;
}
