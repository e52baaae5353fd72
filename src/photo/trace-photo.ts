import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import type { Outline } from "#plane/outline.ts";
import { barAcrossMm, barMm, rimMm, windowOf, type Box } from "./card.ts";
import { findOutlines, type OutlineKind } from "./find-outlines.ts";
import { fitPlacing } from "./fit-placing.ts";
import { flattenPicture } from "./flatten-picture.ts";
import { greyOf } from "./grey.ts";
import { judgeCard, type PhotoCheck } from "./judge-card.ts";
import { whiteOfCard } from "./light.ts";
import type { Picture } from "./picture.ts";
import type { Placing } from "./placing.ts";
import { seeCard } from "./see-card.ts";
import { softnessMm } from "./sharpness.ts";

export type { OutlineKind, PhotoCheck };

/** What the maker says about the printed card. */
export interface SaidOfCard {
  /** What her own rule reads on the upright bar (printed 200 mm long). */
  readonly barMm?: number;
  /** The same on the lying bar (printed 100 mm long), where she measured it too. */
  readonly barAcrossMm?: number;
}

export interface TracedPhoto {
  /** Closed, mm on the card's plane, x to the right and y up as seen from above, largest first. */
  readonly outlines: readonly Outline[];
  /** One per outline. */
  readonly kinds: readonly OutlineKind[];
  readonly check: PhotoCheck;
  /** Where the card's plane lies in the picture. */
  readonly card: Placing;
  /** The part of the plane in which outlines are looked for, mm. */
  readonly window: Box;
  readonly findings: readonly Finding[];
}

/** A printer that is farther off than this was told to fit the page, or the bar was misread; put right up to the second. */
const printedTruly = 0.01;
const greatestPrintError = 0.1;
/** The window is looked at with no more cells than this to a millimetre: edges are found between them. */
const mostCellsPerMm = 8;

/**
 * Finds the card in a picture, takes lens, perspective and uneven light out, and traces what lies in its window.
 * `readyForPhotos()` (image-library.ts) must have been awaited once before. Method: docs/method/photo.md.
 * @throws Refusal with advice, where the picture cannot be as true as 0.3 mm + 0.1 %
 */
export function tracePhoto(picture: Picture, said: SaidOfCard, watch: Watch): TracedPhoto {
  const { across, up, findings } = scaleOf(said);
  watch("card", 0);
  const grey = greyOf(picture);
  const card = seeCard(picture, grey);
  watch("card", 0.7);
  const fit = fitPlacing(card.corners, picture.width, picture.height);
  const check = judgeCard(card.corners, fit, card.paper, softnessMm(grey, card.corners, fit.placing, fit.joint));
  watch("flat", 0);
  const box = windowOf(card.paper, rimMm);
  const stepMm = 1 / Math.min(mostCellsPerMm, Math.max(4, check.pxPerMm));
  const flat = flattenPicture(picture, fit.placing, whiteOfCard(picture, card.paper, fit), box, stepMm, watch);
  watch("outlines", 0);
  const found = findOutlines(flat, fit.joint);
  watch("outlines", 1);
  return {
    outlines: found.outlines.map(({ outline: { xy } }) => ({ xy: xy.map((v, k) => v * (k % 2 === 0 ? across : up)) })),
    kinds: found.outlines.map(({ kind }) => kind),
    check: { ...check, pxPerMm: check.pxPerMm / Math.sqrt(across * up) },
    card: rescaled(fit.placing, across, up),
    window: { minX: box.minX * across, minY: box.minY * up, maxX: box.maxX * across, maxY: box.maxY * up },
    findings: [...findings, ...found.findings],
  };
}

/** True millimetres to a printed one, across and up; from what the maker's rule reads on the bars. */
function scaleOf({ barMm: bar, barAcrossMm: lying }: SaidOfCard): { across: number; up: number; findings: Finding[] } {
  const findings: Finding[] = [];
  const ratio = (read: number, printed: number): number => {
    const r = read / printed;
    if (!(Math.abs(r - 1) <= greatestPrintError)) throw new Refusal(finding("photo-bar-off", { barMm: read, printedMm: printed }));
    if (Math.abs(r - 1) > printedTruly) findings.push(finding("photo-printed-off", { barMm: read, printedMm: printed, percent: 100 * (r - 1) }));
    return r;
  };
  if (bar === undefined && lying === undefined) findings.push(finding("photo-bar-not-measured", { printedMm: barMm }));
  const upright = bar === undefined ? undefined : ratio(bar, barMm);
  const level = lying === undefined ? undefined : ratio(lying, barAcrossMm);
  return { up: upright ?? level ?? 1, across: level ?? upright ?? 1, findings };
}

/** The same placing for a plane whose millimetres are true ones. */
function rescaled(placing: Placing, across: number, up: number): Placing {
  const homography = placing.homography.map((v, k) => (k % 3 === 0 ? v / across : k % 3 === 1 ? v / up : v));
  return { ...placing, homography };
}
