import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { windowOf, type CardPaper } from "./card.ts";
import { onPlane, type Fit } from "./fit-placing.ts";
import { pxPerMmAt, tiltDegOf } from "./pose.ts";
import { toPlane } from "./placing.ts";
import type { SeenCorner } from "./see-card.ts";

/** How good the picture is, for showing. */
export interface PhotoCheck {
  /** Root mean square distance of the seen corners from where the fit puts them, px. */
  readonly rmsPx: number;
  /** How far the camera looked from straight down. */
  readonly tiltDeg: number;
  /** Lengths between corners that had no part in the fit: as printed, and as read from the picture. */
  readonly heldOut: readonly { readonly askedMm: number; readonly readMm: number }[];
  readonly pxPerMm: number;
}

/** Fewer pixels than this to a millimetre and slits and corners are lost. */
const leastPxPerMm = 3.5;
/** Beyond this the far side is squeezed and thickness shows (35° leaves 82 % of the pixels across). */
const greatestTiltDeg = 35;
/** Usual acceptance of a fit: below half a pixel good, above one rejected; a fine picture may show the paper's own unevenness. */
const greatestRmsPx = 1;
const greatestRmsMm = 0.125;
/** Smooth part of what the fit leaves, mm: paper that does not lie flat. */
const greatestBendMm = 0.12;
/** Blur, standard deviation, mm. */
const greatestSoftMm = 0.4;
/** What a length may be off: from the noise of corners and the height of the paper. */
const allowedMm = (length: number): number => 0.3 + 0.001 * length;

/**
 * Whether the picture can be as true as it must be.
 * @throws Refusal with advice when not
 */
export function judgeCard(corners: readonly SeenCorner[], fit: Fit, paper: CardPaper, softMm: number): PhotoCheck {
  const w = windowOf(paper, 0);
  const spots = [[(w.minX + w.maxX) / 2, (w.minY + w.maxY) / 2], [w.minX, w.minY], [w.minX, w.maxY], [w.maxX, w.minY], [w.maxX, w.maxY]] as const;
  const pxPerMm = pxPerMmAt(fit.placing, ...spots[0]);
  const least = Math.min(...spots.map((s) => pxPerMmAt(fit.placing, ...s)));
  const tiltDeg = tiltDegOf(fit.placing);
  if (tiltDeg > greatestTiltDeg) throw new Refusal(finding("photo-too-oblique", { tiltDeg, mostDeg: greatestTiltDeg }));
  if (least < leastPxPerMm) throw new Refusal(finding("photo-too-coarse", { pxPerMm: least, leastPxPerMm }));
  if (softMm > greatestSoftMm) throw new Refusal(finding("photo-blurred", { softMm, mostMm: greatestSoftMm }));
  const bendMm = bendOf(corners, fit) / pxPerMm;
  if (bendMm > greatestBendMm) throw new Refusal(finding("photo-card-bent", { bendMm, mostMm: greatestBendMm }));
  if (fit.rmsPx > greatestRmsPx && fit.rmsPx / pxPerMm > greatestRmsMm) throw new Refusal(finding("photo-uneven-fit", { rmsPx: fit.rmsPx, mostPx: greatestRmsPx }));
  const heldOut = heldOutLengths(corners, fit);
  for (const { askedMm, readMm } of heldOut) {
    if (Math.abs(readMm - askedMm) > allowedMm(askedMm)) throw new Refusal(finding("photo-length-off", { askedMm, readMm, allowedMm: allowedMm(askedMm) }));
  }
  return { rmsPx: fit.rmsPx, tiltDeg, heldOut, pxPerMm };
}

/**
 * Lengths between far corners of the same sheet that had no part in the fit. Where an end is seen is the mean over the three
 * held-out corners nearest to it, so that the noise of a single corner is not taken for an error of scale.
 */
function heldOutLengths(corners: readonly SeenCorner[], fit: Fit): PhotoCheck["heldOut"] {
  return (["left", "right"] as const).flatMap((half) => {
    const mine = corners.filter((c, i) => fit.heldOut[i] && c.half === half);
    if (mine.length < 4) return [];
    const most = (of: (c: SeenCorner) => number): SeenCorner => mine.reduce((a, b) => (of(b) > of(a) ? b : a));
    const [ne, nw, sw, se] = [most((c) => c.xMm + c.yMm), most((c) => c.yMm - c.xMm), most((c) => -c.xMm - c.yMm), most((c) => c.xMm - c.yMm)];
    return [[nw, sw], [ne, se], [nw, ne], [sw, se], [sw, ne], [nw, se]].flatMap((pair) => {
      const [a, b] = pair as [SeenCorner, SeenCorner];
      const askedMm = Math.sqrt((a.xMm - b.xMm) ** 2 + (a.yMm - b.yMm) ** 2);
      if (askedMm < 80) return [];
      const [ax, ay] = readPlace(a, mine, fit), [bx, by] = readPlace(b, mine, fit);
      return [{ askedMm, readMm: Math.sqrt((ax - bx) ** 2 + (ay - by) ** 2) }];
    });
  });
}

/** Where a corner is read on the plane: as printed, moved by the mean error of the three corners nearest to it. */
function readPlace(corner: SeenCorner, among: readonly SeenCorner[], { placing, joint }: Fit): [number, number] {
  const far = (c: SeenCorner): number => (c.xMm - corner.xMm) ** 2 + (c.yMm - corner.yMm) ** 2;
  const near = among.toSorted((a, b) => far(a) - far(b)).slice(0, 3);
  const [x, y] = onPlane(corner, joint);
  return near.reduce<[number, number]>(
    ([u, v], c) => {
      const seen = toPlane(placing, c.xPx, c.yPx), printed = onPlane(c, joint);
      return [u + (seen[0] - printed[0]) / near.length, v + (seen[1] - printed[1]) / near.length];
    },
    [x, y],
  );
}

/** Root mean square of the errors that neighbours have in common, px: noise of single corners cancels, bent paper does not. */
function bendOf(corners: readonly SeenCorner[], { errors, joint, rmsPx }: Fit): number {
  const at = corners.map((c) => onPlane(c, joint));
  const reach = 35;
  let sum = 0, count = 0;
  corners.forEach((c, i) => {
    let x = 0, y = 0, n = 0;
    corners.forEach((d, k) => {
      if (d.half !== c.half || (at[i]![0] - at[k]![0]) ** 2 + (at[i]![1] - at[k]![1]) ** 2 > reach * reach) return;
      const far = errors[2 * k]! ** 2 + errors[2 * k + 1]! ** 2;
      // A single corner that was seen wrongly is no bend.
      if (far > (8 * rmsPx + 1) ** 2) return;
      x += errors[2 * k]!;
      y += errors[2 * k + 1]!;
      n++;
    });
    if (n < 3) return;
    // What n corners with unrelated errors of this size would leave is taken off.
    sum += Math.max(0, (x * x + y * y) / (n * n) - (rmsPx * rmsPx) / n);
    count++;
  });
  return Math.sqrt(sum / Math.max(1, count));
}
