import type { Piece } from "#pieces/piece.ts";
import { lengthOf } from "#plane/measure.ts";
import { bondOf } from "./bond.ts";
import type { MakingInput } from "../input.ts";
import type { Bond, Glue } from "../need.ts";
import { areaOf, marginOf, piecesOf } from "./part-areas.ts";
import { leatherPuffMm, leatherStiffenerMm } from "./stiffening.ts";

const shoes = 2;

/** What is stuck in closing, and between upper and lining: thin and light, so latex; leather stiffeners with paste. */
export const upperBonds = (input: MakingInput): readonly Bond[] => [...folds(input), ...seamTapes(input), ...laps(input), ...bagged(input), ...trimmings(input), ...binding(input), ...stiffening(input), ...lining(input)].filter(({ areaMm2 }) => areaMm2 > 0);

/** Where a fold is turned in: its length as drawn by its width. Bow and knot take a dab that is not counted. */
function folds({ pieces, settings }: MakingInput): readonly Bond[] {
  const fold = (name: string, mm: number, on: (piece: Piece) => boolean, line: (mark: string) => boolean): Bond =>
    bondOf(name, "latex", mm * pieces.reduce((sum, piece) => (on(piece) ? sum + piece.perPair * drawn(piece, line) : sum), 0), [1, 1], `fold line by ${mm} mm`);
  const upper = ({ material, net }: Piece): boolean => material === "upper leather" && !net;
  const topline = (mark: string): boolean => mark.startsWith("fold line of the topline"), cap = (mark: string): boolean => mark === "fold line of the cap";
  return [
    fold("fold of the topline", settings.toplineFoldMm, upper, topline),
    fold("folds of the lapped seams", settings.lapFoldMm, upper, (mark) => mark.startsWith("fold line of the") && !topline(mark) && !cap(mark)),
    fold("fold of the toe cap", settings.toeCapFoldMm, ({ name }) => name === "toe cap", cap),
    fold("folds of the back strip", settings.backStripFoldMm, ({ name }) => name === "back strip", (mark) => mark === "fold"),
    fold("folds of the strap", settings.strapFoldMm, ({ name }) => name === "instep strap", (mark) => mark === "fold"),
  ];
}

const drawn = ({ marks }: Piece, line: (mark: string) => boolean): number => marks.reduce((sum, mark) => (mark.kind === "line" && mark.use === "fold" && line(mark.name) ? sum + lengthOf(mark.line) : sum), 0);

/** Wide tapes are laid dry on a coated seam; narrow ones stick by themselves. */
function seamTapes({ strips, settings: { stripEndsMm } }: MakingInput): readonly Bond[] {
  const tapes = strips.filter(({ material, name }) => material === "tape" && name.startsWith("seam tape"));
  return [bondOf("seam tapes", "latex", tapes.reduce((sum, { perPair, lengthMm, widthMm }) => sum + perPair * Math.max(0, lengthMm - 2 * stripEndsMm) * widthMm, 0), [1, 0], "tape as laid by its width; the tape itself stays dry")];
}

function laps({ stitching, parts: { seam }, settings: { lapUnderMm } }: MakingInput): readonly Bond[] {
  const rows = seam === "lapped" ? stitching.filter(({ use, name }) => use === "lapped" && name.endsWith("seam")) : [];
  return [bondOf("lapped seams", "latex", shoes * lapUnderMm * rows.reduce((sum, { lengthMm }) => sum + lengthMm, 0), [1, 1], `row of stitches by a lap of ${lapUnderMm} mm`)];
}

/** Once a bagged topline is turned out, its seam's allowance is stuck down. */
function bagged({ stitching, settings: { toplineBagMm } }: MakingInput): readonly Bond[] {
  const mm = stitching.reduce((sum, { name, lengthMm }) => (name === "topline seam" ? sum + lengthMm : sum), 0);
  return [bondOf("bagged topline", "latex", shoes * mm * toplineBagMm, [1, 0], "its seam by the allowance")];
}

/** So wide is a toe cap stuck along its edge, mm (our own); the rest of it stays loose and moves in lasting. */
const capStuckMm = 10;

/** What lies on the upper: a back strip, a strap and a dog-tail with all their face, a toe cap along its edge. */
function trimmings({ pieces, stitching, settings }: MakingInput): readonly Bond[] {
  const whole = (name: string, piece: string): Bond => bondOf(name, "latex", areaOf(pieces.filter((one) => one.name === piece)), [1, 1], piece);
  const capMm = stitching.reduce((sum, { name, lengthMm }) => (name === "toe cap" ? sum + lengthMm : sum), 0);
  const tail = stitching.some(({ name }) => name === "dog-tail") ? settings.dogTailLongMm * settings.dogTailWideMm : 0;
  return [
    bondOf("dog-tail", "latex", shoes * tail, [1, 1], "its length by its width"),
    bondOf("toe cap on the vamp", "latex", shoes * capMm * capStuckMm, [1, 1], `${capStuckMm} mm along its edge`),
    whole("back strip on the quarters", "back strip"),
    whole("strap on its lining", "strap lining"),
  ];
}

/** A binding is sewn along one half and cemented down with the other; a wrapped one on both faces of the edge. */
function binding({ strips, edge, settings: { stripEndsMm } }: MakingInput): readonly Bond[] {
  const share = edge === "wrapped" ? 1 : 0.5;
  const area = strips.reduce((sum, { material, perPair, lengthMm, widthMm }) => (material === "upper leather" ? sum + perPair * Math.max(0, lengthMm - 2 * stripEndsMm) * widthMm * share : sum), 0);
  return [bondOf("binding of the topline", "latex", area, [1, 1], edge === "wrapped" ? "binding as laid" : "half the binding as laid")];
}

const stiffeningGlue = (leather: boolean): Glue => (leather ? "paste" : "latex");

/** Stiffener, puff and side linings are coated on both their faces and laid in between; upper and lining stay dry there. */
function stiffening({ pieces, stiff: { counterMm }, settings: { toePuffMm } }: MakingInput): readonly Bond[] {
  const both = (name: string, glue: Glue, area: number): readonly Bond[] => [bondOf(`${name} to the lining`, glue, area, [1, 0], `${name}, one of its faces`), bondOf(`${name} to the upper`, glue, area, [1, 0], `${name}, its other face`)];
  return [
    ...both("stiffener", stiffeningGlue(counterMm >= leatherStiffenerMm), areaOf(piecesOf(pieces, "stiffener"))),
    ...both("toe puff", stiffeningGlue(toePuffMm >= leatherPuffMm), areaOf(piecesOf(pieces, "toe puff"))),
    ...both("side lining", "latex", areaOf(piecesOf(pieces, "side lining"))),
  ];
}

/** Pieces of lining leather that are not the lining of the shoe. */
const besideLining: readonly string[] = ["strap lining", "bow stay"];

/** In the forepart upper and lining stay loose, about a third of what meets (our own estimate). */
const stuckShare = 2 / 3;

/** What of the lining meets the upper, its own laps included: all but where something lies between, and but the margin, which is cemented. */
function lining({ pieces }: MakingInput): readonly Bond[] {
  const all = areaOf(piecesOf(pieces, "lining leather").filter(({ name }) => !besideLining.includes(name)));
  const between = (["stiffener", "toe puff", "side lining"] as const).reduce((sum, material) => sum + areaOf(piecesOf(pieces, material)), 0);
  return [bondOf("lining to the upper", "latex", stuckShare * Math.max(0, all - between - marginOf(pieces)), [1, 1], "two thirds of the lining less stiffener, toe puff, side lining and margin: the forepart stays loose")];
}
