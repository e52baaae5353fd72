import type { Material, Piece, Strip } from "#pieces/piece.ts";
import type { NeedOf } from "../need.ts";

/** Pieces of one material, both shoes. */
export const piecesOf = (pieces: readonly Piece[], material: Material): readonly Piece[] => pieces.filter((piece) => piece.material === material);

/** How many pieces of a material a pair has. */
export const countOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, piece) => sum + piece.perPair, 0);

/** Sum of pieces' areas, mm². */
export const areaOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, piece) => sum + piece.areaMm2 * piece.perPair, 0);

/** The lasted margin as it stays stuck to the insole, both shoes: insole less bottom filler, which lies between the margins; mm². Nothing where no bottom was traced. */
export const marginOf = (pieces: readonly Piece[]): number => Math.max(0, areaOf(piecesOf(pieces, "insole board")) - areaOf(piecesOf(pieces, "filler")));

/** Pieces by name, both shoes together, in the order in which they come. */
export function partsByArea(pieces: readonly Piece[]): readonly NeedOf[] {
  return [...new Set(pieces.map(({ name }) => name))].map((name) => {
    const same = pieces.filter((piece) => piece.name === name);
    return { name, perPair: countOf(same), net: areaOf(same) };
  });
}

/** Strips cut from a skin, by their area. */
export const stripsByArea = (strips: readonly Strip[]): readonly NeedOf[] => strips.map(({ name, perPair, lengthMm, widthMm }) => ({ name, perPair, net: perPair * lengthMm * widthMm }));

/** The piece of the largest area; nothing where there are none. */
export const largestOf = (pieces: readonly Piece[]): Piece | undefined => pieces.reduce<Piece | undefined>((most, piece) => (most && most.areaMm2 >= piece.areaMm2 ? most : piece), undefined);

export const netOf = (parts: readonly NeedOf[]): number => parts.reduce((sum, { net }) => sum + net, 0);
