import { describe, expect, test } from "vitest";
import { bottomPieces } from "#pieces/bottom/bottom-pieces.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { crossArc, type FormulaBottom } from "../../support/formula-bottoms.ts";

const none = { counterMm: 0, counterInnerMm: 0, counterOuterMm: 0, puffReachMm: 0 };
const rules = pieceRulesFor({ measures: { ballWidth: 76, seatWidth: 60 } });
const thick = 1.9;
const marginMm = 11;

function made({ last, bottom, net }: FormulaBottom, own: Partial<PieceSettings> = {}) {
  const settings = pieceSettingsFrom(rules, { upperThicknessMm: 1.1, liningThicknessMm: 0.8, toePuffMm: 0, marginLeftMm: marginMm, ...own });
  return bottomPieces({ net, on: { last, bottom }, settings, shell: none, chosen: { sock: "full", toeCap: false, backStrip: false, sideLining: false }, labels: { title: "", size: "" } });
}
const depthOf = (f: FormulaBottom) => made(f).made.filler!.depth!;

/** Both bottoms have the same ends, so what they differ by is so much more of the middle, whatever the ends hold. */
const sectionArea = (bottomOf: (lengthMm: number) => FormulaBottom): number => (depthOf(bottomOf(260)).volumeMm3 - depthOf(bottomOf(200)).volumeMm3) / 60;

describe("the filler between the margins, against closed forms", () => {
  const half = 34;

  test("a flat bottom: the area between the margins times their thickness", () => {
    const out = made(crossArc(240, half, 1e6, "round"));
    const { filler } = out.made;
    expect(filler!.depth!.volumeMm3 / (filler!.areaMm2 * thick)).toBeCloseTo(1, 2);
    expect(filler!.depth!.mostMm).toBeCloseTo(thick, 4);
    const numbers = out.drafts.find((d) => d.name === "bottom filler")!.labels.flatMap((b) => b.lines.map((l) => l.text)).filter((text) => /^\d/.test(text));
    expect(numbers.length).toBeGreaterThan(4);
    expect(new Set(numbers)).toEqual(new Set(["1.9"]));
    // An oval with straight sides, drawn in: (L − 2r) · 2(r − m) + π (r − m)².
    expect(filler!.areaMm2 / ((240 - 2 * half) * 2 * (half - marginMm) + Math.PI * (half - marginMm) ** 2)).toBeCloseTo(1, 3);
  });

  test.each([150, 220, 400])("rounded by a circle of %i mm: margins times width, less the segment of the circle", (radius) => {
    // The margin ends 11 mm inside the edge, measured along the arc.
    const alpha = Math.asin(half / radius) - marginMm / radius;
    const segment = radius * radius * (alpha - Math.sin(alpha) * Math.cos(alpha));
    const expected = (2 * radius * Math.sin(alpha) * thick) / Math.cos(alpha) - segment;
    expect(sectionArea((lengthMm) => crossArc(lengthMm, half, radius, "round")) / expected).toBeCloseTo(1, 2);
  });

  test.each([150, 400])("hollow by a circle of %i mm: the sole rests on the edges, and the hollow is filled too", (radius) => {
    const rim = Math.sqrt(radius * radius - half * half), inner = Math.asin(half / radius) - marginMm / radius;
    const y = radius * Math.sin(inner);
    // Height of the arc over the line through its rims, from −y to y, and the margin's thickness at the rim.
    const over = radius * radius * (inner + Math.sin(inner) * Math.cos(inner)) - 2 * y * rim;
    const expected = over + (2 * y * thick * radius) / rim;
    expect(sectionArea((lengthMm) => crossArc(lengthMm, half, radius, "hollow")) / expected).toBeCloseTo(1, 2);
    const { mostMm } = depthOf(crossArc(240, half, radius, "hollow"));
    expect(Math.abs(mostMm - (radius - rim + (thick * radius) / rim))).toBeLessThan(0.02);
  });

  test("thickness at the vertices holds the same volume as the sections", () => {
    const bottom = crossArc(240, half, 220, "hollow");
    const { thicknessMm, volumeMm3 } = depthOf(bottom);
    const t = bottom.bottom.bottom.mesh.triangles, { uv } = bottom.bottom;
    let sum = 0;
    for (let f = 0; f < t.length; f += 3) {
      const [a, b, c] = [t[f]!, t[f + 1]!, t[f + 2]!];
      const area = ((uv[2 * b]! - uv[2 * a]!) * (uv[2 * c + 1]! - uv[2 * a + 1]!) - (uv[2 * c]! - uv[2 * a]!) * (uv[2 * b + 1]! - uv[2 * a + 1]!)) / 2;
      sum += (area * (thicknessMm[a]! + thicknessMm[b]! + thicknessMm[c]!)) / 3;
    }
    // The triangles that the margin's end crosses are cut off there, on the map they run out.
    expect(Math.abs(sum / volumeMm3 - 1)).toBeLessThan(0.04);
  });

  test("a bottom rounder than the margins are thick stands out between them, and that is said", () => {
    const codes = made(crossArc(240, half, 80, "round")).findings.map((f) => f.code);
    expect(codes).toContain("insole-proud");
    expect(made(crossArc(240, half, 220, "round")).findings.map((f) => f.code)).not.toContain("insole-proud");
  });

  test("thin leather leaves nothing to fill, a deep hollow wants two layers, and margins that meet leave no filler", () => {
    expect(made(crossArc(240, half, 400, "round"), { upperThicknessMm: 0.5, liningThicknessMm: 0.4, marginLeftMm: 12 }).findings.map((f) => f.code)).not.toContain("filler-deep");
    expect(made(crossArc(240, half, 90, "round"), { upperThicknessMm: 0.1, liningThicknessMm: 0.1 }).findings.map((f) => f.code)).toContain("filler-nothing");
    expect(made(crossArc(240, half, 120, "hollow")).findings.map((f) => f.code)).toContain("filler-deep");
    const wide = made(crossArc(240, 20, 400, "round"), { marginLeftMm: 21, lastingToeMm: 25, lastingToeSidesMm: 25, lastingForepartMm: 25, lastingOuterWaistMm: 25, lastingInnerWaistMm: 25, lastingHeelMm: 25 });
    expect(wide.findings.map((f) => f.code)).toContain("margins-meet");
    expect(wide.made.filler).toBeUndefined();
    expect(wide.drafts.map((d) => d.name)).not.toContain("bottom filler");
  });
});
