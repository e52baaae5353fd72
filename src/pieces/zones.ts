import { must } from "#base/bug.ts";

/** A width that holds at a running length. */
export interface Station {
  readonly s: number;
  readonly mm: number;
}

/**
 * Width at a running length, blended between stations so that neither the edge nor its bend jumps: between two stations it
 * follows 6t⁵ − 15t⁴ + 10t³ (value, slope and bend zero or equal at both ends), before the first and after the last it holds.
 * Stations must increase.
 */
export function widthAt(stations: readonly Station[], s: number): number {
  let before = stations[0];
  must(before, "widths need a station");
  if (s <= before.s) return before.mm;
  for (const after of stations) {
    if (s <= after.s) {
      const t = after.s > before.s ? (s - before.s) / (after.s - before.s) : 1;
      return before.mm + (after.mm - before.mm) * t * t * t * (t * (6 * t - 15) + 10);
    }
    before = after;
  }
  return before.mm;
}

/** Stations with each at least `gap` mm after the one before, so that zones that would overlap on an odd last stay in order. */
export function inOrder(stations: readonly Station[], gap = 2): readonly Station[] {
  let last = -Infinity;
  return stations.map(({ s, mm }) => {
    last = Math.max(s, last + gap);
    return { s: last, mm };
  });
}

/** Widths at the running lengths of a line's points. */
export function widthsAlong(arc: Float64Array, width: (s: number) => number): Float64Array {
  const out = new Float64Array(arc.length);
  for (let i = 0; i < out.length; i++) out[i] = width(arc[i]!);
  return out;
}
