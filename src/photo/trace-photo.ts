import type { Finding } from "#base/findings.ts";
import type { Watch } from "#base/watch.ts";
import type { Outline } from "#plane/outline.ts";
import { rimMm, windowOf, type Box } from "./card.ts";
import { findOutlines, type OutlineKind } from "./find-outlines.ts";
import { fitPlacing } from "./fit-placing.ts";
import { flattenPicture } from "./flatten-picture.ts";
import { greyOf } from "./grey.ts";
import { judgeCard, type PhotoCheck } from "./judge-card.ts";
import { whiteOfCard } from "./light.ts";
import type { Picture } from "./picture.ts";
import type { Placing } from "./placing.ts";
import { printScaleOf, type PrintScale, type SaidOfCard } from "./scale-said.ts";
import { seeCard } from "./see-card.ts";
import { softnessMm } from "./sharpness.ts";

export type { OutlineKind, PhotoCheck, SaidOfCard };

/** What is seen in a photograph, in true millimetres; before {@link inTrueMm} in those of the card as it is drawn. */
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

/** The window is looked at with no more cells than this to a millimetre: edges are found between them. */
const mostCellsPerMm = 8;

/**
 * Finds the card in a picture, takes lens, perspective and uneven light out, and traces what lies in its window.
 * `readyForPhotos()` (image-library.ts) must have been awaited once before. Method: docs/method/photo.md.
 * @throws Refusal with advice, where the picture cannot be as true as 0.3 mm + 0.1 %
 */
export function tracePhoto(picture: Picture, said: SaidOfCard, watch: Watch): TracedPhoto {
  const scale = printScaleOf(said);
  return inTrueMm(traceAsDrawn(picture, watch), scale);
}

/** The same as if the card were printed as it is drawn: all of the work, and none of it hangs on what the maker's rule reads. */
export function traceAsDrawn(picture: Picture, watch: Watch): TracedPhoto {
  watch("card", 0);
  const grey = greyOf(picture);
  const card = seeCard(picture, grey);
  watch("card", 0.7);
  const fit = fitPlacing(card.corners, picture.width, picture.height);
  const check = judgeCard(card.corners, fit, card.paper, softnessMm(grey, card.corners, fit.placing, fit.joint));
  watch("flat", 0);
  const window = windowOf(card.paper, rimMm);
  const stepMm = 1 / Math.min(mostCellsPerMm, Math.max(4, check.pxPerMm));
  const flat = flattenPicture(picture, fit.placing, whiteOfCard(picture, card.paper, fit), window, stepMm, watch);
  watch("outlines", 0);
  const found = findOutlines(flat, fit.joint);
  watch("outlines", 1);
  return {
    outlines: found.outlines.map(({ outline }) => outline),
    kinds: found.outlines.map(({ kind }) => kind),
    check,
    card: fit.placing,
    window,
    findings: found.findings,
  };
}

/** What was traced as the card is drawn, in the millimetres of the card as it was printed. */
export function inTrueMm(drawn: TracedPhoto, { across, up, findings }: PrintScale): TracedPhoto {
  const { outlines, check, card, window } = drawn;
  return {
    ...drawn,
    outlines: outlines.map(({ xy }) => ({ xy: xy.map((v, k) => v * (k % 2 === 0 ? across : up)) })),
    check: { ...check, pxPerMm: check.pxPerMm / Math.sqrt(across * up) },
    card: rescaled(card, across, up),
    window: { minX: window.minX * across, minY: window.minY * up, maxX: window.maxX * across, maxY: window.maxY * up },
    findings: [...findings, ...drawn.findings],
  };
}

/** The same placing for a plane whose millimetres are true ones. */
function rescaled(placing: Placing, across: number, up: number): Placing {
  const homography = placing.homography.map((v, k) => (k % 3 === 0 ? v / across : k % 3 === 1 ? v / up : v));
  return { ...placing, homography };
}
