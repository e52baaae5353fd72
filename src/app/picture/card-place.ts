import { useState } from "react";
import type { Last } from "#last/last.ts";

/** How the card lies on the screen: toe upward, as the last is looked down upon; v points to the left. */
export interface CardPlace {
  readonly pxPerMm: number;
  readonly x: (u: number, v: number) => number;
  readonly y: (u: number, v: number) => number;
}

interface Box {
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}

/** Free px at the sides, and above and below (the scale bar stands there). */
const sides = 56;
const ends = 96;

function boxOf(outline: Float64Array): Box {
  let [u0, u1, v0, v1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < outline.length; i += 2) {
    u0 = Math.min(u0, outline[i]!);
    u1 = Math.max(u1, outline[i]!);
    v0 = Math.min(v0, outline[i + 1]!);
    v1 = Math.max(v1, outline[i + 1]!);
  }
  return { u0, u1, v0, v1 };
}

const scaleFor = (b: Box, width: number, height: number): number => Math.max(0.1, Math.min((width - sides) / (b.v1 - b.v0), (height - ends) / (b.u1 - b.u0)));

function placeCard(outline: Float64Array, width: number, height: number): CardPlace {
  const b = boxOf(outline);
  const pxPerMm = scaleFor(b, width, height);
  return {
    pxPerMm,
    x: (_, v) => width / 2 - (v - (b.v0 + b.v1) / 2) * pxPerMm,
    y: (u) => (height - 40) / 2 + 8 - (u - (b.u0 + b.u1) / 2) * pxPerMm,
  };
}

/** True while the card still lies inside the frame and is not much smaller than it could be. */
function stillFits(place: CardPlace, outline: Float64Array, width: number, height: number): boolean {
  const b = boxOf(outline);
  const inside = place.x(0, b.v1) >= 10 && place.x(0, b.v0) <= width - 10 && place.y(b.u1, 0) >= 10 && place.y(b.u0, 0) <= height - 40;
  return inside && place.pxPerMm > 0.88 * scaleFor(b, width, height);
}

/** Keeps the card where it lies as long as it fits, so that what is dragged stays under the finger. */
export function useCardPlace(outline: Float64Array, width: number, height: number, last: Last): CardPlace {
  const [kept, keep] = useState<{ readonly place: CardPlace; readonly width: number; readonly height: number; readonly last: Last }>();
  if (kept && kept.width === width && kept.height === height && kept.last === last && stillFits(kept.place, outline, width, height)) return kept.place;
  const place = placeCard(outline, width, height);
  // A frame too small for its margins is not laid out yet; nothing would ever fit in it.
  if (width > 2 * sides && height > 2 * ends) keep({ place, width, height, last });
  return place;
}
