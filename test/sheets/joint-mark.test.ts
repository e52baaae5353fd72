import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { longMarkMm, markLines, shortMarkMm, slant, tickMm } from "#sheets/pdf/joint-mark.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines, type PdfPageLines } from "../support/pdf-lines.ts";
import { samplePair } from "../support/sample-pair.ts";
import { sampleRectangle } from "../support/sample-pieces.ts";

/** Where lines of one side meet the edge of the page laid on, if that side lies `apart` too far and `along` to the side, mm. */
const atEdge = (side: 1 | -1, along: number, apart: number): readonly number[] =>
  markLines(longMarkMm, side).slice(1, 3).map(([a, b]) => a[0] + ((b[0] - a[0]) * apart) / Math.abs(b[1] - a[1]) + along);

describe("joining marks", () => {
  test.each([longMarkMm, shortMarkMm])("half %i mm long: in true pages every line but the ticks runs on over the joint", (half) => {
    const [over, under] = [markLines(half, 1), markLines(half, -1)];
    // The long line and both slanting ones begin in one point; the slanting ones go on straight on the other side.
    for (const k of [0, 1, 2]) expect([over[k]![0], under[k]![0]]).toEqual([[0, 0], [0, 0]]);
    const slope = (l: (typeof over)[number]) => (l[1][1] - l[0][1]) / (l[1][0] - l[0][0]);
    expect(slope(over[1]!)).toBeCloseTo(slope(under[2]!), 12);
    expect(slope(over[2]!)).toBeCloseTo(slope(under[1]!), 12);
    expect(Math.abs(slope(over[1]!))).toBeCloseTo(1 / slant, 12);
    // Both pages show the strip of 10 mm: nothing reaches beyond its half.
    for (const [a, b] of [...over, ...under]) expect(Math.max(Math.abs(a[1]), Math.abs(b[1]))).toBeLessThan(5);
  });

  test("half a millimetre too far apart opens the cross by three between its arms, which an eye sees", () => {
    // The page below shows half a millimetre more of its mark: its arms have parted by then; the page above begins in one point.
    const [a, b] = atEdge(-1, 0, 0.5), [c, d] = atEdge(1, 0, 0);
    expect(Math.abs(a! - b!)).toBeCloseTo(2 * slant * 0.5, 9);
    expect(c).toBe(d);
  });

  test("a shift along of k quarters of a millimetre makes the k-th ticks meet and no others", () => {
    const ticks = (side: 1 | -1) => markLines(longMarkMm, side).slice(3).map(([a]) => a[0]);
    for (const k of [1, 2, 3]) {
      for (const sign of [1, -1]) {
        const shift = sign * 0.25 * k;
        const meet = ticks(1).flatMap((t) => ticks(-1).flatMap((u) => (Math.abs(t - (u + shift)) < 1e-9 ? [t] : [])));
        expect(meet).toEqual([sign * k * tickMm[0]]);
      }
    }
    // In true pages none meet but the long line.
    expect(ticks(1).filter((t) => ticks(-1).includes(t))).toEqual([]);
  });

  const ends = ({ lines }: PdfPageLines) => lines.filter((l) => l.stroked && l.xy.length === 4).map((l) => l.xy);

  test("two stand on every joint, far apart, at the same place of the pattern on both pages", async () => {
    const files = await sheetsOf(samplePair({ pieces: [sampleRectangle("long", 300, 200)] }), unwatched);
    const pages = await pdfLines(files[0]!.bytes);
    // Slanting lines of 12 mm along by 4 mm off an upright joint; the second page shows the sheet 160 mm (window less overlap) farther on.
    const slanting = (page: PdfPageLines) => ends(page).filter((xy) => Math.abs(Math.abs(xy[3]! - xy[1]!) - longMarkMm) < 1e-2 && Math.abs(Math.abs(xy[2]! - xy[0]!) - longMarkMm / slant) < 1e-2);
    const [left, right] = [slanting(pages[1]!), slanting(pages[2]!)];
    expect(left).toHaveLength(8);
    expect(right).toHaveLength(8);
    left.forEach((xy, i) => {
      expect(xy[0]! - right[i]![0]!).toBeCloseTo(160, 3);
      expect(xy[1]!).toBeCloseTo(right[i]![1]!, 3);
    });
    // A turn of a page shows as opposite steps at both: over this distance 0.2 degrees make half a millimetre.
    const apart = Math.max(...left.map((xy) => xy[1]!)) - Math.min(...left.map((xy) => xy[1]!));
    expect(apart * Math.sin((0.2 * Math.PI) / 180)).toBeGreaterThan(0.4);
  });
});
