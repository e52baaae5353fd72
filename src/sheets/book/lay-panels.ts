import { capital } from "#base/listed.ts";
import type { Piece } from "#pieces/piece.ts";
import type { Drawn, Line } from "./block.ts";
import { drawnName, inkSmallPiece, smallPiece, type SmallPiece } from "./draw-piece.ts";
import { body, line } from "./words.ts";

const gapMm = 5;

interface Put {
  readonly small: SmallPiece;
  /** Upper left corner, to the right of and below the block's own, mm. */
  readonly right: number;
  readonly down: number;
}

/** Panels of one upper as one drawing, named where there are several; nothing where they need more room, unless they are wanted `anyway`. */
export function laidPanels(panels: readonly Piece[], scale: number, width: number, roomMm: number, anyway: boolean): { readonly line: Line; readonly drawn: readonly Drawn[] } | undefined {
  const named = panels.length > 1, underMm = named ? body.stepMm + gapMm - 1 : gapMm;
  const put = [beside(panels, scale, underMm), inRows(panels, scale, width, underMm)].find((all) => anyway || fits(all, width, roomMm, underMm));
  if (!put) return undefined;
  const order = (piece: Piece): string => drawnName("cover", panels.indexOf(piece));
  return {
    line: {
      highMm: highOf(put, underMm),
      ink: (ink, x, top) => {
        for (const { small, right, down } of put) {
          inkSmallPiece(ink, small, x + right, top - down, order(small.piece), ["line", "notch", "prick", "arrow"]);
          if (named) line(capital(small.piece.name), { ...body, bold: true }).ink(ink, x + right, top - down - small.high - 1);
        }
      },
    },
    drawn: put.map(({ small }) => ({ name: order(small.piece), wide: small.wide, high: small.high })),
  };
}

const highOf = (put: readonly Put[], underMm: number): number => Math.max(...put.map((p) => p.down + p.small.high + underMm));
const fits = (put: readonly Put[], width: number, roomMm: number, underMm: number): boolean => highOf(put, underMm) <= roomMm && put.every((p) => p.right + p.small.wide <= width);

/** The first as it lies on the shoe, the others on their longer side, one below the other beside it. */
function beside([first, ...others]: readonly Piece[], scale: number, underMm: number): readonly Put[] {
  const small = smallPiece(first!, scale, "as drawn");
  let down = 0;
  return [{ small, right: 0, down: 0 }, ...others.map((piece): Put => {
    const put = { small: smallPiece(piece, scale), right: small.wide + gapMm, down };
    down += put.small.high + underMm;
    return put;
  })];
}

/** All on their longer side, row by row. */
function inRows(panels: readonly Piece[], scale: number, width: number, underMm: number): readonly Put[] {
  let right = 0, down = 0, high = 0;
  return panels.map((piece): Put => {
    const small = smallPiece(piece, scale);
    if (right > 0 && right + small.wide > width) {
      down += high + underMm;
      right = high = 0;
    }
    const put = { small, right, down };
    right += small.wide + gapMm;
    high = Math.max(high, small.high);
    return put;
  });
}
