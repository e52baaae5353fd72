import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import type { Layer } from "#sheets/pen.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { samplePair } from "../support/sample-pair.ts";

interface Told {
  readonly sheet: { readonly widthMm: number; readonly heightMm: number };
  readonly pieces: readonly { readonly name: string; readonly side: string; readonly outlineMm: readonly (readonly [number, number])[]; readonly placement: { readonly xMm: number; readonly yMm: number; readonly rotationDeg: number } }[];
}

async function written(layers?: readonly Layer[]): Promise<{ readonly text: string; readonly report: Told }> {
  const files = await sheetsOf(samplePair(layers && { choices: sheetChoicesFrom({ layers }) }), unwatched);
  const decoded = (name: string) => new TextDecoder().decode(files.find((f) => f.name === name)!.bytes);
  return { text: decoded("pattern.svg"), report: JSON.parse(decoded("report.json")) as Told };
}
const { text, report } = await written();
const groups = (svg: string) => [...svg.matchAll(/<g id="(\w+)"/g)].map((m) => m[1]);

type Xy = readonly [number, number];
const between = (a: Xy, b: Xy, t: number): Xy => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
/** A point of a cubic by de Casteljau's corners cut off. */
function onCubic(p: readonly [Xy, Xy, Xy, Xy], t: number): Xy {
  const [a, b, c] = [between(p[0], p[1], t), between(p[1], p[2], t), between(p[2], p[3], t)];
  return between(between(a, b, t), between(b, c, t), t);
}

/** Points of a path of M, l, c and z, by the rules of SVG 1.1, section 8.3. */
function pointsOf(d: string): readonly Xy[] {
  const out: Xy[] = [];
  for (const [, command, numbers] of d.matchAll(/([Mlcz])([^Mlcz]*)/g)) {
    const v = (numbers!.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    const at = out[out.length - 1] ?? [0, 0];
    const point = (i: number): Xy => [at[0] + v[i]!, at[1] + v[i + 1]!];
    if (command === "M") out.push([v[0]!, v[1]!]);
    else if (command === "l") out.push(point(0));
    else if (command === "c") for (let k = 1; k <= 40; k++) out.push(onCubic([at, point(0), point(2), point(4)], k / 40));
  }
  return out;
}

/** How far a point lies off a closed line. */
function away([x, y]: Xy, line: readonly Xy[]): number {
  return line.reduce((least, [ax, ay], i) => {
    const [bx, by] = line[(i + 1) % line.length]!;
    const square = (bx - ax) ** 2 + (by - ay) ** 2;
    const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square)) : 0;
    return Math.min(least, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
  }, Infinity);
}

describe("pattern.svg", () => {
  // CSS Values: 1 mm in width and height, and a viewBox of the same numbers, make one user unit one millimetre.
  test("one user unit is one millimetre", () => {
    const root = /<svg[^>]*>/.exec(text)![0];
    const width = /width="([\d.]+)mm"/.exec(root)![1], height = /height="([\d.]+)mm"/.exec(root)![1];
    expect(root).toContain(`viewBox="0 0 ${width} ${height}"`);
    expect(Number(width)).toBe(report.sheet.widthMm);
  });

  test("has the groups cut, mark, fold and text, or those that were chosen", async () => {
    expect(groups(text)).toEqual(["cut", "mark", "fold", "text"]);
    const some = await written(["text", "mark"]);
    expect(groups(some.text)).toEqual(["mark", "text"]);
    expect(some.text.includes("<text")).toBe(true);
  });

  test("outlines are curves, and equal the report's within 0.01 mm", () => {
    const cut = /<g id="cut"[^>]*>([\s\S]*?)<\/g>/.exec(text)![1]!;
    const paths = [...cut.matchAll(/data-piece="([^"]*)" data-side="([^"]*)"[^>]* d="(M[^"]*z)"/g)];
    expect(paths).toHaveLength(report.pieces.length);
    expect(/c-?[\d.]+/.test(cut)).toBe(true);
    report.pieces.forEach((piece, i) => {
      const [, name, side, d] = paths[i]!;
      expect([name, side]).toEqual([piece.name, piece.side]);
      if (side === "left") return; // the mirror image of its twin
      const turn = (piece.placement.rotationDeg * Math.PI) / 180;
      const wanted = piece.outlineMm.map(([x, y]): Xy => [
        Math.cos(turn) * x - Math.sin(turn) * y + piece.placement.xMm,
        report.sheet.heightMm - (Math.sin(turn) * x + Math.cos(turn) * y + piece.placement.yMm),
      ]);
      const found = pointsOf(d!);
      expect(Math.max(...wanted.map((p) => away(p, found)), ...found.map((p) => away(p, wanted)))).toBeLessThan(0.01);
    });
  });
});
