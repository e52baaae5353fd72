import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { checkParts } from "#pieces/check-parts.ts";
import { usualParts } from "#pieces/choices.ts";
import { bendsOf, evenLine, mostBends } from "#pieces/even.ts";
import { netUpper } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { bendChanges } from "#plane/curvature.ts";
import { flatPump } from "../support/flat-pump.ts";
import { cutUpper } from "../support/whole-cut.ts";

/** A circle of 60 mm with a wave round it: `waves` up and down of `mm` each way. */
const waved = (waves: number, mm: number) => ({
  xy: Float64Array.from({ length: 2 * 500 }, (_, i) => {
    const t = (2 * Math.PI * (i >> 1)) / 500;
    return (60 + mm * Math.cos(waves * t)) * (i % 2 === 0 ? Math.cos(t) : Math.sin(t));
  }),
});

describe("even edges", () => {
  // By hand: the curvature of r = R + a cos kt changes sign where a k² > R nearly; each wave then gives two changes.
  test("changes of bend are counted round a closed outline, bows too small to see left out", () => {
    expect(bendsOf(waved(12, 0.1))).toBe(0);
    expect(bendsOf(waved(12, 2))).toBeGreaterThanOrEqual(23);
    expect(bendChanges(waved(40, 0.06), undefined, undefined, 0)).toBeGreaterThan(40);
    expect(bendsOf(waved(40, 0.06))).toBe(0);
  });

  test("a corner parts an outline: a square has none to count", () => {
    const side = (f: (t: number) => readonly [number, number]) => Array.from({ length: 50 }, (_, i) => f(2 * i)).flat();
    const square = { xy: Float64Array.from([...side((t) => [t, 0]), ...side((t) => [100, t]), ...side((t) => [100 - t, 100]), ...side((t) => [0, 100 - t])]) };
    expect(bendsOf(square)).toBe(0);
  });

  test("a rough edge gets only as much room as it needs, to 0.3 mm, and keeps its ends", () => {
    // An arc of a metre's radius with a slow wave of 0.12 mm on it: too much for 0.05 mm, not for 0.3.
    const rough = { xy: Float64Array.from({ length: 2 * 121 }, (_, i) => {
      const x = 2 * (i >> 1);
      return i % 2 === 0 ? x : (x * x) / 2000 + 0.12 * Math.sin(x / 3);
    }) };
    const fair = evenLine(rough);
    expect(bendChanges(rough, undefined, undefined, 0.02)).toBeGreaterThan(20);
    expect(bendChanges(fair, undefined, undefined, 0.02)).toBeLessThanOrEqual(mostBends);
    const arc = arcLengths(fair);
    for (let i = 0; i < rough.xy.length; i += 2) expect(nearestOn(fair, arc, rough.xy[i]!, rough.xy[i + 1]!).distance).toBeLessThanOrEqual(0.3);
    expect([...fair.xy.subarray(0, 2)]).toEqual([...rough.xy.subarray(0, 2)]);
  });

  test("an edge that stays uneven is told by the piece's name", () => {
    const pump = flatPump("right");
    const net = netUpper(pump.last, pump.lines, pump.flat);
    const settings = pieceSettingsFrom(pieceRulesFor(pump.last));
    const draft = cutUpper(net, settings, { title: "Practice pair", size: "38" });
    const found = checkParts({ panels: [], drafts: [{ ...draft, marks: [], outline: waved(12, 2) }], settings, chosen: { ...usualParts, edge: "taped" } });
    expect(found.map((f) => f.code)).toEqual(["edge-uneven"]);
    expect(explain(found[0]!)).toMatch(/^Edge uneven: the outline of the upper/);
  });
});
