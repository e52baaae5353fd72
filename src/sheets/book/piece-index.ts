import { capital } from "#base/listed.ts";
import type { Need } from "#making/need.ts";
import { cutLength } from "#making/amounts/cut-length.ts";
import { thicknessWords } from "#making/amounts/units.ts";
import type { Piece } from "#pieces/piece.ts";
import { areaInWords } from "../index-entries.ts";
import type { Block, Line } from "./block.ts";
import type { Book } from "./book.ts";
import { drawnName, inkSmallPiece, smallPiece } from "./draw-piece.ts";
import type { Chapter } from "./flow.ts";
import { plain } from "./numbers.ts";
import { columnsFor, tableBlocks } from "./table.ts";
import { body, heading, line, lines, small, strong, type Letters } from "./words.ts";

/** Pieces of one name and material of the pair: one is drawn, the others are the same or its mirror. */
export interface CutPiece {
  readonly piece: Piece;
  readonly left: number;
  readonly right: number;
}

/** Every kind of piece of the pair, in the order in which they are cut. */
export function cutPieces(pieces: readonly Piece[]): readonly CutPiece[] {
  const kinds = new Map<string, { piece: Piece; left: number; right: number }>();
  for (const piece of pieces) {
    const key = JSON.stringify([piece.name, piece.material, piece.net]);
    const kind = kinds.get(key) ?? { piece, left: 0, right: 0 };
    kind[piece.side] += piece.perPair;
    if (piece.side === "right") kind.piece = piece;
    kinds.set(key, kind);
  }
  return [...kinds.values()];
}

/** So many times smaller than true are the drawings of all pieces: the largest at which none is wider than its column. */
const smallness = [4, 5, 6, 8, 10] as const;
const pictureMm = 68;
const number: Letters = { heightMm: 5, stepMm: 7.5, bold: true };

/** Every piece with a drawing, how many, of what, how thick and large; and what is cut by length. */
export function piecesChapter({ input, room: { width } }: Book): Chapter {
  const all = cutPieces(input.pieces);
  const one = smallness.find((n) => all.every(({ piece }) => smallPiece(piece, 1 / n).wide <= pictureMm)) ?? smallness[smallness.length - 1]!;
  const columns = columnsFor(width, [{ head: "", mm: 14 }, { head: "Piece", mm: pictureMm + 4 }, { head: "" }, { head: "Cut for the pair", mm: 30 }]);
  const textMm = columns[2]!.mm - 3, countMm = columns[3]!.mm;
  const rows = all.map((kind, i) => {
    const { piece, left, right } = kind;
    return [
      [line(String(i + 1), number)],
      [drawingLine(piece, 1 / one, i)],
      [...lines(capital(piece.name), textMm, heading), ...lines(materialWords(piece, input.making.needs), textMm, body), ...lines(`${areaInWords(piece)} each${piece.net ? ", no allowances" : ""}`, textMm, body)],
      [line(String(left + right), number), ...lines(`${right} right, ${left} left`, countMm, body)],
    ] as const;
  });
  const drawn = tableBlocks(columns, rows).map((block, r): Block => (r === 0 ? block : { ...block, drawn: [{ name: drawnName("index", r - 1), ...smallPiece(all[r - 1]!.piece, 1 / one) }] }));
  const intro = `All pieces of the pair in the order in which they are cut, ${rows.length} kinds, drawn 1 : ${one} and lying on their longer side. Drawn is the right one; turn the pattern over for the left foot. An arrow with a head at both ends lies along the least stretch.`;
  return { title: "Pieces", blocks: [{ cells: [{ x: 0, lines: lines(intro, width, small) }], keep: true }, ...drawn.map((b, i) => (i === 0 ? { ...b, gapMm: 2 } : b)), ...stripBlocks(input.strips, width)] };
}

function stripBlocks(strips: Book["input"]["strips"], width: number): readonly Block[] {
  if (strips.length === 0) return [];
  const columns = columnsFor(width, [{ head: "Cut by length", mm: 44, letters: strong }, { head: "For the pair", mm: 24 }, { head: "Wide", mm: 20 }, { head: "Long", mm: 20 }, { head: "Of what, and where" }]);
  return tableBlocks(columns, strips.map((s) => [capital(s.name), String(s.perPair), `${plain(s.widthMm)} mm`, `${cutLength(s.lengthMm)} mm`, `${s.material}: ${s.where}`]), { gapMm: 6 });
}

function drawingLine(piece: Piece, scale: number, i: number): Line {
  const small = smallPiece(piece, scale);
  return { highMm: small.high + 1.5, ink: (ink, x, top) => inkSmallPiece(ink, small, x, top - 0.5, drawnName("index", i), ["arrow"]) };
}

/** Goods by the material of their pieces, where the words differ. */
const goodsOf: Readonly<Record<string, readonly string[]>> = { shank: ["shanks"], card: ["pattern card"], "heel leather": ["lift leather", "top piece leather"] };

/** "upper leather, 1.1 mm (2¾ oz)"; what is called as its material is told by its thickness alone. */
function materialWords({ name, material }: Piece, needs: readonly Need[]): string {
  const goods = goodsOf[material] ?? [material], need = needs.find((n) => goods.includes(n.good) && n.parts.some((part) => part.name === name));
  const own = need?.parts.find((part) => part.name === name)?.thicknessMm;
  // A layer's own is what its heel leaves to it, and is told to a tenth as in the steps.
  const mm = own === undefined ? need?.thicknessMm : Number(own.toFixed(1));
  const thick = mm === undefined ? "" : thickWords(mm, material);
  return [name === material && thick ? "" : material, thick].filter(Boolean).join(", ");
}

/** Leather is told in the trade's weights as well, boards and such are not. */
export const thickWords = (mm: number, good: string): string => (good.includes("leather") ? thicknessWords(mm, scaleOf(good)) : `${mm.toFixed(1)} mm`);

/** Soles and heels are told in irons, other leather in ounces. */
const scaleOf = (good: string): "oz" | "iron" => (/sole leather|heel leather|lift leather|top piece leather/.test(good) ? "iron" : "oz");
