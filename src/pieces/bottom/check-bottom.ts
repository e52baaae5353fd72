import { finding, type Finding } from "#base/findings.ts";
import type { Point3 } from "#last/last.ts";
import type { PieceSettings } from "../settings.ts";
import type { FillerRoom } from "./filler.ts";
import type { HeelLayer } from "./heel-stack.ts";
import type { LevelSeat } from "./seat.ts";
import type { ShankPlace } from "./shank.ts";

/** A hollow less deep is not filled, one deeper than this is unusual (cork of 2 to 3 mm is common practice, no source). */
const leastFillMm = 0.3, usualFillMm = 4;
/** So much of an insole that stands out is hammered down with the sole (our own limit). */
const proudMm = 0.3;
/** A seat that leans more is a fault of the last's stand; a sole that rises more off the heel at the breast shows light (our own limits). */
const leanDeg = 3, breastOffMm = 1;
/** Flat pumps have heels up to 25 mm (common practice, no source). */
const usualHeelMm = 25;

export function checkShank({ shortOfJointMm, boardShortMm, longestMm }: ShankPlace, { shankMm, shankFrontMm }: PieceSettings): readonly Finding[] {
  if (shortOfJointMm < shankFrontMm - 1e-9) return [finding("shank-near-joint", { lengthMm: shankMm, shortMm: shortOfJointMm, neededMm: shankFrontMm })];
  return shortOfJointMm < boardShortMm - 1e-9 ? [finding("shank-beyond-board", { lengthMm: shankMm, byMm: boardShortMm - shortOfJointMm, longestMm: Math.floor(2 * longestMm) / 2 })] : [];
}

export function checkFiller({ mostMm, mostAt, proudMm: proud, proudAt }: FillerRoom, seatX: number): readonly Finding[] {
  return [
    ...(mostMm < leastFillMm ? [finding("filler-nothing", { mostMm })] : []),
    ...(mostMm > usualFillMm ? [finding("filler-deep", { mostMm, usualMm: usualFillMm, fromSeatMm: mostAt[0] - seatX }, mostAt)] : []),
    ...(proud > proudMm ? [finding("insole-proud", { proudMm: proud, fromSeatMm: proudAt[0] - seatX }, proudAt)] : []),
  ];
}

/** `at`: the seat point, of which all these speak. */
export function checkHeel(seat: LevelSeat, layers: readonly HeelLayer[], { splitLiftMm }: PieceSettings, heelMm: number, at: Point3): readonly Finding[] {
  const { backMm, breastMm, pitchDeg } = seat;
  if (Math.min(backMm, breastMm) < 0) return [finding("heel-below-ground", { belowMm: -Math.min(backMm, breastMm), heelMm }, at)];
  if (layers.length === 0) return [finding("heel-none", { heightMm: Math.max(backMm, breastMm) }, at)];
  const off = seat.edge.reduce((most, { offMm }) => Math.max(most, offMm), 0);
  return [
    ...(layers.length === 1 ? [finding("heel-top-piece-only", { backMm, breastMm }, at)] : []),
    ...(Math.abs(pitchDeg) > leanDeg ? [finding("heel-wedge", { backMm, breastMm, degrees: pitchDeg }, at)] : []),
    ...(backMm > usualHeelMm ? [finding("heel-high", { backMm, usualMm: usualHeelMm }, at)] : []),
    ...(off > splitLiftMm ? [finding("split-lift-thin", { offMm: off, leatherMm: splitLiftMm }, at)] : []),
    ...(seat.breastOffMm > breastOffMm ? [finding("heel-breast-open", { offMm: seat.breastOffMm }, at)] : []),
  ];
}

/** The pieces that there should be: one whose end does not meet both edges of the bottom could not be drawn. */
export const checkDrawn = (names: readonly string[], layers: readonly HeelLayer[], splitLift: boolean): readonly Finding[] =>
  ["second insole board", ...(splitLift ? ["split lift"] : []), ...layers.map(({ name }) => name), "sock"].filter((piece) => !names.includes(piece)).map((piece) => finding("bottom-line-misses", { piece }));
