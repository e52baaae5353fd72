import type { Pair } from "#job/pair.ts";
import type { Ground, Piece } from "#pieces/piece.ts";

/** The flat sheet that a piece is drawn on, if that has a place on the last. */
export const groundOf = ({ grounds }: Pair, { ground }: Piece): Ground | undefined => (ground ? grounds.find((g) => g.name === ground) : undefined);
