import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { dxfText } from "#sheets/dxf.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { samplePair } from "../support/sample-pair.ts";

const input = samplePair();
const bytes = (await sheetsOf(input, unwatched)).find((f) => f.name === "pattern.dxf")!.bytes;
const lines = new TextDecoder().decode(bytes).split("\n");
/** Group codes with their values, two lines each. */
const groups = Array.from({ length: Math.floor(lines.length / 2) }, (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!] as const);
const variable = (name: string) => groups[groups.findIndex(([c, v]) => c === 9 && v === name) + 1]?.[1];

describe("pattern.dxf", () => {
  // DXF reference: AC1015 is R2000, $INSUNITS 4 is millimetres, $MEASUREMENT 1 is metric.
  test("says its version and that it is in millimetres", () => {
    expect([variable("$ACADVER"), variable("$INSUNITS"), variable("$MEASUREMENT")]).toEqual(["AC1015", "4", "1"]);
  });

  test("is plain ASCII, each group code a number", () => {
    expect(bytes.every((b) => b < 127)).toBe(true);
    expect(groups.every(([code]) => Number.isInteger(code))).toBe(true);
  });

  test("no handle is given twice", () => {
    const handles = groups.filter(([c]) => c === 5).map(([, v]) => v);
    // The header's seed of the next handle is the first and must be above all others.
    const [seed, ...used] = handles.map((h) => parseInt(h, 16));
    expect(new Set(used).size).toBe(used.length);
    expect(Math.max(...used)).toBeLessThan(seed!);
  });

  test("cut holds one closed outline a piece with the piece's own lengths", () => {
    const starts = groups.flatMap(([c, v], i) => (c === 0 && v === "LWPOLYLINE" ? [i] : []));
    const outlines = starts
      .map((s) => groups.slice(s, groups.findIndex(([c], i) => i > s && c === 0)))
      .filter((g) => g.some(([c, v]) => c === 8 && v === "cut"));
    expect(outlines).toHaveLength(input.pieces.length);
    outlines.forEach((g, i) => {
      expect(g.find(([c]) => c === 70)![1]).toBe("1");
      const xs = g.filter(([c]) => c === 10).map(([, v]) => Number(v)), ys = g.filter(([c]) => c === 20).map(([, v]) => Number(v));
      const around = xs.reduce((sum, x, k) => sum + Math.hypot(x - xs[(k + 1) % xs.length]!, ys[k]! - ys[(k + 1) % ys.length]!), 0);
      expect(around).toBeCloseTo(input.pieces[i]!.perimeterMm, 2);
    });
  });

  test("letters beyond ASCII are written as the format's escape", () => {
    expect(dxfText("½ ł^")).toBe("\\U+00BD \\U+0142^ ");
  });
});
