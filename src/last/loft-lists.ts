import { form, toePlans, type LoftNumbers } from "./loft-numbers.ts";

/** The lists that the numbers of one last are worked into, in the order they are kept in. */
export const listNames = ["halfWidth", "bottomLean", "ridgeLean", "ridge", "square", "standOut", "standOutAt", "feather", "tilt", "bottomBulge"] as const;
export type Lists = Readonly<Record<(typeof listNames)[number], readonly number[]>>;

/** From seat to forepart the two widths pass over into each other. */
const toBall = [0, 0, 0, 0.1, 0.4, 0.75, 1, 1, 1, 1, 1];
/** What walls stand out more at a share of the length, for what they do at seat and ball. */
export function standOutBetween([seat, ball]: readonly [number, number], share: number): number {
  const at = Math.max(0, Math.min(form.spans - 1e-9, share * form.spans));
  const i = Math.floor(at);
  return seat + (ball - seat) * (toBall[i]! + (at - i) * (toBall[i + 1]! - toBall[i]!));
}

const shank = [0, 0, 0, 0.4, 1, 0.7, 0.1, 0, 0, 0, 0];
/** Where the squareness of joints, waist, heel and cone bears. */
const squarerAt = [
  [0, 0, 0, 0, 0, 0.2, 0.7, 1, 0.9, 0.6, 0.4],
  [0, 0, 0, 0, 0.3, 0.8, 1, 0.4, 0, 0, 0],
  [0.9, 1, 0.6, 0.1, 0, 0, 0, 0, 0, 0, 0],
  [0, 0.2, 0.6, 1, 0.9, 0.4, 0, 0, 0, 0, 0],
];

/** The lists of the form, with the numbers of one last worked in. */
export function shapedLists(n: LoftNumbers): Lists {
  const plan = toePlans[n.toe];
  const widths = [...form.halfWidth, ...plan.halfWidth];
  const [joints, waist, instep] = n.rise;
  const rise = [instep, instep, instep, instep, instep, instep, waist, joints, 1 + 0.8 * (joints - 1), 1 + 0.45 * (joints - 1), 1 + 0.2 * (joints - 1)];
  const [fullWaist, fullInstep, fullHeel] = n.fullnessMm;
  const fuller = [0.6 * fullHeel, fullHeel, 0.7 * fullHeel + 0.4 * fullInstep, 0.2 * fullHeel + fullInstep, fullInstep + 0.4 * fullWaist, 0.6 * fullInstep + fullWaist, fullWaist, 0.3 * fullWaist, 0, 0, 0];
  const seatBulge = Math.min(1, (0.4 * n.heelHeightMm) / form.bottomBulge[0]);
  const [seatOut, ballOut] = n.plan?.standOutMm ?? [0, 0];
  const lessOut = n.plan ? n.shankMm : 0;
  const squarer = form.square.map((_, i) => n.squareness.reduce((sum, v, k) => sum + v * squarerAt[k]![i]!, 0));
  return {
    halfWidth: widths.map((v, i) => v * (n.seatScale + (n.ballScale - n.seatScale) * toBall[i]!) + n.shankMm * shank[i]!),
    bottomLean: form.bottomLean.map((v) => v * n.ballScale),
    ridgeLean: form.ridgeLean.map((v) => v * n.ballScale),
    ridge: form.ridge.map((v, i) => v * rise[i]!),
    square: form.square.map((v, i) => v + squarer[i]!),
    standOut: form.standOut.map((v, i) => Math.max(0.2, v + fuller[i]! + seatOut + (ballOut - seatOut) * toBall[i]! - lessOut * shank[i]!)),
    standOutAt: form.standOutAt.map((v) => v * n.backScale),
    feather: form.arch.map((v, i) => v + form.heelShare[i]! * n.heelHeightMm + form.springShare[i]! * n.toeSpringMm + form.treadShare[i]! * n.treadMm),
    tilt: [...form.tilt],
    bottomBulge: form.bottomBulge.map((v, i) => v * (i < 4 ? seatBulge : 1)),
  };
}

