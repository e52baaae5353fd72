import { describe, expect, test } from "vitest";
import { blockSize, laidText, mirrorBlock, placeBlock, readable } from "#pieces/labels.ts";
import { wrapped } from "#pieces/label-text.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { inOrder, widthAt } from "#pieces/zones.ts";
import { flatPump } from "../support/flat-pump.ts";

const rules = pieceRulesFor(flatPump().last);

describe("rules", () => {
  test("every default lies in its range on a step, and says why and from where", () => {
    for (const [key, r] of Object.entries(rules)) {
      expect(r.value, key).toBeGreaterThanOrEqual(r.min);
      expect(r.value, key).toBeLessThanOrEqual(r.max);
      expect(r.unit).toBe("mm");
      expect(Math.abs((r.value - r.min) / r.step - Math.round((r.value - r.min) / r.step)), key).toBeLessThan(1e-9);
      expect(r.why.length, key).toBeGreaterThan(20);
      expect(r.source.length, key).toBeGreaterThan(5);
      expect(r.source, key).not.toMatch(/\[/);
    }
  });

  // Hand work (common practice, no source): at least 18 mm for the pincers; machines 9.5 to 16 mm (factory manual of 1957).
  test("lasting margins are those of hand work", () => {
    for (const key of ["lastingToeMm", "lastingToeSidesMm", "lastingForepartMm", "lastingOuterWaistMm", "lastingInnerWaistMm", "lastingHeelMm"] as const) {
      expect(rules[key].value).toBeGreaterThanOrEqual(18);
    }
    expect(rules.lastingInnerWaistMm.value).toBeGreaterThan(rules.lastingOuterWaistMm.value);
  });

  test("margins of both sides cannot meet in the middle of the bottom", () => {
    const { last } = flatPump();
    expect(rules.lastingHeelMm.max).toBeLessThan(last.measures.seatWidth / 2);
    expect(rules.lastingToeMm.max).toBeLessThan(last.measures.ballWidth / 2);
  });

  test("what the maker chose stands, the rest follows the rules", () => {
    const s = pieceSettingsFrom(rules, { toplineFoldMm: 4 });
    expect(s.toplineFoldMm).toBe(4);
    expect(s.backSeamMm).toBe(rules.backSeamMm.value);
    expect(Object.keys(s).sort()).toEqual(Object.keys(rules).sort());
  });
});

describe("zones", () => {
  const stations = [{ s: 0, mm: 20 }, { s: 40, mm: 18 }, { s: 80, mm: 18 }];

  test("widths hold at stations, half-way lies the mean, beyond the ends they stay", () => {
    expect([0, 20, 40, 60, 80, -5, 99].map((s) => widthAt(stations, s))).toEqual([20, 19, 18, 18, 18, 20, 18]);
  });

  test("neither steps nor kinks: first and second differences stay small", () => {
    let before = widthAt(stations, -1);
    let slope = 0;
    for (let s = -0.9; s < 90; s += 0.1) {
      const now = widthAt(stations, s);
      // Greatest slope of 6t⁵ − 15t⁴ + 10t³ is 15/8, greatest second derivative 10/√3: over 40 mm and 2 mm.
      expect(Math.abs(now - before) / 0.1).toBeLessThan((1.876 * 2) / 40);
      expect(Math.abs((now - before) / 0.1 - slope) / 0.1).toBeLessThan((5.8 * 2) / 1600);
      slope = (now - before) / 0.1;
      before = now;
    }
  });

  test("zones out of order on an odd last are put in order", () => {
    expect(inOrder([{ s: 0, mm: 1 }, { s: 40, mm: 2 }, { s: 30, mm: 3 }]).map((s) => s.s)).toEqual([0, 40, 42]);
  });
});

describe("labels", () => {
  const lines = [{ text: "upper", heightMm: 5 }, { text: "{side}, size 38", heightMm: 3 }];
  const box = { xy: Float64Array.of(0, 0, 100, 0, 100, 60, 0, 60) };

  test("readable angles", () => {
    expect([0, 45, 90, 120, -90, 180, -135, 270].map(readable)).toEqual([0, 45, -90, -60, -90, 0, 45, -90]);
  });

  test("a block stands where it is wished when there is room, else beside the line in its way, else smaller", () => {
    expect(placeBlock(lines, { within: box, avoid: [], near: [50, 30], angleDeg: 0 }).at).toEqual([50, 30]);
    const beside = placeBlock(lines, { within: box, avoid: [{ xy: Float64Array.of(0, 30, 100, 30) }], near: [50, 30], angleDeg: 0 });
    expect(Math.abs(beside.at[1] - 30)).toBeGreaterThan(blockSize(lines)[1] / 2);
    expect(beside.lines[0]!.heightMm).toBe(5);
    const narrow = { xy: Float64Array.of(0, 0, 30, 0, 30, 30, 0, 30) };
    expect(placeBlock(lines, { within: narrow, avoid: [], near: [15, 15], angleDeg: 0 }).lines[0]!.heightMm).toBeLessThan(5);
  });

  test("texts say their side; a mirrored block keeps the order of its lines", () => {
    const block = { lines, at: [10, 20] as const, angleDeg: 0 };
    const right = laidText(block, "right");
    const left = laidText(mirrorBlock(block), "left");
    expect(right.map((m) => m.kind === "text" && m.text)).toEqual(["upper", "right, size 38"]);
    expect(left.map((m) => m.kind === "text" && m.text)).toEqual(["upper", "left, size 38"]);
    for (const [a, b] of [right, left]) {
      if (a?.kind !== "text" || b?.kind !== "text") throw new Error("texts expected");
      expect(a.at[1]).toBeGreaterThan(b.at[1]);
    }
  });

  test("long titles break between words, endless words are cut", () => {
    expect(wrapped("a pair for the summer of next year")).toEqual(["a pair for the summer of", "next year"]);
    expect(wrapped("x".repeat(40))).toEqual(["x".repeat(24)]);
    expect(wrapped("  ")).toEqual([]);
  });
});
