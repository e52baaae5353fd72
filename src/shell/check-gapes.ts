import type { Point3 } from "#last/last.ts";
import type { Half } from "#lines/feather.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { Wrapped } from "#wrap/wrap.ts";
import { edgeLength, flatLength } from "./edge-length.ts";
import { flank, mostStandOffMm, sharesAlong } from "./check-rows.ts";
import type { FlatShell } from "./shell.ts";
import type { ShellNumbers } from "./settings.ts";
import { toplineOf } from "./tension.ts";

/**
 * Why a card stands off: its topline is longer than its way and lies slack; it is slack though the topline is as short as is usual; it
 * is taut and spans a hollow of the waist, or the hollow of the instep at the throat.
 */
export type GapeWhy = "topline-slack" | "heel-slack" | "waist-hollow" | "instep-hollow";

/** A change of one of the maker's own settings that brings the card nearer; shares for the topline, else mm. */
export interface GapeChange {
  readonly setting: keyof (Pick<LineSettings, "sideHeightMedialMm" | "sideHeightLateralMm" | "throatDepthMm"> & Pick<ShellNumbers, "toplineShorter" | "springMm">);
  readonly by: number;
}

/** A run of topline that stands off by more than a maker lets pass. */
export interface Gape {
  readonly half: Half;
  /** The card where it stands off most, mm in the last's frame. */
  readonly at: Point3;
  /** Where that is along the half, from the back point (0) to the throat (1), and the same in mm on the last. */
  readonly share: number;
  readonly fromBackMm: number;
  readonly standOffMm: number;
  readonly why: GapeWhy;
  readonly change: GapeChange;
}

/** The most that a topline is usually shortened, of any leather, and the least of kid and calf, as shares (common practice, no source). */
const usual = { most: 0.04, least: 0.02 } as const;
/** Steps in which settings are proposed, and the most at once. */
const toplineStep = 0.001, springStepMm = 4, throatStepMm = 5, mostSideMm = 3;
/** Millimetres a side is raised for each that the topline stands off too far over a hollow: measured on three lasts, where 5 mm brought 0.4 to 0.9 mm. */
const sidePerMm = 5;

/** Finds where the wrapped card's topline stands off, and why. */
export function findGapes(coarse: FlatShell, wrapped: Wrapped, toplineShorter: number): readonly Gape[] {
  return (["medial", "lateral"] as const).flatMap((half) => runs(toplineOf(coarse.shell, half), wrapped.height).map((run) => gapeOf(coarse, wrapped, half, run, toplineShorter))).filter(throatOnce);
}

/** Both halves share the throat: it is told once. */
const throatOnce = (gape: Gape, i: number, all: readonly Gape[]): boolean => gape.why !== "instep-hollow" || all.findIndex(({ why }) => why === "instep-hollow") === i;

/** Stretches of an edge along which every vertex stands off, with one on each side that touches, that reach the limit somewhere. */
function runs(ids: Uint32Array, height: Float64Array): readonly (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  for (let i = 0; i < ids.length; i++) {
    if (height[ids[i]!]! <= touchMm) continue;
    const from = i;
    while (i < ids.length && height[ids[i]!]! > touchMm) i++;
    if (ids.subarray(from, i).some((v) => height[v]! > mostStandOffMm)) found.push([Math.max(0, from - 1), Math.min(ids.length - 1, i)]);
  }
  return found;
}
const touchMm = 0.05;

function gapeOf(coarse: FlatShell, wrapped: Wrapped, half: Half, [from, to]: readonly [number, number], toplineShorter: number): Gape {
  const ids = toplineOf(coarse.shell, half);
  const { positions } = coarse.shell.mesh;
  const run = ids.subarray(from, to + 1);
  let top = from;
  for (let i = from; i <= to; i++) if (wrapped.height[ids[i]!]! > wrapped.height[ids[top]!]!) top = i;
  const v = ids[top]!;
  const share = sharesAlong(positions, ids)[top]!;
  const standOffMm = wrapped.height[v]!;
  const wayMm = edgeLength(wrapped.positions, run);
  const taut = wayMm > flatLength(coarse, run);
  // A loose belt is longer than what it lies round by its gap times the turn; a taut one cuts a hollow short.
  const excessShare = (wayMm - edgeLength(wrapped.foot, run)) / edgeLength(positions, ids);
  return {
    half,
    at: [wrapped.positions[3 * v]!, wrapped.positions[3 * v + 1]!, wrapped.positions[3 * v + 2]!],
    share,
    fromBackMm: edgeLength(positions, ids.subarray(0, top + 1)),
    standOffMm,
    ...reason({ half, share, standOffMm, taut, excessShare, toplineShorter }),
  };
}

interface Seen {
  readonly half: Half;
  readonly share: number;
  readonly standOffMm: number;
  readonly taut: boolean;
  readonly excessShare: number;
  readonly toplineShorter: number;
}

function reason({ half, share, standOffMm, taut, excessShare, toplineShorter }: Seen): Pick<Gape, "why" | "change"> {
  if (share > flank.to) return { why: "instep-hollow", change: { setting: "throatDepthMm", by: throatStepMm } };
  if (!taut) {
    const by = toplineStep * Math.max(1, Math.ceil(excessShare / toplineStep));
    return toplineShorter + by <= usual.most ? { why: "topline-slack", change: { setting: "toplineShorter", by } } : { why: "heel-slack", change: { setting: "springMm", by: springStepMm } };
  }
  const easing = toplineStep * Math.max(1, Math.ceil(-excessShare / toplineStep));
  if (toplineShorter - easing >= usual.least) return { why: "waist-hollow", change: { setting: "toplineShorter", by: -easing } };
  const by = Math.min(mostSideMm, Math.ceil(sidePerMm * (standOffMm - mostStandOffMm)));
  return { why: "waist-hollow", change: { setting: half === "medial" ? "sideHeightMedialMm" : "sideHeightLateralMm", by } };
}

