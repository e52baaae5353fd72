import { capital } from "#base/listed.ts";
import type { Piece } from "#pieces/piece.ts";
import type { SheetInput } from "../../input.ts";
import { upperPieces } from "../cover.ts";
import { plain } from "../numbers.ts";
import { bandOf } from "./bands.ts";
import { laidPieces, linesOf } from "./laid-pieces.ts";
import type { Picture } from "./sketch-lines.ts";
import { heavyMm, lightMm, type Xy } from "./sketch.ts";

const hatchMm = 1.1;

/** The panel of the upper on which something is to be put, by the name of the line drawn there. */
const panelWith = ({ pieces }: SheetInput, name: string): Piece | undefined => upperPieces(pieces).find((p) => linesOf(p, "place", name).length > 0);
const middle = (xy: readonly number[]): Xy => {
  const i = 2 * Math.floor(xy.length / 4);
  return [xy[i]!, xy[i + 1]!];
};

/** Where the toe cap's edge is laid. */
export function capPlace(input: SheetInput, width: number): Picture | undefined {
  const piece = panelWith(input, "edge of the toe cap");
  if (!piece) return undefined;
  const { sketch, laid: [one], words } = laidPieces("sew-toe-cap", [piece], width);
  const edge = one!.along(linesOf(piece, "place", "edge of the toe cap")[0]!.line.xy);
  sketch.stroke(edge, heavyMm);
  sketch.key(`the cap's edge, ${plain(input.pieceSettings.toeCapMm)} mm from the toe along the centre`, middle(edge), [-1, 0.6]);
  return { title: `${capital(piece.name)}, ${words}`, sketch };
}

/** How far the edge that lies over comes, and what lies under it. */
export function lapPlace(input: SheetInput, width: number): Picture | undefined {
  const piece = panelWith(input, "vamp to here");
  if (!piece || input.parts.seam !== "lapped") return undefined;
  const { sketch, laid: [one], words, scale } = laidPieces("sew-side-seams", [piece], width);
  for (const { line } of linesOf(piece, "place", "vamp to here")) {
    const drawn = one!.along(line.xy), band = bandOf(piece.outline, line, hatchMm / scale);
    sketch.stroke(drawn, heavyMm);
    for (const [a, b] of band?.strokes ?? []) sketch.line(one!.at(a), one!.at(b), lightMm);
    if (sketch.told.length === 0) sketch.key(`the vamp comes to this line: ${plain(input.pieceSettings.lapUnderMm)} mm lie under it`, middle(drawn), band ? [-band.out[0], -band.out[1]] : [1, 0]);
  }
  return { title: `${capital(piece.name)}, ${words}`, sketch };
}

/** Where the strap's root goes between upper and lining. */
export function strapPlace(input: SheetInput, width: number, step: "bag-topline" | "line-upper"): Picture | undefined {
  const piece = panelWith(input, "strap");
  if (!piece) return undefined;
  const { sketch, laid: [one], words } = laidPieces(step, [piece], width);
  for (const { line } of linesOf(piece, "place", "strap")) {
    const drawn = one!.along(line.xy);
    sketch.stroke(drawn, heavyMm);
    if (sketch.told.length === 0) sketch.key(`the strap's root lies between these lines, ${plain(input.pieceSettings.strapUnderMm)} mm deep`, middle(drawn), [1, 0.3]);
  }
  return { title: `${capital(piece.name)}, ${words}`, sketch };
}
