import { describe, expect, test } from "vitest";
import { placedXy, type PlacedPiece } from "#sheets/arrange.ts";
import { benchOf, offStrips, wordsOnSheet } from "#sheets/bench.ts";
import { drawPiece } from "#sheets/piece-drawing.ts";
import { bounds } from "#plane/measure.ts";
import { profileOf } from "#sheets/shoe-picture.ts";
import { sampleLast, sampleLines } from "../support/sample-pair.ts";
import { samplePieces } from "../support/sample-pieces.ts";

const last = sampleLast();
const plate = { title: "Formula pump", size: "38", profile: profileOf(last, sampleLines(last)) };

function laid(name: string, rotationDeg: number): PlacedPiece {
  const piece = samplePieces().find((p) => p.name === name)!;
  const place = { xMm: 200, yMm: 50, rotationDeg };
  const outline = placedXy(piece.outline.xy, place);
  return { piece, batch: 0, place, outline, bounds: bounds({ xy: outline }) };
}

describe("writing on a piece that lies slantwise", () => {
  test("its cutting line is that of the sheet, and its words run along and across it", () => {
    const placed = laid("outsole", 63);
    const { strokes, words } = drawPiece(placed, plate, []);
    expect(strokes[0]!.xy).toBe(placed.outline);
    expect(words.length).toBeGreaterThan(2);
    for (const w of words) expect([-27, 63]).toContain(Math.round(w.angleDeg));
  });

  test("its marks go where the piece's place takes them", () => {
    const placed = laid("upper", 15);
    const fold = placed.piece.marks.find((m) => m.kind === "line" && m.use === "fold")!;
    const want = placedXy(fold.kind === "line" ? fold.line.xy : new Float64Array(), placed.place);
    const got = drawPiece(placed, plate, []).strokes.find((s) => s.kind === "fold")!.xy;
    got.forEach((v, i) => expect(v).toBeCloseTo(want[i]!, 9));
  });

  test("goes to the bench and back without moving", () => {
    const placed = laid("outsole", 117);
    const { straight, leanDeg } = benchOf(placed);
    expect([straight.place.rotationDeg, leanDeg]).toEqual([90, 27]);
    const at = { text: "x", xMm: straight.outline[0]!, yMm: straight.outline[1]!, heightMm: 3, angleDeg: 0, bold: false };
    const back = wordsOnSheet(at, leanDeg);
    expect(back.xMm).toBeCloseTo(placed.outline[0]!, 9);
    expect(back.yMm).toBeCloseTo(placed.outline[1]!, 9);
  });

  // By hand: a square of 10 mm turned by 45° about the origin reaches from -7.07 to 7.07 mm across.
  test("a strip is met by the turned box", () => {
    const box = { x: 0, y: 0, width: 10, height: 10 };
    const strip = (x: number) => offStrips([{ x, y: -100, width: 1, height: 200 }], 45)(box);
    expect([strip(-8.2), strip(-7.9), strip(7), strip(7.2)]).toEqual([true, false, false, true]);
  });
});

describe("words and joints", () => {
  test("no name of a mark runs across a joint where there is room beside it", () => {
    const placed = laid("upper", 0);
    // A strip through the middle of the forepart, clear of every notch and prick.
    const strip = { x: 160, y: -400, width: 10, height: 1000 };
    const off = offStrips([strip], 0);
    const named = drawPiece(placed, plate, [strip]).words.filter((w) => w.angleDeg === 0 && w.text !== "inside");
    const clear = (w: (typeof named)[number]) => off({ x: w.xMm, y: w.yMm, width: 1.2 * w.text.length, height: 2 });
    expect(named.length).toBeGreaterThan(5);
    for (const w of named) expect(clear(w)).toBe(true);
    // Without the strip some words would lie there.
    expect(drawPiece(placed, plate, []).words.every(clear)).toBe(false);
  });

  test("the word for the inside moves away from a joint, and stays on its side of the piece", () => {
    const placed = laid("upper", 0);
    const word = (strips: Parameters<typeof drawPiece>[2]) => drawPiece(placed, plate, strips).words.find((w) => w.text === "inside")!;
    const before = word([]);
    const strip = { x: before.xMm + 2, y: -400, width: 10, height: 1000 };
    const after = word([strip]);
    expect(after.xMm > strip.x + strip.width || after.xMm < strip.x - 9).toBe(true);
    expect(Math.abs(after.yMm - before.yMm)).toBeLessThan(15);
  });
});
