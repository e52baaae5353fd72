import type { TapedHalf, TapedShell, TracedPicture } from "#tape/taped-shell.ts";
import { cardHeights } from "./marks/card-marks.ts";
import { round } from "./report-number.ts";

/** A taped pattern as plain data: what was traced, and how the halves fit. Described in docs/report.md. */
export function tapeReport(tape: TapedShell, traced: readonly TracedPicture[]) {
  const { side, medial, lateral, bottom, length, apart } = tape;
  return {
    side,
    lastLengthMm: { value: round(length.mm), how: length.how },
    medial: halfReport(medial),
    lateral: halfReport(lateral),
    ...(bottom
      ? { bottom: { photo: bottom.photo, lengthMm: round(bottom.lengthMm), ballWidthMm: round(bottom.ballWidthMm), seatWidthMm: round(bottom.seatWidthMm), featherMedialMm: round(bottom.halves.medial.toToe), featherLateralMm: round(bottom.halves.lateral.toToe) } }
      : {}),
    halvesApart: apart.map(({ share, apartMm }) => ({ share, apartMm: round(apartMm) })),
    photos: traced.map(({ photo, traced: { check } }) => ({
      name: photo,
      rmsPx: round(check.rmsPx),
      tiltDeg: round(check.tiltDeg),
      pxPerMm: round(check.pxPerMm),
      heldOut: check.heldOut.map(({ askedMm, readMm }) => ({ askedMm: round(askedMm), readMm: round(readMm) })),
    })),
  };
}

function halfReport(half: TapedHalf) {
  const { photo, lengths, slits, points } = half;
  return {
    photo,
    featherMm: round(lengths.feather),
    backMm: round(lengths.back),
    toplineMm: round(lengths.topline),
    throatDepthMm: round(lengths.centre),
    centreBowMm: round(lengths.centreBow),
    slits: slits.length,
    slitsOpenMm: round(lengths.slitsOpen),
    toeToJointMm: round(lengths.toeToJoint),
    heights: cardHeights(half).map(({ tick, height }) => ({ place: tick, alongFeatherMm: round(height.alongFeatherMm), heightMm: round(height.heightMm) })),
    points: Object.fromEntries(Object.entries(points).map(([name, { how }]) => [name, how])),
  };
}
