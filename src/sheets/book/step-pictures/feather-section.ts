import type { SheetInput } from "../../input.ts";
import { plain } from "../numbers.ts";
import { arcPoints, plyOf, scaled, straightPoints } from "./ply.ts";
import { scaleFor, type Picture } from "./sketch-lines.ts";
import { heavyMm, lightMm, plainMm, Sketch, type Xy } from "./sketch.ts";

/** How far the bottom is when it is shown. */
export type BottomStage = "margin" | "sole";

/** So much of the bottom inside the feather line and of the wall above it is shown, mm. */
const inMm = 17, wallMm = 7;
const roomMm = { wide: 44, high: 34 } as const;
/** Lining is trimmed so much shorter than the upper, "a step", mm; the pencil line stands so far inside the edge, "a hair", mm (common practice, no source). */
const stepMm = 3, hairMm = 1;

/** The edge of the bottom cut across at the forepart, as the shoe stands: the last above right, the ground below. */
export function featherSection({ pieceSettings: s, made }: SheetInput, stage: BottomStage): Picture | undefined {
  if (!made) return undefined;
  const { upperThicknessMm: u, liningThicknessMm: l, firstBoardMm: board, marginLeftMm: margin, soleMm, soleFinishForepartMm: over } = s;
  const sole = stage === "sole", under = board + l + u, low = under + (sole ? soleMm : 0);
  const { scale, words } = scaleFor(inMm + l + u + over, wallMm + low, roomMm.wide, roomMm.high);
  const draw = new Sketch(), at = ([x, y]: Xy): Xy => [scale * x, scale * y];
  const closed = (xy: readonly number[], wideMm = plainMm, name?: string): void => draw.stroke(scaled(xy, scale), wideMm, { closed: true, ...(name && { name }) });
  const box = (x0: number, y0: number, x1: number, y1: number, wideMm = plainMm, name?: string): void => closed([x0, y0, x1, y0, x1, y1, x0, y1], wideMm, name);
  draw.stroke(scaled([0, wallMm, 0, 0, inMm, 0], scale), lightMm, { dashMm: [1.2, 0.7] });
  draw.key("the last", at([inMm * 0.5, wallMm * 0.6]), [0, 1]);
  // The insole's edge is sharp, so is the fold of what is lasted over it.
  closed([s.insoleInMm, 0, inMm, 0, inMm, -board, s.insoleInMm, -board]);
  draw.key(`insole at the forepart, ${plain(board)} mm`, at([inMm - 2.5, -board / 2]), [0.4, 1]);
  closed(turned(0, l, board, margin - stepMm));
  closed(turned(l, u, board + l, margin), sole ? plainMm : 0.45);
  draw.key(`lining, ${plain(l)} mm`, at([-l / 2, wallMm - 1.5]), [1, 0.4]);
  draw.key(sole ? `upper, ${plain(u)} mm` : `upper, ${plain(u)} mm; its margin goes ${plain(margin)} mm in, the lining a step less`, at([-l - u, wallMm - 2.6]), [-1, 0]);
  if (!sole) {
    draw.line(at([hairMm, -under - 0.9]), at([hairMm, -under + 0.1]), heavyMm);
    draw.key("pencil line: finish and grain come off from here inward", at([hairMm, -under - 0.9]), [0.3, -1]);
    draw.line(at([hairMm, -under - 0.35]), at([margin, -under - 0.35]), lightMm, { dashMm: [0.3, 0.6] });
    return { title: `The edge cut across, ${words}`, sketch: draw };
  }
  if (margin < inMm) {
    box(margin, -under, inMm, -board, plainMm);
    draw.key("filler, level with the margin", at([(margin + inMm) / 2, -board - (l + u) / 2]), [1, -0.4]);
  }
  box(-l - u - over, -under - soleMm, inMm, -under, 0.45, "picture-lay-soles-sole");
  draw.key(`sole, ${plain(soleMm)} mm; ${plain(over)} mm of it stand out at the forepart, ${plain(s.soleFinishWaistMm)} at the waist, ${plain(s.soleFinishHeelMm)} at the heel`, at([inMm * 0.4, -under - soleMm / 2]), [0, -1]);
  return { title: `The edge cut across, ${words}`, sketch: draw };
}

/** A sheet that comes down outside the last and turns in below the insole: `off` from the last's wall, its inner face `below` the last's bottom. */
function turned(off: number, thick: number, below: number, reach: number): number[] {
  const middle = -off - thick / 2, low = -below - thick / 2, radius = thick / 2 + 0.05;
  return plyOf([...straightPoints([middle, wallMm], [middle, low + radius], 6), ...arcPoints([middle + radius, low + radius], radius, 180, 270, 6).slice(1), ...straightPoints([middle + radius, low], [reach, low], 8).slice(1)], thick);
}
