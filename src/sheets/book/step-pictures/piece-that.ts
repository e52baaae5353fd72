import type { Piece } from "#pieces/piece.ts";

/** The right shoe's piece of a name. */
export const pieceThat = (pieces: readonly Piece[], name: string): Piece | undefined => pieces.find((p) => p.side === "right" && p.name === name);
