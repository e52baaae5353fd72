import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { distanceInSpace } from "#flatten/distance.ts";
import { Flattener, type Flattening } from "#flatten/flatten.ts";
import { halves } from "#lines/feather.ts";
import { vertexCount, type Mesh } from "#mesh/mesh.ts";
import { flatLength } from "./edge-length.ts";
import { edgeWeightPerMm } from "./lay-flat.ts";
import type { LaidPanel, Panel, PanelName } from "./panel.ts";
import type { Shell } from "./shell.ts";
import { summarise, vertexMeans } from "./strain.ts";
import { toplineShares, type ByHalf } from "./tension.ts";

/** How the topline's steps are to be shortened, each half by so many mm in all; steps by the vertices they have in the opened shell. */
export type Draw = ReadonlyMap<string, number>;

const stepOf = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Shares out by how much each half of the topline is to be shorter as where the upper lies in one piece (see tension.ts): mm by step. */
export function drawnSteps(shell: Shell, shorterMm: ByHalf<number>): Draw {
  const p = shell.mesh.positions;
  const out = new Map<string, number>();
  for (const half of halves) {
    const { ids, shares, sumMm } = toplineShares(shell, half);
    for (let k = 0; k + 1 < ids.length; k++) if (sumMm > 0) out.set(stepOf(ids[k]!, ids[k + 1]!), (shorterMm[half] * shares[k]! * distanceInSpace(p, ids[k]!, ids[k + 1]!)) / sumMm);
  }
  return out;
}

/** A run of a panel's topline in one half, whose length on the flat is asked for. */
interface Run {
  readonly vertices: Uint32Array;
  /** Number of its first step among the held ones. */
  readonly first: number;
  /** By how much each step is to be shorter, mm, and all together. */
  readonly byMm: Float64Array;
  readonly sumMm: number;
  readonly toMm: number;
}

interface Held {
  readonly a: Uint32Array;
  readonly b: Uint32Array;
  readonly weight: Float64Array;
  readonly runs: readonly Run[];
}

/** Topline, seams, back and centre are held to their length; the feather line, which is pulled under, and the ends of a cut-off part are not. */
function heldOf({ edges, centre, source }: Panel, mesh: Mesh, draw: Draw): Held {
  const p = mesh.positions;
  const a: number[] = [], b: number[] = [], weight: number[] = [], runs: Run[] = [];
  const put = (vertices: Uint32Array): void => {
    const first = a.length, byMm = new Float64Array(vertices.length - 1);
    let onMm = 0;
    for (let k = 0; k + 1 < vertices.length; k++) {
      const [v, w] = [vertices[k]!, vertices[k + 1]!], mm = distanceInSpace(p, v, w);
      a.push(v);
      b.push(w);
      weight.push(edgeWeightPerMm * mm);
      byMm[k] = draw.get(stepOf(source[v]!, source[w]!)) ?? 0;
      onMm += mm;
    }
    const sumMm = byMm.reduce((sum, mm) => sum + mm, 0);
    if (sumMm !== 0) runs.push({ vertices, first, byMm, sumMm, toMm: onMm - sumMm });
  };
  for (const { role, vertices } of edges) if (role !== "feather" && role !== "end") put(vertices);
  if (centre) put(centre);
  return { a: Uint32Array.from(a), b: Uint32Array.from(b), weight: Float64Array.from(weight), runs };
}

export interface LayPanelOptions {
  /** On the last itself, as a lining or a stiffener lies; else over what lies beneath the upper. */
  readonly on?: "over" | "onLast";
  readonly draw?: Draw;
  /** Flat places of the opened shell's vertices, to begin from. */
  readonly start?: Float64Array | undefined;
  /** The same panel laid before, to begin from. */
  readonly like?: LaidPanel | undefined;
  /** How far the tops of the two banks of a panel that is open like a horseshoe are swung together. */
  readonly springMm?: number;
}

const nearEnoughMm = 0.03;
const mostRounds = 4;
/** A surface gives about a twentieth less than is asked; see tension.ts. */
const more = 1.05;
/** See lay-flat.ts: stiffness of the thread that swings the ends, and what must stay between them, mm. */
const springWeight = 10;
const leastGapMm = 10;
const mostApartMm = 60;

/**
 * Lays one panel flat by itself with least stretch, its topline drawn together by the steps asked for. Not yet turned into its frame.
 * @throws Refusal where it does not come to rest, or `seam-spring-too-wide`
 */
export function layPanel(panel: Panel, { on = "over", draw = new Map(), start, like, springMm = 0 }: LayPanelOptions = {}): LaidPanel {
  const mesh = panel[on];
  const { runs, ...edges } = heldOf(panel, mesh, draw);
  const ends = bankTops(panel);
  const flattener = new Flattener(vertexCount(mesh), mesh.triangles, { edges, ...(ends && { ties: [{ ...ends, ...loose }] }) });
  const from = like ? like.uv : start && startOf(panel, start);
  const lay = (scale: Float64Array, before: Float64Array | undefined, tie = loose): Flattening =>
    flattener.run(mesh.positions, { ...(before && { start: before }), edges: { weight: edges.weight, scale }, ...(ends && { ties: [tie] }) });
  const drawnFlat = drawn(runs, mesh, edges, from, lay);
  let { flat } = drawnFlat;
  if (springMm !== 0 && ends) {
    const gap = flatLength(flat, Uint32Array.of(ends.a, ends.b));
    const mostMm = Math.max(0, Math.floor(gap - leastGapMm));
    if (!(springMm >= -mostApartMm && springMm <= mostMm)) throw new Refusal(finding("seam-spring-too-wide", { springMm, leastMm: -mostApartMm, mostMm }));
    flat = lay(drawnFlat.scale, flat.uv, { targetMm: gap - springMm, weight: springWeight });
  }
  return { panel, uv: flat.uv, stretchMax: flat.stretchMax, stretchMin: flat.stretchMin, strain: summarise(mesh, flat.stretchMax, flat.stretchMin), findings: judged(panel, flat) };
}

const loose = { targetMm: 0, weight: 0 };

function startOf({ source }: Panel, uv: Float64Array): Float64Array {
  const out = new Float64Array(2 * source.length);
  source.forEach((v, k) => out.set([uv[2 * v]!, uv[2 * v + 1]!], 2 * k));
  return out;
}

/** Tops of the two banks of one seam on one panel, which is then open like a horseshoe. */
export function bankTops({ edges }: Panel): { readonly a: number; readonly b: number } | undefined {
  const [up, down] = edges.filter(({ seam }, k) => seam !== undefined && edges.some((other, l) => l !== k && other.seam === seam));
  return up && down && { a: up.vertices[up.vertices.length - 1]!, b: down.vertices[0]! };
}

/** Rounds of asking for a little more where the surface gives less, as for the whole upper. */
function drawn(runs: readonly Run[], mesh: Mesh, { a, b }: Omit<Held, "runs">, start: Float64Array | undefined, lay: (scale: Float64Array, like: Float64Array | undefined) => Flattening): { readonly flat: Flattening; readonly scale: Float64Array } {
  const times = runs.map(() => more);
  let flat: Flattening | undefined;
  for (let round = 1; ; round++) {
    const scale = new Float64Array(a.length).fill(1);
    runs.forEach(({ first, byMm }, r) => {
      for (let k = 0; k < byMm.length; k++) scale[first + k] = 1 - (times[r]! * byMm[k]!) / distanceInSpace(mesh.positions, a[first + k]!, b[first + k]!);
    });
    const byMm = runs.reduce((sum, run, r) => sum + times[r]! * run.sumMm, 0);
    if (!scale.every((share) => share > 0)) throw new Refusal(finding("topline-cannot-be-drawn", { byMm }));
    const laid = lay(scale, flat?.uv ?? start);
    flat = laid;
    const off = runs.map(({ vertices, toMm }) => flatLength(laid, vertices) - toMm);
    if (round === mostRounds || off.every((mm) => Math.abs(mm) < nearEnoughMm)) return { flat: laid, scale };
    // A run of which next to nothing is asked comes as near as it comes.
    runs.forEach(({ sumMm }, r) => (times[r]! += Math.max(-1, Math.min(1, off[r]! / sumMm))));
  }
}

/** Leather's length gives 2 to 5 % by itself in lasting (handbook of hand pattern-making, common practice, no source); above that a panel is worked. */
const byItself = 0.05;
/** Above so much gathered, pulls alone leave pleats: the margin is nicked to so far from the feather line, mm (common practice, no source), which helps this near to it. */
const byPulls = 0.25;
const nickShortMm = 3;
const nearMarginMm = 15;
/** As in lay-flat.ts. */
const muchStretch = 0.15;
const spoken: Partial<Record<PanelName, string>> = { whole: "upper", heel: "heel part" };

function judged(panel: Panel, flat: Flattening): readonly Finding[] {
  const mesh = panel.over;
  const most = (value: Float64Array): { readonly by: number; readonly v: number } => {
    const means = vertexMeans(mesh, value);
    return means.reduce((best, by, v) => (by > best.by ? { by, v } : best), { by: -Infinity, v: 0 });
  };
  const give = most(flat.stretchMax.map((s) => s - 1)), gather = most(flat.stretchMin.map((s) => 1 - s));
  const worst = give.by > gather.by ? give : gather;
  const at = (v: number): [number, number, number] => [mesh.positions[3 * v]!, mesh.positions[3 * v + 1]!, mesh.positions[3 * v + 2]!];
  const findings: Finding[] = [];
  if (flat.flipped > 0) findings.push(finding("flat-pattern-folds", { triangles: flat.flipped }));
  if (flat.keptApart) findings.push(finding("flat-kept-apart", {}));
  if (give.by > muchStretch) findings.push(finding("stretch-high", { percent: 100 * give.by }, at(give.v)));
  if (worst.by > byItself) findings.push(finding("panel-eased", { panel: spoken[panel.name] ?? panel.name, givePercent: 100 * give.by, gatherPercent: 100 * gather.by, usualPercent: 100 * byItself, ...(worst === gather && gather.by > byPulls && atMargin(panel, gather.v) && { nickShortMm }) }, at(worst.v)));
  return findings;
}

/** Whether a vertex lies so near to the feather line that nicks in the lasting margin free it. */
const atMargin = ({ edges, over }: Panel, v: number): boolean => edges.some(({ role, vertices }) => role === "feather" && vertices.some((w) => distanceInSpace(over.positions, v, w) < nearMarginMm));
