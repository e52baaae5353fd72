import type { Point3 } from "#last/last.ts";
import { halves, type Half } from "#lines/feather.ts";
import type { Wrapped } from "#wrap/wrap.ts";
import type { CheckInput } from "./check-input.ts";
import { remedyFor, type Remedy } from "./check-remedy.ts";
import { mostStandOffMm, sharesAlong } from "./check-rows.ts";
import { edgeLength, flatLength } from "./edge-length.ts";
import { toplineOf } from "./tension.ts";

/** A run of topline that stands off by more than a maker lets pass. */
export interface Gape extends Remedy {
  readonly half: Half;
  /** The card where it stands off most, mm in the last's frame. */
  readonly at: Point3;
  /** Where that is along the half, from the back point (0) to the throat (1), and the same in mm on the last. */
  readonly share: number;
  readonly fromBackMm: number;
  readonly standOffMm: number;
  /** How far the same run stands off at most under a hand twice as firm and one half as firm, mm. */
  readonly firmMm: number;
  readonly lightMm: number;
}

/** The card laid back under the usual hand, under one that is firmer, and under one that is lighter. */
export type LaidBack = Readonly<Record<"usual" | "firm" | "light", Wrapped>>;

/** Finds where the wrapped card's topline stands off, and why. */
export function findGapes(input: CheckInput, laid: LaidBack): readonly Gape[] {
  return halves.flatMap((half) => runs(toplineOf(input.coarse.shell, half), laid.usual.height).map((run) => gapeOf(input, laid, half, run))).filter(throatOnce);
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

function gapeOf(input: CheckInput, { usual, firm, light }: LaidBack, half: Half, [from, to]: readonly [number, number]): Gape {
  const { coarse } = input;
  const ids = toplineOf(coarse.shell, half);
  const { positions } = coarse.shell.mesh;
  const run = ids.subarray(from, to + 1);
  let top = from;
  for (let i = from; i <= to; i++) if (usual.height[ids[i]!]! > usual.height[ids[top]!]!) top = i;
  const v = ids[top]!;
  const share = sharesAlong(positions, ids)[top]!;
  const standOffMm = usual.height[v]!;
  const most = ({ height }: Wrapped): number => run.reduce((mm, u) => Math.max(mm, height[u]!), 0);
  const wayMm = edgeLength(usual.positions, run);
  const taut = wayMm > flatLength(coarse, run);
  // A loose belt is longer than what it lies round by its gap times the turn; a taut one cuts a hollow short.
  const excessShare = (wayMm - edgeLength(usual.foot, run)) / edgeLength(positions, ids);
  return {
    half,
    at: [usual.positions[3 * v]!, usual.positions[3 * v + 1]!, usual.positions[3 * v + 2]!],
    share,
    fromBackMm: edgeLength(positions, ids.subarray(0, top + 1)),
    standOffMm,
    firmMm: most(firm),
    lightMm: most(light),
    ...remedyFor({ half, share, standOffMm, taut, excessShare }, input),
  };
}
