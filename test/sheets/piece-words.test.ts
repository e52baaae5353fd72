import { describe, expect, test } from "vitest";
import { arrange } from "#sheets/arrange.ts";
import { jointStrips } from "#sheets/joint-strips.ts";
import { textWidth } from "#sheets/lettering.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import type { Lettering } from "#sheets/pen.ts";
import { drawPiece } from "#sheets/piece-drawing.ts";
import { profileOf } from "#sheets/shoe-picture.ts";
import { samplePair } from "../support/sample-pair.ts";

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

  test("every named mark has its name beside it", () => {
    for (const { placed, words } of drawings) {
      for (const mark of placed.piece.marks) if (mark.kind !== "text") expect(words.some((w) => w.text === mark.name)).toBe(true);
    }
  });
});
