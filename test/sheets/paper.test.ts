import { describe, expect, test } from "vitest";
import { pagesAlong, papers } from "#sheets/paper.ts";
import { pointsPerMm } from "#sheets/pdf/page-ink.ts";

describe("paper and pages", () => {
  // ISO 216 tables; Letter is 8½ × 11 in.
  test("paper sizes", () => {
    expect([papers.A4.widthMm, papers.A4.heightMm]).toEqual([210, 297]);
    expect(papers.Letter.widthMm).toBeCloseTo(8.5 * 25.4, 9);
    expect(papers.Letter.heightMm).toBeCloseTo(11 * 25.4, 9);
    expect([papers.A3.widthMm, papers.A3.heightMm]).toEqual([297, 420]);
    expect([papers.A2.widthMm, papers.A2.heightMm]).toEqual([420, 594]);
  });

  // 72 points in an inch of 25.4 mm (ISO 32000-1): 1 mm = 2.834645669 pt, A4 = 595.275591 × 841.889764 pt.
  test("points", () => {
    expect(pointsPerMm).toBeCloseTo(2.834645669, 9);
    expect(100 * pointsPerMm).toBeCloseTo(283.4645669, 7);
    expect(papers.A4.widthMm * pointsPerMm).toBeCloseTo(595.275591, 6);
    expect(papers.A4.heightMm * pointsPerMm).toBeCloseTo(841.889764, 6);
  });

  // A4 with margins of 10 mm shows 190 × 277 mm. By hand: ⌈(300 − 10)/(190 − 10)⌉ × ⌈(250 − 10)/(277 − 10)⌉ = 2 × 1; the same for 560 × 400: 4 × 2.
  test("pages for a sheet", () => {
    const pages = (wide: number, high: number) => [pagesAlong(wide, papers.A4.widthMm - 20, 10), pagesAlong(high, papers.A4.heightMm - 20, 10)];
    expect(pages(300, 250)).toEqual([2, 1]);
    expect(pages(560, 400)).toEqual([4, 2]);
  });

  // By hand: two windows of 190 sharing 10 show 370 exactly.
  test("what ends exactly at a border needs no further page", () => {
    expect(pagesAlong(370, 190, 10)).toBe(2);
    expect(pagesAlong(370.01, 190, 10)).toBe(3);
    expect(pagesAlong(0, 190, 10)).toBe(1);
  });
});
