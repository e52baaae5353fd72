import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { must } from "#base/bug.ts";
import { vertexCount, type Mesh } from "#mesh/mesh.ts";
import { boundaryLoops, neighbours, nextCorner } from "#mesh/neighbours.ts";
import { partOfTriangle } from "#mesh/topology.ts";
import type { Forme } from "#lines/forme.ts";
import type { Side } from "#last/last.ts";
import type { CutShell } from "./cut.ts";
import type { Panel, PanelEdge, PanelName, PanelRole } from "./panel.ts";
import type { SeamLine } from "./seam-line.ts";
import { splitAlong, type LayeredMesh } from "./seam-line-split.ts";
import type { Shell, ShellEdges } from "./shell.ts";
import { slit } from "./slit.ts";

export interface OpenInput {
  /** The shell on the last itself. */
  readonly onLast: CutShell;
  /** The same lifted over what lies beneath; without it the last's own surface. */
  readonly over?: Shell;
  readonly side: Side;
  readonly lines: readonly SeamLine[];
  /** Whether the two banks of the back are one. */
  readonly backClosed: boolean;
  /** Puts new vertices on the last itself; without it they lie on the shell's triangles. */
  readonly forme?: Pick<Forme, "toLast">;
  /** Flat places of the shell's vertices, carried to the panels as a place to begin from. */
  readonly uv?: Float64Array;
}

export interface OpenedShell {
  /** The whole shell with the lines as rows of its edges, not yet opened. */
  readonly onLast: Shell;
  readonly over: Shell;
  readonly uv?: Float64Array;
  /** Vertices of each line, topline first. */
  readonly paths: readonly Uint32Array[];
  readonly panels: readonly Panel[];
}

/**
 * Opens the shell along lines into panels; where the back is closed its banks become one row of vertices. Nothing is lost or doubled: the
 * panels' triangles are those of the shell, but for those that a line cuts in two.
 * @throws Refusal `seam-leaves-upper` where a line does not run straight through from topline to feather line
 */
export function openShell(input: OpenInput): OpenedShell {
  const split = splitShell(input);
  const { onLast, paths } = split;
  const welded = input.backClosed ? weldedBack(onLast) : onLast.mesh;
  const { mesh, source } = slit(welded, paths);
  const labels = new EdgeLabels(onLast, input, paths);
  const { part, count } = partOfTriangle(mesh);
  const panels = Array.from({ length: count }, (_, p) => panelOf(p, part, mesh, source, split, labels, input.side));
  return { ...split, panels };
}

function splitShell({ onLast, over = onLast, lines, forme, uv }: OpenInput): Omit<OpenedShell, "panels"> {
  const { edges } = onLast;
  const kept = new Uint8Array(vertexCount(onLast.mesh));
  for (const ids of Object.values(edges) as Uint32Array[]) for (const v of ids) kept[v] = 1;
  const push = over.mesh.positions.map((x, i) => x - onLast.mesh.positions[i]!);
  let mesh: LayeredMesh = {
    plane: onLast.plane,
    triangles: onLast.mesh.triangles,
    layers: [{ width: 3, values: onLast.mesh.positions }, { width: 3, values: push }, ...(uv ? [{ width: 2 as const, values: uv }] : [])],
  };
  const paths: Uint32Array[] = [], touched: number[] = [];
  for (const { name, plane } of lines) {
    const grown = new Uint8Array(mesh.plane.length / 2);
    grown.set(kept);
    for (const path of paths) for (const v of path) grown[v] = 1;
    const cut = splitAlong(mesh, plane, grown);
    if (!cut) throw new Refusal(finding("seam-leaves-upper", { what: name }));
    mesh = cut;
    paths.push(cut.path);
    touched.push(...cut.touched);
  }
  const [positions, pushed, flat] = mesh.layers.map(({ values }) => values) as [Float64Array, Float64Array, Float64Array?];
  if (forme)
    for (const v of touched) {
      const p = forme.toLast([mesh.plane[2 * v]!, mesh.plane[2 * v + 1]!]);
      if (p) positions.set(p, 3 * v);
    }
  const shellOf = (at: Float64Array): Shell => ({ mesh: { positions: at, triangles: mesh.triangles }, edges });
  return { onLast: shellOf(positions), over: shellOf(positions.map((x, i) => x + pushed[i]!)), paths, ...(flat && { uv: flat }) };
}

/** The mesh with the outer bank of the back put in place of the inner one's; vertices keep their numbers, the outer bank's fall out of use. */
function weldedBack({ mesh, edges: { backMedial, backLateral } }: Shell): Mesh {
  must(backMedial.length === backLateral.length, "the two banks of the back have equally many points");
  const into = new Map(Array.from(backLateral, (v, k) => [v, backMedial[k]!]));
  return { positions: mesh.positions, triangles: mesh.triangles.map((v) => into.get(v) ?? v) };
}

type Label = Omit<PanelEdge, "vertices">;

/** Names every step of the rim by the shell's edge or the line that it belongs to. */
class EdgeLabels {
  readonly #labels = new Map<string, Label>();
  readonly backClosed: boolean;
  constructor({ edges: e }: Shell, { backClosed, lines }: OpenInput, paths: readonly Uint32Array[]) {
    this.backClosed = backClosed;
    const into = new Map(backClosed ? Array.from(e.backLateral, (v, k) => [v, e.backMedial[k]!]) : []);
    const put = (ids: Uint32Array, label: Label): void => {
      for (let k = 0; k + 1 < ids.length; k++) this.#labels.set(keyOf(into.get(ids[k]!) ?? ids[k]!, into.get(ids[k + 1]!) ?? ids[k + 1]!), label);
    };
    put(e.featherMedial, { role: "feather", half: "medial" });
    put(e.featherLateral, { role: "feather", half: "lateral" });
    put(e.toplineMedial, { role: "topline", half: "medial" });
    put(e.toplineLateral, { role: "topline", half: "lateral" });
    if (!backClosed) {
      put(e.backMedial, { role: "back", half: "medial", seam: "back" });
      put(e.backLateral, { role: "back", half: "lateral", seam: "back" });
    }
    lines.forEach(({ name, half }, k) => put(paths[k]!, { role: roleOf(name), half, seam: name }));
  }

  at(a: number, b: number): Label {
    const label = this.#labels.get(keyOf(a, b));
    must(label, "every step of a panel's rim lies on a named edge");
    return label;
  }
}

const keyOf = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);
const roleOf = (name: string): PanelRole => (name === "inner waist" ? "inner waist" : name === "inner side" || name === "outer side" ? "side" : "end");

function panelOf(p: number, part: Uint32Array, mesh: Mesh, slitSource: Uint32Array, { onLast, over }: Pick<OpenedShell, "onLast" | "over">, labels: EdgeLabels, side: Side): Panel {
  const place = new Int32Array(vertexCount(mesh)).fill(-1);
  const source: number[] = [], triangles: number[] = [];
  for (let t = 0; t < part.length; t++)
    if (part[t] === p)
      for (let c = 0; c < 3; c++) {
        const v = mesh.triangles[3 * t + c]!;
        if (place[v] === -1) place[v] = source.push(slitSource[v]!) - 1;
        triangles.push(place[v]!);
      }
  const own = Uint32Array.from(triangles);
  const at = ({ positions }: Mesh): Mesh => ({ positions: Float64Array.from(source.flatMap((v) => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!])), triangles: own });
  const panel = { over: at(over.mesh), onLast: at(onLast.mesh), source: Uint32Array.from(source) };
  const centre = rowIn(onLast.edges.centre, source), back = labels.backClosed ? rowIn(onLast.edges.backMedial, source) : undefined;
  return { name: nameOf(onLast.edges, source), ...panel, edges: rimEdges(panel.onLast, source, labels, side), ...(centre && { centre }), ...(back && { back }) };
}

/** A row of the shell's vertices by their numbers in a panel, where it has all of them. */
function rowIn(ids: Uint32Array, source: readonly number[]): Uint32Array | undefined {
  const wanted = new Map(Array.from(ids, (v, k) => [v, k]));
  const out = new Int32Array(ids.length).fill(-1);
  source.forEach((v, k) => {
    const i = wanted.get(v);
    if (i !== undefined) out[i] = k;
  });
  return out.includes(-1) ? undefined : Uint32Array.from(out);
}

function nameOf({ featherMedial, featherLateral, centre }: ShellEdges, source: readonly number[]): PanelName {
  const has = (v: number): boolean => source.includes(v);
  const heel = has(featherMedial[0]!), outerHeel = has(featherLateral[0]!);
  if (has(centre[0]!)) return heel || outerHeel ? "whole" : "vamp";
  return heel && (outerHeel || has(featherLateral[1]!)) ? "heel" : heel ? "inner quarter" : "outer quarter";
}

/** The rim of a panel cut up where the label changes, from the feather line on. */
function rimEdges(mesh: Mesh, source: readonly number[], labels: EdgeLabels, side: Side): readonly PanelEdge[] {
  const loops = boundaryLoops(neighbours(mesh).twin);
  must(loops.length === 1, "a panel has one rim");
  const loop = Array.from(loops[0]!, (h) => mesh.triangles[h]!);
  must(loop.every((_, k) => mesh.triangles[nextCorner(loops[0]![k]!)] === loop[(k + 1) % loop.length]), "a rim's half-edges run on");
  if (side === "left") loop.reverse();
  const n = loop.length;
  const label = loop.map((v, k) => labels.at(source[v]!, source[loop[(k + 1) % n]!]!));
  const goesOn = (a: Label, b: Label): boolean => a.role === b.role && a.seam === b.seam && (a.half === b.half || a.role === "feather" || a.role === "topline");
  const first = label.findIndex((l, k) => l.role === "feather" && !goesOn(label[(k + n - 1) % n]!, l));
  must(first >= 0, "a panel has a part of the feather line");
  const edges: PanelEdge[] = [];
  for (let k = 0; k < n; ) {
    const from = k, own = label[(first + from) % n]!;
    let one = true;
    for (; k < n && goesOn(own, label[(first + k) % n]!); k++) if (label[(first + k) % n]!.half !== own.half) one = false;
    const vertices = Uint32Array.from({ length: k - from + 1 }, (_, i) => loop[(first + from + i) % n]!);
    edges.push({ role: own.role, ...(one && own.half && { half: own.half }), ...(own.seam && { seam: own.seam }), vertices });
  }
  return edges;
}
