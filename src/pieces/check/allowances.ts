import { finding, type Finding } from "#base/findings.ts";
import { isFolded } from "../choices.ts";
import type { NetEdge } from "../panel.ts";
import { shownAt, type ToCheck } from "./to-check.ts";
import { edgeNames } from "../words.ts";
import { placeWords } from "./words.ts";
import { cornerReach, pointOf, tailReach, type CutPanel, type EdgeWidths } from "./widths.ts";

/** Most that a width may be off what was asked for, mm. */
const toleranceMm = 0.1;

/** Widths of fold, seam and lap as they are drawn against what was asked for; the worst place of an edge is told. */
export function checkAllowances(input: ToCheck, cut: readonly CutPanel[]): readonly Finding[] {
  return cut.flatMap(({ panel, draft, widths }) =>
    panel.edges.flatMap((edge, e) => {
      const asked = askedMm(edge, input);
      const worst = asked.length > 0 ? worstOf(widths[e]!, asked, edge.role === "back" ? tailReach(input) : 0) : undefined;
      if (!worst) return [];
      const where = placeWords(panel, e, widths[e]!.s[worst.k]!);
      return [finding("allowance-off", { piece: draft.name, edge: edgeNames[edge.role], where, foundMm: worst.foundMm, askedMm: worst.askedMm }, shownAt(input, panel.name, pointOf(widths[e]!, worst.k)))];
    }),
  );
}

/** What may be asked of an edge: one width, or of a lapped seam the upper's and the under part's. None of the lasting edge, which is blended. */
function askedMm({ role }: NetEdge, { chosen, settings }: ToCheck): readonly number[] {
  if (role === "feather") return [];
  if (role === "topline") return [isFolded(chosen.edge) ? settings.toplineFoldMm : chosen.edge === "bagged" ? settings.toplineBagMm : 0];
  if (role === "back") return [chosen.backSeam === "butted" ? 0 : settings.backSeamMm];
  if (chosen.seam === "butted") return [0];
  return chosen.seam === "closed" ? [settings.seamMm] : [settings.lapFoldMm, settings.lapUnderMm];
}

/** Where a width is farthest off the one asked for, corners left out; of two the one that the edge's middle comes nearer to. */
function worstOf({ s, mm }: EdgeWidths, asked: readonly number[], tailMm: number): { readonly k: number; readonly foundMm: number; readonly askedMm: number } | undefined {
  const middle = mm[mm.length >> 1]!;
  const want = asked.reduce((a, b) => (Math.abs(b - middle) < Math.abs(a - middle) ? b : a));
  const end = s[s.length - 1]!;
  // At a corner the rule of the corner holds: edges are mirrored, snipped or run on there.
  const corner = cornerReach(want, tailMm);
  let worst: { readonly k: number; readonly foundMm: number; readonly askedMm: number } | undefined;
  for (let k = 0; k < s.length; k++) {
    if (s[k]! < corner || s[k]! > end - corner) continue;
    const foundMm = Number.isNaN(mm[k]!) ? 0 : mm[k]!;
    if (Math.abs(foundMm - want) > Math.max(toleranceMm, worst ? Math.abs(worst.foundMm - want) : 0)) worst = { k, foundMm, askedMm: want };
  }
  return worst;
}
