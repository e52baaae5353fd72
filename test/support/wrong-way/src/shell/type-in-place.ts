/** Planted: a type from downstream, named in place. */
export const nameOf = (piece: import("#pieces/piece.ts").Piece): string => piece.name;
