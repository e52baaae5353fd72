import { usualParts } from "#pieces/choices.ts";
import type { Draft } from "#pieces/draft.ts";
import type { Labels } from "#pieces/label-text.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import type { NetUpper } from "#pieces/net-upper.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";

/** The whole-cut as it is cut, all choices as usual; its topline raw where nothing is folded. */
export function cutUpper(net: NetUpper, settings: PieceSettings, labels: Labels): Draft {
  const edge = settings.toplineFoldMm > 0 ? "taped" : "raw";
  return upperPieces({ panels: [wholePanel(net)], settings, chosen: { ...usualParts, edge }, labels }).drafts[1]!;
}
