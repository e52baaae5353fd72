import { must } from "#base/bug.ts";
import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { distanceInSpace } from "#flatten/distance.ts";
import { Flattener, type FlattenOptions, type Flattening } from "#flatten/flatten.ts";
import { vertexCount } from "#mesh/mesh.ts";
import type { FlatShell, Shell, ShellEdges, ToplineTension } from "./shell.ts";
import { springRange } from "./spring-range.ts";
import { summarise, vertexMeans } from "./strain.ts";
import { drawTopline, noExtra, tensionOf, type ByHalf, type Drawn } from "./tension.ts";

/**
 * How firmly the edges that a maker keeps true (topline, back, centre) hold their length against the rest; the feather edge, where
 * the leather is pulled under, absorbs what is left. Per mm of edge, so that it does not depend on the mesh. At 0.05 they come out
 * true to about 0.1 mm; without, they are 1 to 2.5 mm off.
 */
export const edgeWeightPerMm = 0.05;
/** Stiffness of the thread that swings the heel ends together; the mode is soft, so this all but fixes the gap. */
const springWeight = 10;
/** How near to what is asked a spring comes, mm. */
const springMissMm = 0.2;
/** What must stay between the heel ends, so that the back seam's allowances have room, mm. */
const leastGapMm = 10;
/** Nearer than this seams and folds at the two heel ends come into each other's way on one piece, mm (seen at 16 mm on the example). */
export const nearGapMm = 20;

/** Above this, leather is pulled further than lasting usually asks: 6 to 12 % across the forepart, 15 % and more only at toe corners (common practice, no source). */
const muchStretch = 0.15;

/** Where the leather must stretch most. */
function worstPlace({ mesh }: Shell, flat: Flattening): [number, number, number] {
  const means = vertexMeans(mesh, flat.stretchMax);
  let worst = 0;
  for (let v = 1; v < means.length; v++) if (means[v]! > means[worst]!) worst = v;
  return [mesh.positions[3 * worst]!, mesh.positions[3 * worst + 1]!, mesh.positions[3 * worst + 2]!];
}

/** A shell laid flat as it lies of itself, without spring and tension, and what laid it, to lay it again. */
export interface FreeLay {
  /** Of the shell that was laid. */
  readonly triangles: Uint32Array;
  readonly flattener: Flattener;
  readonly flat: Flattening;
}

/** Lays the shell flat as it lies of itself; much quicker after `like`, if that was a shell of the very same triangles. */
export function layFree(shell: Shell, like?: FreeLay): FreeLay {
  const { positions, triangles } = shell.mesh;
  if (like?.triangles === triangles) return { ...like, flat: like.flattener.run(positions, { start: like.flat.uv }) };
  const flattener = new Flattener(vertexCount(shell.mesh), triangles, { edges: trueEdges(shell), ties: [{ ...heelEnds(shell), ...loose }] });
  return { triangles, flattener, flat: flattener.run(positions) };
}

export interface LayOptions {
  /** The same shell on the last itself, where `shell` is lifted off it. */
  readonly onLast?: Shell;
  /** Lengths that the topline's halves come to on the card, mm; without them they keep those of the shell. */
  readonly toplineMm?: ByHalf<number>;
  readonly free?: FreeLay;
  /** A shell of the very same triangles that lay nearly so, to begin from. */
  readonly like?: FlatShell | undefined;
}

/**
 * The flat shell with its topline brought to the asked lengths, and the heel ends swung together by `springMm` at the topline from
 * where they then lie of themselves.
 * @throws Refusal `spring-too-wide` when it would close them to less than {@link leastGapMm}, or swing them apart by more than {@link springRange} allows.
 */
export function layFlat(shell: Shell, springMm: number, { onLast = shell, toplineMm, free = layFree(shell), like }: LayOptions = {}): FlatShell {
  const still = (edges: number): Drawn => ({ flat: free.flat, scale: new Float64Array(edges).fill(1), extraMm: noExtra });
  const near = like?.shell.mesh.triangles === shell.mesh.triangles ? like : undefined;
  const before = near && { medial: near.tension.medial.extraMm, lateral: near.tension.lateral.extraMm };
  const { flat, extraMm } = drawnAndSwung(shell, springMm, free.flattener, (lay, edges) => (toplineMm ? drawTopline(shell, toplineMm, edges, lay, before) : still(edges)), near?.uv ?? free.flat.uv);
  const uv = settleFrame(flat.uv, shell.edges);
  const findings: Finding[] = [];
  if (flat.flipped > 0) findings.push(finding("flat-pattern-folds", { triangles: flat.flipped }));
  if (flat.keptApart) findings.push(finding("flat-kept-apart", {}));
  const gapMm = heelGap({ shell, uv });
  if (gapMm < nearGapMm) findings.push(finding("heel-ends-near", { gapMm, leastMm: nearGapMm, ...roomier(springMm, gapMm) }));
  const unsprung = summarise(shell.mesh, free.flat.stretchMax, free.flat.stretchMin);
  const strain = flat === free.flat ? unsprung : summarise(shell.mesh, flat.stretchMax, flat.stretchMin);
  if (strain.give > muchStretch) findings.push(finding("stretch-high", { percent: 100 * strain.give }, worstPlace(shell, flat)));
  return { shell, onLast, uv, stretchMax: flat.stretchMax, stretchMin: flat.stretchMin, strain, springMm, tension: tensionOf(shell, onLast, uv, extraMm), unsprung, findings };
}

/** A shell laid flat, as far as pieces are cut from it: its places are found by where they lie on the last. */
export type LaidOnLast = Pick<FlatShell, "shell" | "onLast" | "uv">;

/**
 * The lining, which lies on the last itself: laid flat like the upper over it, with the same spring, and its topline shorter by the same
 * share of where it lies as the upper's, so that both are stretched alike once they are stitched together.
 */
export function layLining(onLast: Shell, upper: FlatShell, { flattener }: FreeLay): LaidOnLast {
  const alike = ({ onLastMm, overMm, flatMm }: ToplineTension): number => (onLastMm * flatMm) / overMm;
  const toplineMm = { medial: alike(upper.tension.medial), lateral: alike(upper.tension.lateral) };
  const drawn = drawnAndSwung(onLast, upper.springMm, flattener, (lay, edges) => drawTopline(onLast, toplineMm, edges, lay), upper.uv);
  return { shell: onLast, onLast, uv: settleFrame(drawn.flat.uv, onLast.edges) };
}

type Lay = (scale: Float64Array, like?: Flattening) => Flattening;

function drawnAndSwung(shell: Shell, springMm: number, flattener: Flattener, draw: (lay: Lay, edges: number) => Drawn, start: Float64Array): Drawn {
  const { weight } = trueEdges(shell);
  const lay = (scale: Float64Array, like?: Flattening, tie = loose): Flattening => flattener.run(shell.mesh.positions, { start: like?.uv ?? start, edges: { weight, scale }, ties: [tie] });
  const drawn = draw(lay, weight.length);
  const { flat, scale } = drawn;
  if (springMm === 0) return drawn;
  const gap = heelGap({ shell, uv: flat.uv });
  const leastMm = -springRange.most, mostMm = Math.max(0, Math.floor(gap - leastGapMm));
  if (!(springMm >= leastMm && springMm <= mostMm)) throw new Refusal(finding("spring-too-wide", { springMm, leastMm, mostMm }));
  return { ...drawn, flat: lay(scale, flat, { targetMm: gap - springMm, weight: springWeight }) };
}

/** The greatest spring, to the whole millimetre, that leaves heel ends room; none where that would be swung apart too far. */
function roomier(springMm: number, gapMm: number): { readonly springMm?: number } {
  const wanted = Math.floor(springMm - (nearGapMm - gapMm) - springMissMm);
  return wanted >= -springRange.most ? { springMm: wanted } : {};
}

/** Nothing ties the heel ends. */
const loose = { targetMm: 0, weight: 0 };

function heelEnds({ edges }: Shell): { readonly a: number; readonly b: number } {
  return { a: last(edges.backMedial), b: last(edges.backLateral) };
}

/** Gap between the heel ends at the topline, mm. */
export function heelGap({ uv, shell }: Pick<FlatShell, "uv" | "shell">): number {
  const { a, b } = heelEnds(shell);
  return Math.sqrt((uv[2 * a]! - uv[2 * b]!) ** 2 + (uv[2 * a + 1]! - uv[2 * b + 1]!) ** 2);
}

const last = (ids: Uint32Array): number => ids[ids.length - 1]!;

function trueEdges({ mesh: { positions: p }, edges: e }: Shell): NonNullable<FlattenOptions["edges"]> {
  const a: number[] = [], b: number[] = [], weight: number[] = [];
  for (const ids of [e.toplineMedial, e.toplineLateral, e.backMedial, e.backLateral, e.centre])
    for (let i = 0; i + 1 < ids.length; i++) {
      a.push(ids[i]!);
      b.push(ids[i + 1]!);
      weight.push(edgeWeightPerMm * distanceInSpace(p, ids[i]!, ids[i + 1]!));
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
