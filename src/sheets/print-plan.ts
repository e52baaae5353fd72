import type { Piece } from "#pieces/piece.ts";
import { arrange, type CommonSheet } from "./arrange.ts";
import type { SheetChoices } from "./choices.ts";
import { gridOf } from "./paper.ts";
import { printPaper, type PrintPaper } from "./print-paper.ts";

/** Cards to check on the last are one set; what is cut in material, and the card that the shank is bent on, the other. */
export type PrintSet = "card" | "cutting";
export const setOf = ({ material, name }: Piece): PrintSet => (material === "card" && name !== "shank bend" ? "card" : "cutting");
export const setWords: Readonly<Record<PrintSet, string>> = { card: "card set", cutting: "cutting set" };

export interface PrintPlan {
  readonly paper: PrintPaper;
  /** Only the pieces that are printed. */
  readonly sheet: CommonSheet;
  /** How many pieces are printed, right and left counted each. */
  readonly pieces: number;
}

/** The pieces of the sets that the maker chose, in their order. */
export const printed = (pieces: readonly Piece[], { sets }: SheetChoices): readonly Piece[] => (sets === "both" ? pieces : pieces.filter((p) => setOf(p) === (sets === "net" ? "card" : "cutting")));

/** Which pieces are printed on what, and where they lie. Pages are shared within one set only, or not at all. */
export function printPlan(pieces: readonly Piece[], choices: SheetChoices): PrintPlan {
  const paper = printPaper(choices);
  const chosen = printed(pieces, choices);
  return { paper, pieces: chosen.length, sheet: arrange(chosen, gridOf(paper), chosen.map((p, i) => (choices.onePage ? i : setOf(p) === "card" ? 0 : 1))) };
}
