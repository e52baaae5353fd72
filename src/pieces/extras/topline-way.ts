import type { Half } from "#lines/feather.ts";
import { edgeLength } from "../net-upper.ts";
import type { NetPanel } from "../panel.ts";

/** A place on a topline edge of one panel. */
export interface ToplinePlace {
  readonly panel: number;
  readonly edge: number;
  readonly s: number;
}

/** A stretch of one half's topline on one panel: from its end toward the throat to its end toward the back. */
interface Stretch {
  readonly panel: number;
  readonly edge: number;
  readonly from: number;
  readonly to: number;
}

/** The topline of one half over all panels, walked from the throat to the back as if it were not cut. */
export function toplinePlace(panels: readonly NetPanel[], half: Half, behindThroatMm: number): ToplinePlace | undefined {
  let left = behindThroatMm;
  for (const { panel, edge, from, to } of stretches(panels, half)) {
    const mm = Math.abs(to - from);
    if (left <= mm) return { panel, edge, s: from + (to > from ? left : -left) };
    left -= mm;
  }
  return undefined;
}

/**
 * The half's stretches, nearest to the throat first. Edges run counter-clockwise round the piece, so the topline runs toward the throat
 * on the inner half and away from it on the outer one. Past a heel without a seam an edge goes on from the outer half into the inner one.
 */
function stretches(panels: readonly NetPanel[], half: Half): readonly Stretch[] {
  const near: Stretch[] = [], far: Stretch[] = [];
  for (const [panel, { edges, places }] of panels.entries())
    for (const [edge, e] of edges.entries()) {
      if (e.role !== "topline" || (e.half && e.half !== half)) continue;
      const end = edgeLength(e);
      const throat = places.find((p) => p.name === "throat" && p.edge === edge)?.s;
      if (throat === undefined) {
        far.push({ panel, edge, from: half === "medial" ? end : 0, to: half === "medial" ? 0 : end });
        continue;
      }
      const back = places.find((p) => p.name === "back" && p.edge === edge && p.s > throat && p.s < end)?.s;
      near.push({ panel, edge, from: throat, to: half === "medial" ? 0 : (back ?? end) });
      if (back !== undefined && half === "medial") far.push({ panel, edge, from: end, to: back });
    }
  return [...near, ...far];
}
