import type { TapedHalf, TapedShell, TracedPicture } from "#tape/taped-shell.ts";
import { cardHeights } from "./marks/card-marks.ts";
import { rounded } from "./report-number.ts";

/** A taped pattern as plain data: what was traced, and how the halves fit. Described in docs/report.md. */
export function tapeReport(tape: TapedShell, traced: readonly TracedPicture[]) {
  const { side, medial, lateral, bottom, length, apart } = tape;
  return rounded({
    side,
    lastLengthMm: { value: length.mm, how: length.how },
    medial: halfReport(medial),
    lateral: halfReport(lateral),
    ...(bottom
      ? { bottom: { photo: bottom.photo, lengthMm: bottom.lengthMm, ballWidthMm: bottom.ballWidthMm, seatWidthMm: bottom.seatWidthMm, featherMedialMm: bottom.halves.medial.toToe, featherLateralMm: bottom.halves.lateral.toToe } }
      : {}),
    halvesApart: apart.map(({ share, apartMm }) => ({ share, apartMm })),
    photos: traced.map(({ photo, traced: { check: { rmsPx, tiltDeg, pxPerMm, heldOut } } }) => ({
      name: photo,
      rmsPx,
      tiltDeg,
      pxPerMm,
      heldOut: heldOut.map(({ askedMm, readMm }) => ({ askedMm, readMm })),
    })),
  });
}

function halfReport(half: TapedHalf) {
  const { photo, lengths, slits, points } = half;
  return {
    photo,
    featherMm: lengths.feather,
    backMm: lengths.back,
    toplineMm: lengths.topline,
    throatDepthMm: lengths.centre,
    centreBowMm: lengths.centreBow,
    slits: slits.length,
    slitsOpenMm: lengths.slitsOpen,
    toeToJointMm: lengths.toeToJoint,
    heights: cardHeights(half).map(({ tick, height }) => ({ place: tick, alongFeatherMm: height.alongFeatherMm, heightMm: height.heightMm })),
    points: Object.fromEntries(Object.entries(points).map(([name, { how }]) => [name, how])),
  };
}
