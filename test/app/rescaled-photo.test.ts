import { expect, test } from "vitest";
import { flatView } from "#photo/flat-view.ts";
import type { Placing } from "#photo/placing.ts";
import { printScaleOf } from "#photo/scale-said.ts";
import { inTrueMm, type TracedPhoto } from "#photo/trace-photo.ts";
import type { SeenPhoto } from "#app/photo-talk.ts";
import { rescaledPhoto } from "#app/state/rescaled-photo.ts";

// A picture of 400 by 300 px, straight above a plane of 2 px to a millimetre.
const card: Placing = { homography: Float64Array.from([0.02, 0, -2, 0, -0.02, 1.5, 0, 0, 1]), k1: 0, k2: 0, centrePx: [200, 150], radiusPx: 100 };
const drawn: TracedPhoto = { outlines: [{ xy: Float64Array.from([30, 30, 90, 30, 60, 80]) }], kinds: ["cut piece"], check: { rmsPx: 0, tiltDeg: 0, heldOut: [], pxPerMm: 2 }, card, window: { minX: 26, minY: 26, maxX: 126, maxY: 106 }, findings: [] };
const picture = { width: 400, height: 300, rgba: Uint8Array.from({ length: 400 * 300 * 4 }, (_, k) => (k * 7919) % 251) };

const seenAt = (barMm: number): { readonly traced: TracedPhoto; readonly seen: SeenPhoto } => {
  const traced = inTrueMm(drawn, printScaleOf({ barMm }));
  const pxPerMm = 2 / (barMm / 200);
  const { width, height, rgba } = flatView(picture, traced, pxPerMm);
  const { outlines, kinds, check, findings, window } = traced;
  return { traced, seen: { flat: { width, height, rgba: new Uint8ClampedArray(rgba.buffer as ArrayBuffer), pxPerMm, minX: window.minX, maxY: window.maxY }, outlines, kinds, check, findings } };
};

test("a photograph laid flat once and rescaled is what it would be laid flat anew, pixel for pixel", () => {
  const before = seenAt(200), anew = seenAt(196.5);
  const now = rescaledPhoto(before.seen, anew.traced);
  expect([now.flat.width, now.flat.height]).toEqual([anew.seen.flat.width, anew.seen.flat.height]);
  expect(now.flat.pxPerMm).toBeCloseTo(anew.seen.flat.pxPerMm, 12);
  expect([now.flat.minX, now.flat.maxY]).toEqual([anew.seen.flat.minX, anew.seen.flat.maxY]);
  expect(now.outlines).toEqual(anew.seen.outlines);
  let worst = 0;
  now.flat.rgba.forEach((v, k) => (worst = Math.max(worst, Math.abs(v - anew.seen.flat.rgba[k]!))));
  // A value that ends on a half may be rounded the other way.
  expect(worst).toBeLessThanOrEqual(1);
});
