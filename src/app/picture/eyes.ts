import type { Eye } from "./last-scene.ts";

export const eyeNames = ["above", "outer side", "inner side", "back", "toe", "below"] as const;
export type EyeName = (typeof eyeNames)[number];

/** Places to look from, for a last whose inner side is on its left (+y). */
export const eyes: Readonly<Record<EyeName, Eye>> = {
  above: { turnDeg: 197, riseDeg: 52 },
  "outer side": { turnDeg: 262, riseDeg: 14 },
  "inner side": { turnDeg: 98, riseDeg: 14 },
  back: { turnDeg: 180, riseDeg: 12 },
  toe: { turnDeg: 0, riseDeg: 24 },
  below: { turnDeg: 180, riseDeg: -75 },
};

/** The same at the first station, where the last is looked over: square to it, so that the line can be held against the eye. */
export const squareEyes: Readonly<Record<EyeName, Eye>> = {
  above: { turnDeg: 180, riseDeg: 89.9 },
  "outer side": { turnDeg: 270, riseDeg: 4 },
  "inner side": { turnDeg: 90, riseDeg: 4 },
  back: { turnDeg: 180, riseDeg: 6 },
  toe: { turnDeg: 0, riseDeg: 10 },
  below: { turnDeg: 180, riseDeg: -89.9 },
};
