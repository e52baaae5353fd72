import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
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

  const entities = (all: typeof groups) => all.flatMap(([c], i) => (c === 0 ? [all.slice(i, [...all.keys()].find((k) => k > i && all[k]![0] === 0))] : []));
  const onLayer = (layer: string) => entities(groups).filter((g) => g[0]![1] === "LWPOLYLINE" && g.some(([c, v]) => c === 8 && v === layer));

  test("cut holds one closed outline a piece with the piece's own lengths, curves as arcs", () => {
    const outlines = onLayer("cut");
    expect(outlines).toHaveLength(input.pieces.length);
    outlines.forEach((g, i) => {
      expect(g.find(([c]) => c === 70)![1]).toBe("1");
      const vertices: { x: number; y: number; bulge: number }[] = [];
      for (const [c, v] of g) {
        if (c === 10) vertices.push({ x: Number(v), y: NaN, bulge: 0 });
        else if (c === 20) vertices[vertices.length - 1]!.y = Number(v);
        else if (c === 42) vertices[vertices.length - 1]!.bulge = Number(v);
      }
      expect(Number(g.find(([c]) => c === 90)![1])).toBe(vertices.length);
      // DXF reference: bulge = tan(angle / 4); an arc's length is angle · chord / (2 sin(angle / 2)).
      const around = vertices.reduce((sum, { x, y, bulge }, k) => {
        const next = vertices[(k + 1) % vertices.length]!;
        const chord = Math.hypot(x - next.x, y - next.y), angle = 4 * Math.atan(Math.abs(bulge));
        return sum + (angle < 1e-6 ? chord : (angle * chord) / (2 * Math.sin(angle / 2)));
      }, 0);
      // The arcs bow outward between the points that the piece is told by.
      expect(Math.abs(around / input.pieces[i]!.perimeterMm - 1)).toBeLessThan(2e-4);
    });
    expect(outlines.some((g) => g.some(([c]) => c === 42))).toBe(true);
  });

  test("arcs run on without a kink", () => {
    // Between arcs and lines of one outline the direction turns at corners alone: nowhere by what a knife would feel, nor up to a real corner.
    const turns = onLayer("cut").flatMap((g) => {
      const v: number[][] = [];
      for (const [c, value] of g) {
        if (c === 10) v.push([Number(value), 0, 0]);
        else if (c === 20) v[v.length - 1]![1] = Number(value);
        else if (c === 42) v[v.length - 1]![2] = Number(value);
      }
      const chord = (k: number) => Math.atan2(v[(k + 1) % v.length]![1]! - v[k]![1]!, v[(k + 1) % v.length]![0]! - v[k]![0]!);
      return v.map(([, , bulge], k) => {
        const before = (k + v.length - 1) % v.length;
        const turn = chord(k) - 2 * Math.atan(bulge!) - (chord(before) + 2 * Math.atan(v[before]![2]!));
        return Math.abs((turn * 180) / Math.PI - 360 * Math.round(turn / (2 * Math.PI)));
      });
    });
    expect(turns.filter((t) => t > 0.05 && t < 5)).toEqual([]);
  });

  test("holds only the layers that were chosen, text as text", async () => {
    const some = (await sheetsOf(samplePair({ choices: sheetChoicesFrom({ layers: ["fold", "text"] }) }), unwatched)).find((f) => f.name === "pattern.dxf")!.bytes;
    const written = new TextDecoder().decode(some).split("\n");
    const pairs = Array.from({ length: Math.floor(written.length / 2) }, (_, i) => [Number(written[2 * i]), written[2 * i + 1]!] as const);
    const named = (code: number, all: typeof pairs) => new Set(all.filter(([c]) => c === code).map(([, v]) => v));
    const body = pairs.slice(pairs.findIndex(([c, v]) => c === 2 && v === "ENTITIES"), pairs.findIndex(([c, v]) => c === 2 && v === "OBJECTS"));
    expect(named(8, body)).toEqual(new Set(["fold", "text"]));
    expect(body.some(([c, v]) => c === 0 && v === "TEXT")).toBe(true);
    const layers = entities(pairs).filter((g) => g[0]![1] === "LAYER").map((g) => g.find(([c]) => c === 2)![1]);
    expect(layers).toEqual(["0", "fold", "text"]);
  });

  test("letters beyond ASCII are written as the format's escape", () => {
    expect(dxfText("½ ł^")).toBe("\\U+00BD \\U+0142^ ");
  });

  // DXF reference: %%d, %%c, %%p, %%u, %%o and %%nnn stand for other signs, %%% for one per cent sign; \U+ and four digits for any sign.
  test("what looks like a control code is written so that it reads as it was meant", () => {
    expect(dxfText("5 % wide")).toBe("5 % wide");
    expect(dxfText("100%%d")).toBe("100%%%%%%d");
    expect(dxfText("%%%")).toBe("%%%%%%%%%");
    expect(dxfText("a\\U+0041")).toBe("a\\U+005CU+0041");
  });
});
