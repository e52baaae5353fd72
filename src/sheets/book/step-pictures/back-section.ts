import { pieceThat } from "./piece-that.ts";
import type { LastInput } from "../../input.ts";
import { plain } from "../numbers.ts";
import { scaled } from "./ply.ts";
import { scaleFor, type Picture } from "./sketch-lines.ts";
import { lightMm, plainMm, Sketch, type Xy } from "./sketch.ts";

const roomMm = { wide: 30, high: 36 } as const;
/** So much is shown below where the stiffener is full, mm. */
const fullMm = 5;

/** The back cut across from the topline down: the stiffener between upper and lining, below the edge by what it must be. */
export function backSection({ pieces, pieceSettings: s, shellSettings: shell }: LastInput): Picture | undefined {
  const { counterMm, counterBelowMm: below, skiveMm } = shell;
  if (counterMm <= 0 || !pieceThat(pieces, "stiffener")) return undefined;
  const low = -below - skiveMm - fullMm, { upperThicknessMm: u, liningThicknessMm: l } = s;
  const { scale, words } = scaleFor(u + l + counterMm, -low, roomMm.wide, roomMm.high);
  const draw = new Sketch(), at = ([x, y]: Xy): Xy => [scale * x, scale * y];
  const closed = (xy: readonly number[], wideMm = plainMm, name?: string): void => draw.stroke(scaled(xy, scale), wideMm, { closed: true, ...(name && { name }) });
  const full = -below - skiveMm;
  closed([-u, low, -u, 0, 0, 0, 0, low]);
  closed([0, -below, counterMm, full, counterMm, low, 0, low], 0.45, "picture-set-stiffeners-stiffener");
  closed([0, 0, l, 0, l, -below, counterMm + l, full, counterMm + l, low, counterMm, low, counterMm, full, 0, -below]);
  draw.key(`upper, ${plain(u)} mm`, at([-u, -below / 2]), [-1, 0]);
  draw.key(`lining, ${plain(l)} mm`, at([l, -below / 2]), [1, 0]);
  draw.key(`stiffener, ${plain(counterMm)} mm: begins ${plain(below)} mm below the topline, full after ${plain(skiveMm)} mm more`, at([counterMm / 2, low + fullMm / 2]), [1, 0]);
  const x = -u - 6 / scale;
  for (const y of [0, -below, full]) draw.line(at([x, y]), at([x + 3.4 / scale, y]), lightMm);
  draw.line(at([x + 1.7 / scale, 0]), at([x + 1.7 / scale, full]), lightMm);
  draw.mark(plain(below), at([x, -below / 2]), [-1, 0]);
  draw.mark(plain(skiveMm), at([x, (full - below) / 2]), [-1, 0]);
  return { title: `The back cut across, ${words}`, sketch: draw };
}
