import { draftOrder } from "#pieces/draft-order.ts";
import type { LastingSettings } from "#pieces/rules/lasting.ts";
import { nearestOnSegment } from "#last/surface-curve.ts";
import type { Shell } from "#shell/shell.ts";
import { marginCut } from "./draft-margin.ts";
import { jawShares, placeOnRing, type FeatherRing } from "./feather-ring.ts";
import { pullWord, type DraftEnd } from "./lasted.ts";
import type { DraftPlace } from "./pulls.ts";

export interface DraftsAtRest {
  readonly ring: FeatherRing;
  readonly over: Shell;
  readonly onLast: Shell;
  /** x y z of each vertex of the shell where the upper lies, mm. */
  readonly positions: Float64Array;
  readonly margins: LastingSettings;
  /** What holds the edge at each vertex of the ring, N. */
  readonly heldN: Float64Array;
}

/** What became of each draft: how far the net edge has come over the feather line between the jaws, and what is left of the margin inside it. */
export function draftEnds(drafts: readonly DraftPlace[], rest: DraftsAtRest): readonly DraftEnd[] {
  const { ring, positions } = rest;
  const beyond = Float64Array.from(ring.ids, (v) => beyondFeather(rest, positions.subarray(3 * v, 3 * v + 3)));
  return drafts.map((draft) => {
    const shares = jawShares(ring, placeOnRing(ring, rest.onLast, draft));
    let overMm = 0, heldN = 0;
    shares.forEach((share, k) => {
      overMm += share * beyond[k]!;
      if (share > 0) heldN += rest.heldN[k]!;
    });
    const { number, name, half, at, alongMm, pullN, shortMm } = draft;
    return { number, name, ...(half && { half }), at, alongMm, pullN, heldN, word: pullWord(pullN), ...(shortMm !== undefined && { shortMm }), overMm, marginMm: marginCut(draftOrder[number - 1]!, rest.margins) + overMm };
  });
}

/** How far a point lies beyond the feather line, down the wall; below 0 where it stays short of it, mm. */
function beyondFeather({ ring, over: { mesh } }: DraftsAtRest, p: ArrayLike<number>): number {
  let best = 0, at = 0, least = Infinity;
  for (let k = 0; k + 1 < ring.ids.length; k++) {
    const { share, square } = nearestOnSegment(mesh.positions, ring.ids[k]!, ring.ids[k + 1]!, [p[0]!, p[1]!, p[2]!]);
    if (square < least) [best, at, least] = [k, share, square];
  }
  const a = ring.ids[best]!, b = ring.ids[best + 1]!;
  let sum = 0;
  for (let d = 0; d < 3; d++) {
    const foot = mesh.positions[3 * a + d]! + at * (mesh.positions[3 * b + d]! - mesh.positions[3 * a + d]!);
    sum += (p[d]! - foot) * (ring.outward[3 * best + d]! + at * (ring.outward[3 * best + 3 + d]! - ring.outward[3 * best + d]!));
  }
  return sum;
}
