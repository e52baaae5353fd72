import { Bug, must } from "#base/bug.ts";
import type { Half } from "#lines/feather.ts";
import { edgeLength } from "../net-upper.ts";
import type { NetPanel, PlaceName } from "../panel.ts";

/** A place of the feather line by the half it lies in and its running length from the toe point, seams skipped, mm. */
export interface FromToe {
  readonly half: Half;
  readonly mm: number;
}

/** The feather line over all panels of an upper, from the toe point to the seat on either half, as if it were not cut. */
export interface FeatherWay {
  /** Where a running length of one panel's feather edge lies on it. */
  readonly at: (panel: number, edge: number, s: number) => FromToe;
  readonly halves: Readonly<Record<Half, HalfWay>>;
}

/** Running lengths from the toe point; the waist lies half-way between joint and heel breast. */
export interface HalfWay {
  readonly joint: number;
  readonly waist: number;
  readonly breast: number;
  readonly seat: number;
}

/** A stretch of a feather edge that is walked in one go: with the edge on the inner half, against it on the outer one. */
interface Run {
  readonly panel: number;
  readonly edge: number;
  readonly half: Half;
  readonly from: number;
  readonly to: number;
  /** From the toe to where it begins. */
  readonly before: number;
}

/** Follows the feather line over the panels: both banks of a seam carry one name, by which it goes on in the next panel. */
export function featherWay(panels: readonly NetPanel[]): FeatherWay {
  const runs = [...runsOf(panels, "medial"), ...runsOf(panels, "lateral")];
  const at = (panel: number, edge: number, s: number): FromToe => {
    const own = runs.filter((r) => r.panel === panel && r.edge === edge);
    const run = own.find((r) => s >= Math.min(r.from, r.to) && s <= Math.max(r.from, r.to)) ?? own[0];
    must(run, "this edge is no part of the feather line");
    return { half: run.half, mm: run.before + (run.half === "medial" ? s - run.from : run.from - s) };
  };
  const place = (name: PlaceName, half: Half): number => {
    for (const [k, panel] of panels.entries()) {
      const found = panel.places.find((p) => p.name === name && p.half === half && panel.edges[p.edge]!.role === "feather");
      if (found) return at(k, found.edge, found.s).mm;
    }
    throw new Bug(`the feather line has no ${name}`);
  };
  const way = (half: Half): HalfWay => {
    const [joint, breast] = [place("joint", half), place("breast", half)];
    const last = runs.findLast((r) => r.half === half)!;
    return { joint, waist: (joint + breast) / 2, breast, seat: last.before + Math.abs(last.to - last.from) };
  };
  return { at, halves: { medial: way("medial"), lateral: way("lateral") } };
}

function runsOf(panels: readonly NetPanel[], half: Half): readonly Run[] {
  const onward = half === "medial";
  let { panel, edge, from } = toeOf(panels);
  const runs: Run[] = [];
  let before = 0;
  // Every panel has at most two feather edges on a half.
  for (let k = 0; k < 2 * panels.length + 1; k++) {
    const end = onward ? edgeLength(panels[panel]!.edges[edge]!) : 0;
    const seat = seatOn(panels[panel]!, edge, from, onward);
    const to = seat ?? end;
    runs.push({ panel, edge, half, from, to, before });
    before += Math.abs(to - from);
    const next = seat === undefined ? acrossSeam(panels, panel, edge, onward) : undefined;
    if (!next) break;
    ({ panel, edge } = next);
    from = onward ? 0 : edgeLength(panels[panel]!.edges[edge]!);
  }
  return runs;
}

function toeOf(panels: readonly NetPanel[]): { panel: number; edge: number; from: number } {
  for (const [panel, { places }] of panels.entries()) {
    const toe = places.find((p) => p.name === "toe");
    if (toe) return { panel, edge: toe.edge, from: toe.s };
  }
  throw new Bug("an upper needs a toe");
}

/** The seat, where it lies on the way along an edge. */
function seatOn({ places }: NetPanel, edge: number, from: number, onward: boolean): number | undefined {
  const ahead = places.filter((p) => p.name === "seat" && p.edge === edge && (onward ? p.s > from : p.s < from)).map((p) => p.s);
  return ahead.length === 0 ? undefined : onward ? Math.min(...ahead) : Math.max(...ahead);
}

/** The feather edge on the other bank of the seam at the end of one. */
function acrossSeam(panels: readonly NetPanel[], panel: number, edge: number, onward: boolean): { panel: number; edge: number } | undefined {
  const { edges } = panels[panel]!;
  const step = onward ? 1 : -1;
  const bank = (edge + step + edges.length) % edges.length;
  const { seam, role } = edges[bank]!;
  if (seam === undefined || role === "back") return undefined;
  for (const [k, other] of panels.entries()) {
    const n = other.edges.length;
    const there = other.edges.findIndex((e, i) => e.seam === seam && !(k === panel && i === bank));
    if (there < 0) continue;
    return { panel: k, edge: (there + step + n) % n };
  }
  return undefined;
}
