import type { Piece } from "#pieces/piece.ts";

/** Planted: a type from downstream. */
export const nameOf = (piece: Piece): string => piece.name;
