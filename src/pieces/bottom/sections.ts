import { medialSign, type Last } from "#last/last.ts";
import type { BottomSurface } from "./bottom-surface.ts";
import { hullHeight, lowerHull, type HullLine } from "./lower-hull.ts";
import type { MarginUnder } from "./margin-under.ts";

/** Steps of the sections along the last and of the places across it, mm. */
export const sectionStepMm = 2;
const acrossStepMm = 1;

/**
 * One section x = const through the lasted bottom, without insole and sole, which add the same everywhere in it. Heights in the last's
 * frame, so what lies on the bottom hangs below it; a thickness square to the bottom is `level` of the upright one.
 */
export interface LastedSection {
  readonly x: number;
  /** The straight line over the margins, on which the sole lies. */
  readonly sole: HullLine;
  /** Lowest place of margins and insole. */
  readonly lowest: { readonly z: number; readonly level: number };
  /** Places between the margins, from right to left: y, upright room from the insole down to the sole (below 0 where it stands out), and its level. */
  readonly free: readonly { readonly y: number; readonly roomMm: number; readonly level: number }[];
}

interface Place {
  readonly y: number;
  readonly z: number;
  readonly level: number;
  readonly insideMm: number;
}

/** Sections every 2 mm from seat to toe. */
export function lastedSections(last: Pick<Last, "side" | "landmarks">, surface: BottomSurface, margin: MarginUnder): readonly LastedSection[] {
  const from = last.landmarks.seatPoint[0], to = last.landmarks.toePoint[0];
  const count = Math.max(2, Math.round((to - from) / sectionStepMm));
  const sign = medialSign(last.side);
  const out: LastedSection[] = [];
  for (let k = 1; k < count; k++) {
    const x = from + (k * (to - from)) / count;
    const places = placesAt(surface, x);
    if (places.length > 2) out.push(sectionAt(x, withMarginEnds(places, margin.reachMm), margin, sign));
  }
  return out;
}

function placesAt(surface: BottomSurface, x: number): readonly Place[] {
  const rims = surface.ends(x);
  if (!rims) return [];
  const [low, high] = rims;
  const places: Place[] = [{ ...low, insideMm: 0 }];
  for (let y = Math.ceil(low.y / acrossStepMm + 0.1) * acrossStepMm; y < high.y - 0.1; y += acrossStepMm) {
    const under = surface.at(x, y);
    if (under) places.push({ y, ...under });
  }
  places.push({ ...high, insideMm: 0 });
  return places;
}

/** The places with those put between at which either margin ends. */
function withMarginEnds(places: readonly Place[], reachMm: number): readonly Place[] {
  const out: Place[] = [];
  for (const [i, b] of places.entries()) {
    const a = places[i - 1];
    if (a && a.insideMm < reachMm !== b.insideMm < reachMm) {
      const t = (reachMm - a.insideMm) / (b.insideMm - a.insideMm);
      const mix = (p: number, q: number): number => p + t * (q - p);
      out.push({ y: mix(a.y, b.y), z: mix(a.z, b.z), level: mix(a.level, b.level), insideMm: reachMm });
    }
    out.push(b);
  }
  return out;
}

function sectionAt(x: number, places: readonly Place[], { reachMm, thicknessMm }: MarginUnder, sign: 1 | -1): LastedSection {
  const at: number[] = [], height: number[] = [];
  const free: Place[] = [];
  let lowest = { z: Infinity, level: 1 };
  const middle = (places[0]!.y + places[places.length - 1]!.y) / 2;
  for (const place of places) {
    const under = place.insideMm <= reachMm;
    const z = place.z - (under ? thicknessMm(place.insideMm, x, sign * (place.y - middle)) / place.level : 0);
    if (z < lowest.z) lowest = { z, level: place.level };
    if (under) {
      at.push(place.y);
      height.push(z);
    }
    if (place.insideMm >= reachMm) free.push(place);
  }
  const sole = lowerHull(at, height);
  return { x, sole, lowest, free: free.map(({ y, z, level }) => ({ y, level, roomMm: z - hullHeight(sole, y) })) };
}
