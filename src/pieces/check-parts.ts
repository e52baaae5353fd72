import { finding, type Finding } from "#base/findings.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { bendsOf, mostBends } from "./even.ts";
import { checkAllowances } from "./check/allowances.ts";
import { checkBalance } from "./check/balance.ts";
import { checkCentre } from "./check/centre.ts";
import { checkFolds } from "./check/folds.ts";
import { checkLinings } from "./check/lining.ts";
import { checkLastingMargins } from "./check/margins.ts";
import { narrowest } from "./check/neck.ts";
import { checkSeams } from "./check/seams.ts";
import { shownAt, type ToCheck } from "./check/to-check.ts";
import { cutPanels } from "./check/widths.ts";
import { roughly } from "./check/words.ts";
import type { Material } from "./piece.ts";

/** Narrower than this a part of a piece tears or cannot be stitched, mm (common practice, no source: a row of stitches 1.5 mm from either edge). */
const leastWidthMm = 4;
/** What is stitched or would tear: stiffener, puff and split lift run out to nothing as they are skived, a shank is narrow by itself. */
const stitched: ReadonlySet<Material> = new Set<Material>(["upper leather", "lining leather", "insole board", "second board", "sole leather", "sock leather"]);

/**
 * Everything that can be said of a set of pieces before they are cut: docs/method/pieces.md, "What is checked". For any cut of the upper
 * and any pieces; what is not there is not looked at.
 */
export function checkParts(input: ToCheck): readonly Finding[] {
  const cut = cutPanels(input.panels, input.drafts);
  return [
    ...checkSeams(input, cut),
    ...checkLastingMargins(input, cut),
    ...checkAllowances(input, cut),
    ...checkCentre(input, cut),
    ...checkFolds(input),
    ...checkOutlines(input),
    ...checkLinings(input, cut),
    ...checkBalance(input, cut),
  ];
}

/** Outlines that cross themselves, waver, or leave too little between two edges. */
function checkOutlines(input: ToCheck): readonly Finding[] {
  return input.drafts.flatMap((draft) => {
    const { name: piece, material, outline, ground } = draft;
    const crossing = selfCrossing(outline);
    if (crossing) return [finding("piece-crosses-itself", { piece }, shownAt(input, ground, [crossing.x, crossing.y]))];
    const changes = bendsOf(outline);
    const uneven = changes > mostBends ? [finding("edge-uneven", { piece, changes, most: mostBends })] : [];
    const neck = stitched.has(material) ? narrowest(outline, leastWidthMm) : undefined;
    if (!neck) return uneven;
    const middle = [(neck.from[0] + neck.to[0]) / 2, (neck.from[1] + neck.to[1]) / 2] as const;
    return [...uneven, finding("piece-narrow", { piece, widthMm: neck.mm, neededMm: leastWidthMm, where: roughly(outline, middle) }, shownAt(input, ground, middle))];
  });
}
