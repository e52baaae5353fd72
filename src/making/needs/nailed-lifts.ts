import type { Piece } from "#pieces/piece.ts";
import type { MakingInput } from "../input.ts";

/** Lengths in which tacks and nails are sold, mm: common practice, no source. */
export const soldMm = [6, 8, 10, 13, 16, 19, 22, 25, 30] as const;
/** How far below the foot a heel nail ends at least, and how far it goes beyond its lift if there is room, and at least to hold; mm (our own limits). */
export const underFootMm = 1.5;
const beyondLiftMm = 10, holdsMm = 4;

/** What is nailed of a heel. */
export interface NailedLift {
  readonly name: string;
  /** Of all pieces that were asked about. */
  readonly count: number;
  /** Nothing where none ends inside and still holds. */
  readonly nailMm?: number;
  /** What lies one over the other from this lift up to the foot, where it is thinnest, mm. */
  readonly roomMm: number;
}

/** Every layer that has places for nails, and the nail that ends inside through it, all layers above it, sole and boards. */
export function nailedLifts(pieces: readonly Piece[], { made, settings: s }: Pick<MakingInput, "made" | "settings">): readonly NailedLift[] {
  let roomMm = s.soleMm + s.secondBoardMm + s.firstBoardMm;
  return (made?.heel?.layers ?? []).flatMap(({ name, backMm, breastMm }) => {
    roomMm += Math.min(backMm, breastMm);
    const count = pieces.reduce((sum, piece) => (piece.name === name ? sum + piece.perPair * piece.marks.filter((mark) => mark.kind === "prick" && mark.name === "nails").length : sum), 0);
    if (count === 0) return [];
    const nailMm = nailWithin(roomMm, Math.max(backMm, breastMm));
    return [{ name, count, roomMm, ...(nailMm !== undefined && { nailMm }) }];
  });
}

/** The longest nail that ends inside `roomMm` of lifts, sole and boards, and goes no farther beyond its lift than it needs to; nothing where none holds. */
export function nailWithin(roomMm: number, liftMm: number): number | undefined {
  const most = Math.min(roomMm - underFootMm, liftMm + beyondLiftMm);
  const longest = soldMm.findLast((mm) => mm <= most + 1e-9);
  return longest !== undefined && longest >= liftMm + holdsMm ? longest : undefined;
}
