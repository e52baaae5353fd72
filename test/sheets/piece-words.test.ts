import { describe, expect, test } from "vitest";
import { arrange } from "#sheets/arrange.ts";
import { jointStrips } from "#sheets/joint-strips.ts";
import { textWidth } from "#sheets/lettering.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import type { Lettering } from "#sheets/pen.ts";
import { drawPiece } from "#sheets/piece-drawing.ts";
import { profileOf } from "#sheets/shoe-picture.ts";
import type { Mark } from "#pieces/piece.ts";
import { samplePair } from "../support/sample-pair.ts";
import { samplePiece } from "../support/sample-pieces.ts";

const input = samplePair();
const sheet = arrange(input.pieces, gridOf(papers.A4));
const plate = { title: "Formula pump", size: "38", profile: profileOf(input.last, input.lines) };
const drawings = sheet.placed.map((p) => drawPiece(p, plate, jointStrips(sheet, p)));

/** The upright box of level or upright words. */
function boxOf(w: Lettering) {
  const width = textWidth(w.text, w.heightMm, w.bold);
  return w.angleDeg === 0 ? { x0: w.xMm, y0: w.yMm, x1: w.xMm + width, y1: w.yMm + w.heightMm } : { x0: w.xMm - w.heightMm, y0: w.yMm, x1: w.xMm, y1: w.yMm + width };
}

describe("words on a piece", () => {
  test("no words lie on other words", () => {
    for (const { words } of drawings) {
      const boxes = words.filter((w) => w.angleDeg === 0 || w.angleDeg === 90).map(boxOf);
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1)) expect(a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1).toBe(false);
      });
    }
  });

  test("no words lie on a line", () => {
    for (const { words, strokes } of drawings) {
      for (const box of words.map(boxOf)) {
        for (const { kind, xy } of strokes) {
          if (kind === "leader") continue;
          for (let i = 0; i < xy.length; i += 2) expect(xy[i]! > box.x0 && xy[i]! < box.x1 && xy[i + 1]! > box.y0 && xy[i + 1]! < box.y1).toBe(false);
        }
      }
    }
  });

  test("no leader runs through words other than its own", () => {
    for (const { words, strokes } of drawings) {
      const boxes = words.map(boxOf);
      for (const { kind, xy } of strokes) {
        if (kind !== "leader") continue;
        for (let t = 0.05; t < 1; t += 0.05) {
          const x = xy[0]! + t * (xy[2]! - xy[0]!), y = xy[1]! + t * (xy[3]! - xy[1]!);
          expect(boxes.some((b) => x > b.x0 && x < b.x1 && y > b.y0 && y < b.y1)).toBe(false);
        }
      }
    }
  });

  test("each piece says its name, side, size, count, and whether it is net", () => {
    for (const { placed, words } of drawings) {
      const said = words.map((w) => w.text.toLowerCase()).join("\n");
      expect(said).toContain(placed.piece.name);
      expect(said).toContain(`${placed.piece.side}, size 38`);
      expect(said).toContain("cut 1 in");
      expect(said).toContain(placed.piece.net ? "net: no allowances" : "allowances included");
    }
  });

  test("marks of one name close to each other are named once; a line's pricks and what stands on the piece anyway not again", () => {
    const at = (name: string, x: number, y: number): Mark => ({ kind: "prick", name, at: [x, y] });
    const seam: Mark = { kind: "line", name: "back seam", use: "stitch", line: { xy: Float64Array.of(20, 20, 140, 20) } };
    const inside: Mark = { kind: "notch", name: "inside", at: [80, 80], toward: [80, 77] };
    const nails = [[30, 60], [60, 62], [90, 60]].map(([x, y]) => at("nail", x!, y!));
    const far = [at("back point", 10, 40), at("back point", 150, 40)];
    const written: Mark = { kind: "text", text: "inside", at: [80, 40], heightMm: 4, angleDeg: 0 };
    const piece = samplePiece("lift", "right", "heel leather", [[0, 0], [160, 0], [160, 80], [0, 80]], [seam, at("back seam", 22, 20), at("back seam", 138, 20), ...nails, ...far, inside, written]);
    const placed = arrange([piece], gridOf(papers.A4)).placed[0]!;
    const said = drawPiece(placed, plate, []).words.map((w) => w.text);
    const times = (text: string) => said.filter((t) => t === text).length;
    expect(["back seam", "nail", "back point", "inside"].map(times)).toEqual([1, 1, 2, 1]);
  });

  test("the word that tells the inner half makes way for a line across it", () => {
    const tab: Mark = { kind: "line", name: "cut out", use: "place", line: { xy: Float64Array.of(70, 80, 80, 38, 90, 80) } };
    const written: Mark = { kind: "text", text: "inside", at: [80, 40], heightMm: 4, angleDeg: 5 };
    const piece = samplePiece("upper", "right", "upper leather", [[0, 0], [160, 0], [160, 80], [0, 80]], [tab, written]);
    const { words, strokes } = drawPiece(arrange([piece], gridOf(papers.A4)).placed[0]!, plate, []);
    const box = boxOf(words.find((w) => w.text === "inside")!);
    const { xy } = strokes.find((s) => s.kind === "place")!;
    for (let i = 0; i + 3 < xy.length; i += 2) {
      for (let t = 0; t <= 1; t += 0.01) {
        const [x, y] = [xy[i]! + t * (xy[i + 2]! - xy[i]!), xy[i + 1]! + t * (xy[i + 3]! - xy[i + 1]!)];
        expect(x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1).toBe(false);
      }
    }
  });

  test("words keep to the paper that is surely on the page: within a millimetre of the piece's box", () => {
    for (const { words, placed } of drawings) {
      if (placed.place.rotationDeg % 90 !== 0) continue;
      const { minX, minY, maxX, maxY } = placed.bounds;
      for (const box of words.filter((w) => w.angleDeg === 0 || w.angleDeg === 90).map(boxOf)) {
        expect(box.x0).toBeGreaterThan(minX - 1);
        expect(box.y0).toBeGreaterThan(minY - 1);
        expect(box.x1).toBeLessThan(maxX + 1);
        expect(box.y1).toBeLessThan(maxY + 1);
      }
    }
  });

  test("every named mark has its name beside it", () => {
    for (const { placed, words } of drawings) {
      for (const mark of placed.piece.marks) if (mark.kind !== "text") expect(words.some((w) => w.text === mark.name)).toBe(true);
    }
  });
});
