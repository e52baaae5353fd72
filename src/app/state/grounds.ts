import type { Pair } from "#job/pair.ts";
import type { Ground, Mark, Piece } from "#pieces/piece.ts";

/** A flat piece with the sheet that has its place on the last. */
export interface Grounded {
  readonly piece: Piece;
  readonly ground: Ground;
}

/** The flat sheet that a piece is drawn on, if that has a place on the last. */
export const groundOf = ({ grounds }: Pair, { ground }: Piece): Ground | undefined => (ground ? grounds.find((g) => g.name === ground) : undefined);

/** Marks of the upper where a part is laid on or set in that is no part of any sheet. */
const placeMarks: readonly (readonly [piece: RegExp, mark: RegExp])[] = [
  [/gore/, /^cut out for the gore/],
  [/^(strap|instep strap)/, /^strap/],
  [/^bow/, /^bow/],
  [/^back strip/, /^(back seam|back)/],
];

/** Whether a mark of the upper shows where such a part has its place. */
export const showsPlace = (part: string, mark: Mark): boolean => mark.kind !== "text" && placeMarks.some(([piece, name]) => piece.test(part) && name.test(mark.name));

/** Where a piece lies on the last: itself, or, where it has no sheet of its own, the pieces of the upper that bear its marks. */
export function groundedBy(pair: Pair, piece: Piece): readonly Grounded[] {
  const ground = groundOf(pair, piece);
  if (ground) return [{ piece, ground }];
  if (!placeMarks.some(([at]) => at.test(piece.name))) return [];
  return pair.pieces.flatMap((upper) => {
    const its = groundOf(pair, upper);
    const bears = upper.side === "right" && !upper.net && upper.material === "upper leather";
    return bears && its ? [{ piece: upper, ground: its }] : [];
  });
}
