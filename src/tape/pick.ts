import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { hullOf } from "#plane/hull.ts";
import { area } from "#plane/measure.ts";
import type { Outline } from "#plane/outline.ts";
import { findCorners, type Corner, type CornerName, cornerNames } from "./corners.ts";
import type { FoundHalf } from "./half.ts";
import { markWords } from "./mark-words.ts";
import { nearestPlace, ringOf, type Ring, type Xy } from "./ring.ts";
import type { TapeMark, TapePlace, TapeSaid } from "./said.ts";
import { bridgeSlits } from "./slits.ts";
import type { TapedHalfName, TracedPicture } from "./taped-shell.ts";

/** A mark that the maker placed farther off every outline than this is not taken, mm. */
const reachMm = 12;
/** Less than this is a scrap, mm². */
const leastAreaMm2 = 4000;
/** Share of its hull that an outline fills: a half is hollow along its topline, a bottom nearly none. */
const fullestHalf = 0.88;

export interface Picked {
  readonly halves: readonly (FoundHalf & { readonly called?: TapedHalfName; readonly joints: Partial<Record<TapedHalfName, Corner>> })[];
  readonly bottoms: readonly { readonly photo: string; readonly outline: number; readonly traced: Outline; readonly said: Partial<Record<TapeMark, Xy>> }[];
  /** Outlines that have a half's size and are hollow as it is, but whose corners could not be told. */
  readonly unclear: readonly string[];
  /** Marks that lie off every outline. */
  readonly astray: readonly { readonly mark: TapeMark; readonly offMm: number }[];
}

/** Which of the traced outlines are halves of the upper and which the bottom, by shape and by the maker's marks. */
export function pick(pictures: readonly TracedPicture[], said: TapeSaid): Picked {
  const halves: Picked["halves"][number][] = [], bottoms: Picked["bottoms"][number][] = [], unclear: string[] = [];
  const marks = Object.entries(said.marks ?? {}) as [TapeMark, TapePlace][];
  const nearest = new Map<TapeMark, number>();
  for (const { photo, traced } of pictures) {
    const large = traced.outlines.map((outline, index) => ({ outline, index })).filter(({ outline }) => area(outline) >= leastAreaMm2);
    const rings = large.map(({ outline, index }) => ({ index, outline, raw: ringOf(outline) }));
    const here = marks.filter(([, place]) => place.photo === photo);
    const belongs = new Map<number, [TapeMark, Xy][]>();
    for (const [mark, place] of here) {
      const [best] = rings.map(({ index, raw }) => ({ index, distance: nearestPlace(raw, place.at).distance })).sort((a, b) => a.distance - b.distance);
      nearest.set(mark, best?.distance ?? Infinity);
      if (!best || best.distance > reachMm) continue;
      belongs.set(best.index, [...(belongs.get(best.index) ?? []), [mark, place.at]]);
    }
    for (const { index, outline, raw } of rings) {
      const own = belongs.get(index) ?? [];
      refuseContradiction(photo, own);
      const asBottom = own.some(([mark]) => mark.startsWith("bottom"));
      const { ring, slits } = bridgeSlits(raw);
      const full = area({ xy: ring.xy }) / hullArea(ring.xy);
      if (asBottom || (own.length === 0 && full >= fullestHalf)) {
        if (asBottom || isBottom(ring)) bottoms.push({ photo, outline: index, traced: outline, said: Object.fromEntries(own) });
        continue;
      }
      const corner = own.find(([mark]) => !mark.startsWith("joint"))?.[0];
      const called = corner && (corner.endsWith("Medial") ? "medial" : "lateral");
      const corners = findCorners(ring, cornersSaid(ring, own));
      if (!corners) unclear.push(photo);
      else halves.push({ photo, outline: index, ring, slits, corners, joints: jointsSaid(ring, own), ...(called ? { called } : {}) });
    }
  }
  const astray = marks.map(([mark]) => ({ mark, offMm: nearest.get(mark) ?? Infinity })).filter(({ offMm }) => offMm > reachMm);
  return { halves, bottoms, unclear, astray };
}

/** A piece is the inner half, the outer half or the bottom: marks that name two of these cannot all be meant for it. */
function refuseContradiction(photo: string, own: readonly [TapeMark, Xy][]): void {
  const named = (mark: TapeMark): string => (mark.startsWith("bottom") ? "bottom" : mark.endsWith("Medial") ? "medial" : "lateral");
  const [first, ...rest] = own.map(([mark]) => mark);
  const against = rest.find((mark) => named(mark) !== named(first!));
  if (against) throw new Refusal(finding("tape-marks-contradict", { photo, marks: [markWords(first!), markWords(against)] }));
}

const snapped = (ring: Ring, at: Xy): Corner => {
  const { s } = nearestPlace(ring, at);
  return { s, at, how: "said" };
};

function cornersSaid(ring: Ring, own: readonly [TapeMark, Xy][]): Partial<Record<CornerName, Corner>> {
  return Object.fromEntries(cornerNames.flatMap((name) => own.flatMap(([mark, at]) => (mark === `${name}Medial` || mark === `${name}Lateral` ? [[name, snapped(ring, at)] as const] : []))));
}

function jointsSaid(ring: Ring, own: readonly [TapeMark, Xy][]): Partial<Record<TapedHalfName, Corner>> {
  const found: Partial<Record<TapedHalfName, Corner>> = {};
  for (const [mark, at] of own) {
    if (mark === "jointMedial") found.medial = snapped(ring, at);
    if (mark === "jointLateral") found.lateral = snapped(ring, at);
  }
  return found;
}

/** Long and slim as a bottom: a card, a book or a sheet of paper in the picture is not. */
function isBottom({ xy }: Ring): boolean {
  const { long, wide } = extent(xy);
  return long >= 190 && long <= 340 && wide / long >= 0.22 && wide / long <= 0.45;
}

/** Longest distance of two points, and the extent square to it, mm. */
function extent(xy: Float64Array): { readonly long: number; readonly wide: number } {
  const hull = hullOf(xy);
  let long = 0, dx = 1, dy = 0;
  for (const a of hull) for (const b of hull) {
    const d = Math.hypot(a[0] - b[0], a[1] - b[1]);
    if (d > long) [long, dx, dy] = [d, b[0] - a[0], b[1] - a[1]];
  }
  const off = hull.map(([x, y]) => (y * dx - x * dy) / (long || 1));
  return { long, wide: Math.max(...off) - Math.min(...off) };
}

function hullArea(xy: Float64Array): number {
  return area({ xy: Float64Array.from(hullOf(xy).flat()) });
}
