import type { Finding } from "#base/findings.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import type { Last, Placement } from "./last.ts";
import { placeInWords } from "./place-in-words.ts";
import { intoPlacement } from "./placement.ts";

/**
 * What was done to a scan (clean.ts), its places told on the last: in its frame, on its surface, and in the words of the trade.
 * What has no place stays as it is.
 */
export function placeRepairs(repairs: readonly Finding[], last: Last): Finding[] {
  const surface = new ClosestPoint(last.mesh);
  return placedIn(repairs, last.placement).map((f) => {
    if (!f.at) return f;
    const at = surface.find(f.at).point;
    return { ...f, at, data: { ...(f.data as object), where: placeInWords(last, at) } } as Finding;
  });
}

/** The same with the places in a frame, for what is no last. */
export function placedIn(repairs: readonly Finding[], placement: Placement): Finding[] {
  return repairs.map((f) => (f.at ? { ...f, at: intoPlacement(placement, f.at) } : f));
}
