import type { Piece } from "#pieces/piece.ts";
import type { SheetInput } from "../../input.ts";
import { upperPieces } from "../cover.ts";
import { halfMm } from "../numbers.ts";
import { bandOf, type Band } from "./bands.ts";
import { laidPieces, linesOf, type LaidPiece } from "./laid-pieces.ts";
import { heavyMm, lightMm, type Sketch, type Xy } from "./sketch.ts";
import type { Picture } from "./sketch-lines.ts";

/** Strokes of a hatched band stand so close on paper, mm. */
const hatchMm = 1.1;
/** A band's width tells which edge it is where it is so near to what was asked for, mm. */
const nearMm = 0.8;

/** The upper's panels with the bands that are thinned, each with its measured width. */
export function upperSkives({ pieces, pieceSettings: s, parts }: SheetInput, width: number): Picture | undefined {
  const panels = [...upperPieces(pieces), ...pieces.filter((p) => p.name === "toe cap" && p.side === "right")].filter((p, _, all) => p.side === all[0]!.side);
  const edges: readonly (readonly [number, string])[] = [
    [s.toplineFoldMm > 0 ? 2 * s.toplineFoldMm + s.skiveFoldMoreMm : 0, "the topline, for its fold"],
    [s.skiveSeamMm, parts.cut === "quarters" || parts.cut === "inner-seam" ? "closed seams" : "the back seam"],
    [s.skiveToeMm, "the lasting edge about the toe"],
    [s.skiveLapMm, "what lies under a lap"],
    [s.lapFoldMm > 0 ? 2 * s.lapFoldMm + s.skiveFoldMoreMm : s.skiveRawMm, s.lapFoldMm > 0 ? "a lap's edge, for its fold" : "edges that stay raw"],
  ];
  const edgeOf = ({ wideMm }: Band): string => edges.filter(([mm]) => mm > 0).map(([mm, words]) => [Math.abs(mm - wideMm), words] as const).filter(([off]) => off < nearMm).sort(([a], [b]) => a - b)[0]?.[1] ?? "this edge";
  return hatched("skive-upper", panels, width, "What is thinned", (band) => `over ${halfMm(band.wideMm)} mm from the cut edge: ${edgeOf(band)}`);
}

/** Stiffener and puff with the band that runs out to nothing. */
export function stiffeningSkives({ pieces }: SheetInput, width: number): Picture | undefined {
  const right = pieces.filter(({ side, name }) => side === "right" && (name === "stiffener" || name === "toe puff"));
  return hatched("cut-stiffening", right, width, "Thinned to nothing at the edge", ({ leastMm, mostMm }, { name }) => `${name}: from the line outward, over ${Math.round(leastMm)} to ${Math.round(mostMm)} mm`);
}

function hatched(step: string, pieces: readonly Piece[], width: number, title: string, told: (band: Band, piece: Piece) => string): Picture | undefined {
  if (!pieces.some((p) => linesOf(p, "skive").length > 0)) return undefined;
  const { sketch, laid, scale, words } = laidPieces(step, pieces, width);
  const known = new Map<string, string>();
  for (const one of laid) for (const { line } of linesOf(one.piece, "skive")) inkBand(sketch, one, bandOf(one.piece.outline, line, hatchMm / scale), line.xy, (band) => told(band, one.piece), known);
  return { title: `${title}, ${words}`, sketch };
}

function inkBand(sketch: Sketch, { at, along }: LaidPiece, band: Band | undefined, line: Float64Array, told: (band: Band) => string, known: Map<string, string>): void {
  sketch.stroke(along(line), heavyMm);
  if (!band) return;
  for (const [from, to] of band.strokes) sketch.line(at(from), at(to), lightMm);
  const words = told(band), place = at(band.at), beyond = at([band.at[0] + band.out[0], band.at[1] + band.out[1]]);
  const toward: Xy = [beyond[0] - place[0], beyond[1] - place[1]];
  const letter = known.get(words);
  if (letter !== undefined) return sketch.mark(letter, place, toward);
  sketch.key(words, place, toward);
  known.set(words, sketch.told[sketch.told.length - 1]![0]);
}
