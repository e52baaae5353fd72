import type { Finding } from "#base/findings.ts";
import type { Last } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { FlatBottom, FlatShell } from "#shell/shell.ts";
import { cutInsole, cutOutsole, cutSock, netBottom } from "./bottom-pieces.ts";
import { checkDrafts, checkSettings, checkUpper } from "./check.ts";
import { bothOf } from "./draft.ts";
import type { Labels } from "./label-text.ts";
import { cutLining } from "./lining.ts";
import { netUpper } from "./net-upper.ts";
import type { Piece } from "./piece.ts";
import type { PieceSettings } from "./settings.ts";
import { cutUpper, netUpperCard } from "./upper.ts";

export interface CutInput {
  readonly last: Last;
  readonly lines: Lines;
  readonly flat: FlatShell;
  readonly bottom: FlatBottom;
  readonly settings: PieceSettings;
  readonly labels: Labels;
}

export interface CutPieces {
  /** Both shoes: each piece for the last's own side, its mirrored twin right after it. */
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
}

/**
 * Every piece of a whole-cut upper with back seam and its bottom, for both shoes. Rules: docs/method/pieces.md.
 * @throws Refusal where a setting is not a number or below its least.
 */
export function cutPieces({ last, lines, flat, bottom, settings, labels }: CutInput): CutPieces {
  const unusual = checkSettings(last, settings);
  const upper = netUpper(last, lines, flat);
  const sole = netBottom(last, bottom);
  const drafts = [
    netUpperCard(upper, labels),
    cutUpper(upper, settings, labels),
    cutLining(upper, settings, labels),
    cutInsole(sole, settings, labels),
    cutOutsole(sole, settings, labels),
    cutSock(sole, settings, labels),
  ];
  return {
    pieces: drafts.flatMap((draft) => bothOf(draft, last.side)),
    findings: [...unusual, ...checkUpper(upper, settings), ...checkDrafts(drafts, upper)],
  };
}
