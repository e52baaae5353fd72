import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { samplePair } from "../support/sample-pair.ts";

const input = samplePair();
const files = await sheetsOf(input, unwatched);
const text = new TextDecoder().decode(files.find((f) => f.name === "pattern.svg")!.bytes);
const report = JSON.parse(new TextDecoder().decode(files.find((f) => f.name === "report.json")!.bytes)) as {
  sheet: { widthMm: number; heightMm: number };
  pieces: { name: string; side: string; outlineMm: [number, number][]; placement: { xMm: number; yMm: number; rotationDeg: number } }[];
};

describe("pattern.svg", () => {
  // CSS Values: 1 mm in width and height, and a viewBox of the same numbers, make one user unit one millimetre.
  test("one user unit is one millimetre", () => {
    const root = /<svg[^>]*>/.exec(text)![0];
    const width = /width="([\d.]+)mm"/.exec(root)![1], height = /height="([\d.]+)mm"/.exec(root)![1];
    expect(root).toContain(`viewBox="0 0 ${width} ${height}"`);
    expect(Number(width)).toBe(report.sheet.widthMm);
  });

  test("has the groups cut, mark, fold and text", () => {
    expect([...text.matchAll(/<g id="(\w+)"/g)].map((m) => m[1])).toEqual(["cut", "mark", "fold", "text"]);
  });

  test("outlines equal the report's within 0.01 mm", () => {
    const cut = /<g id="cut"[^>]*>([\s\S]*?)<\/g>/.exec(text)![1]!;
    const paths = [...cut.matchAll(/data-piece="([^"]*)" data-side="([^"]*)"[^>]* d="M([^"]*)Z"/g)];
    expect(paths).toHaveLength(report.pieces.length);
    report.pieces.forEach((piece, i) => {
      const [, name, side, d] = paths[i]!;
      expect([name, side]).toEqual([piece.name, piece.side]);
      const points = d!.split("L").map((p) => p.split(" ").map(Number));
      expect(points).toHaveLength(piece.outlineMm.length);
      const turn = (piece.placement.rotationDeg * Math.PI) / 180;
      piece.outlineMm.forEach(([x, y], k) => {
        const sx = Math.cos(turn) * x - Math.sin(turn) * y + piece.placement.xMm, sy = Math.sin(turn) * x + Math.cos(turn) * y + piece.placement.yMm;
        expect(Math.hypot(points[k]![0]! - sx, report.sheet.heightMm - points[k]![1]! - sy)).toBeLessThan(0.01);
      });
    });
  });
});
