// Lines of stitches against lengths that other code takes from the finished pieces: drawn lines walked point by point, closed forms, Steiner's formula.
import { describe, expect, test } from "vitest";
import type { PartChoices } from "#pieces/choices.ts";
import { toplineEdges, type ToplineEdge } from "#shell/settings.ts";
import { SweepBench, type Own } from "../support/parts-sweep.ts";
import { acrossMm, angleBetween, between, drawn, drawnMm, movedOut, lineOfStitches as line, pairOf, pieceOf, turning, walked } from "../support/sewn.ts";
import { demoMeasurements } from "#last/demo.ts";

const made = (parts: Partial<PartChoices>, edge: ToplineEdge = "taped", pieces: Own["pieces"] = {}) => pairOf({ parts, shell: { edge }, pieces });
const near = (a: number, b: number, mm: number, what = ""): void => expect(Math.abs(a - b), `${what}: ${a} beside ${b}`).toBeLessThanOrEqual(mm);

describe("the back seam", () => {
  test.each(["taped", "bound", "bagged", "raw"] as const)("%s: is sewn once, as long as its line is drawn on either bank of either foot", (edge) => {
    const pair = made({}, edge);
    const seam = line(pair, "back seam");
    expect([seam.stitch, seam.rows, seam.use]).toEqual(["lockstitch", 1, "closing"]);
    for (const side of ["right", "left"] as const) {
      const [inner] = drawnMm(pieceOf(pair, "upper", side), "back seam, inside"), [outer] = drawnMm(pieceOf(pair, "upper", side), "back seam, outside");
      near(inner!, outer!, 0.1, "banks");
      near(seam.lengthMm, inner!, 0.1, side);
    }
  });

  test("of two quarters joins them, over the same length as the net cards and the margin have", () => {
    const pair = made({ cut: "quarters" }, "raw");
    const seam = line(pair, "back seam");
    expect(seam.joins).toEqual(["inner quarter", "outer quarter"]);
    const card = pieceOf(pair, "inner quarter, net");
    // From the seat up to the back point; below it the margin of 18 mm, a little longer where the seam does not stand square on it.
    const net = walked(between(card, "seat, inside", "back point, inside"));
    expect(seam.lengthMm - net).toBeGreaterThan(17.9);
    expect(seam.lengthMm - net).toBeLessThan(18.6);
  });

  test("butted runs under a zigzag on the net line through one thickness of leather", () => {
    const pair = made({ backSeam: "butted" }, "raw");
    const seam = line(pair, "back seam");
    expect([seam.stitch, seam.stackMm]).toEqual(["zigzag", 1.1]);
    near(seam.lengthMm, line(made({}, "raw"), "back seam").lengthMm, 0.2);
  });

  test("ends below a dog-tail, which has stitches of its own from the seam out", () => {
    const pair = made({ backTop: "dog-tail" });
    const [outer] = drawnMm(pieceOf(pair, "upper"), "back seam, outside");
    near(line(pair, "back seam").lengthMm, outer!, 0.1);
    // 11 by 8 mm less 1.5 mm inside each edge, the upper one being the topline's row.
    near(line(pair, "dog-tail").lengthMm, 11 - 1.5 + 8 - 3, 1e-9);
  });
});

describe("seams at the sides and the inner waist", () => {
  test("lapped side seams: two rows each, as drawn on the vamp; a lap under 8 mm takes one", () => {
    const pair = made({ cut: "quarters", seam: "lapped" });
    const seams = [line(pair, "inner side seam"), line(pair, "outer side seam")];
    const rows = drawnMm(pieceOf(pair, "vamp"), "stitches");
    expect(rows.length).toBe(2);
    for (const { lengthMm, rows: count, use } of seams) {
      expect([count, use]).toEqual([2, "lapped"]);
      expect(Math.min(...rows.map((mm) => Math.abs(mm - lengthMm)))).toBeLessThan(0.1);
    }
    expect(seams[0]!.lengthMm).not.toBe(seams[1]!.lengthMm);
    expect(line(made({ cut: "quarters", seam: "lapped" }, "taped", { lapUnderMm: 6 }), "inner side seam").rows).toBe(1);
  });

  test.each(["quarters", "inner-seam"] as const)("closed, %s: as long as either bank is drawn", (cut) => {
    const pair = made({ cut });
    const names = cut === "quarters" ? [["side seam, inside", "inner side seam", "inner quarter"], ["side seam, outside", "outer side seam", "outer quarter"]] as const : [["inner seam", "inner seam", "upper"]] as const;
    for (const [mark, name, other] of names) {
      const banks = [...new Set([cut === "quarters" ? "vamp" : "upper", other])].flatMap((piece) => drawnMm(pieceOf(pair, piece), mark));
      expect(banks.length, mark).toBe(2);
      // Above the feather line they are equal; in the lasting margin below they run on in directions of their own.
      near(banks[0]!, banks[1]!, 0.2, `banks of ${mark}`);
      near(line(pair, name).lengthMm, (banks[0]! + banks[1]!) / 2, 0.05, name);
    }
  });
});

describe("rows along the topline", () => {
  // J. Steiner 1840: a row d inside a line that turns by θ to the left is shorter by d θ; where it ends on a bank at an angle φ, by d cot φ more.
  test.each([[1.5], [3]])("%f mm inside the net: by Steiner's formula from the card alone", (inMm) => {
    const pair = made({}, "raw", { stitchInMm: inMm });
    const card = pieceOf(pair, "upper, net");
    const top = between(card, "back point, inside", "back point, outside");
    const [inner, outer] = [between(card, "seat, inside", "back point, inside"), between(card, "back point, outside", "seat, outside")];
    const corners = [angleBetween(top[0]!, top[4]!, inner.at(-5)!), angleBetween(top.at(-1)!, top.at(-5)!, outer[4]!)];
    const expected = walked(top) - inMm * turning(top) - corners.reduce((sum, angle) => sum + inMm / Math.tan(angle), 0);
    near(line(pair, "topline").lengthMm, expected, 0.15);
  });

  test("lie within a hundredth of the fold line and of the bag's seam as these are drawn", () => {
    for (const [edge, mark] of [["taped", "fold line of the topline"], ["folded", "fold line of the topline"], ["bagged", "seam of the topline"]] as const) {
      const pair = made({}, edge);
      const [along] = drawnMm(pieceOf(pair, "upper"), mark);
      for (const name of edge === "bagged" ? ["topline", "topline seam"] : ["topline"]) expect(Math.abs(line(pair, name).lengthMm / along! - 1), `${edge}, ${name}`).toBeLessThan(0.01);
    }
  });

  test("are as many as the edge asks for, through what lies under the needle there", () => {
    const rows = (edge: ToplineEdge) => made({}, edge).stitching.filter(({ name }) => name.startsWith("topline")).map(({ name, stackMm }) => [name, Math.round(100 * stackMm) / 100]);
    // Upper 1.1, folded 0.5 twice; lining 0.8; tape 0.2; binding 0.6, turned in 0.5 twice.
    expect(Object.fromEntries(toplineEdges.map((edge) => [edge, rows(edge)]))).toEqual({
      taped: [["topline", 2]],
      folded: [["topline", 1.8]],
      raw: [["topline", 1.9]],
      bound: [["topline binding", 1.7], ["topline", 2.5]],
      wrapped: [["topline", 3.9]],
      bagged: [["topline seam", 1.9], ["topline", 3.8]],
    });
  });

  test("leave out what the gores cut away, and go down and up their legs instead", () => {
    const [plain, open] = [made({}, "raw"), made({ gore: true }, "raw")];
    // 14 mm wide and 20 deep: 1.5 mm down the opening is 12.95 mm wide, a little more where the topline is hollow.
    const out = line(plain, "topline").lengthMm - line(open, "topline").lengthMm;
    expect(out).toBeGreaterThan(2 * 12.9);
    expect(out).toBeLessThan(2 * 14);
    // Each leg is √(7² + 20²) long; the rows beside them go across 1.5 mm below the tip.
    const leg = Math.hypot(7, 20), row = (2 * (20 + 1.5) * leg + 2 * 1.5 * (leg - 7)) / 20;
    for (const name of ["inner gore", "outer gore"]) expect(Math.abs(line(open, name).lengthMm / row - 1), name).toBeLessThan(0.015);
    // The bag's seam lies on the net line, where the opening is as wide as it was asked for.
    near(line(made({}, "bagged"), "topline seam").lengthMm - line(made({ gore: true }, "bagged"), "topline seam").lengthMm, 28, 1e-6);
  });
});

describe("the lining's seams", () => {
  test("in three: four laps, one row each, as long as the lines that show where they are laid", () => {
    const pair = made({ lining: "three" });
    const laps = [
      ["inner vamp lining joint", "vamp lining", "quarter lining to here, inside", "inner quarter lining"],
      ["outer vamp lining joint", "vamp lining", "quarter lining to here, outside", "outer quarter lining"],
      ["inner heel pocket joint", "inner quarter lining", "heel pocket to here, inside", "heel pocket"],
      ["outer heel pocket joint", "outer quarter lining", "heel pocket to here, outside", "heel pocket"],
    ] as const;
    for (const [name, under, mark, over] of laps) {
      const row = line(pair, name);
      expect([row.joins, row.rows, row.use]).toEqual([[over, under], 1, "lining"]);
      // On the piece that lies under, its edge is drawn 1.5 mm ahead of the row; a slanted lap is longer or shorter there.
      near(row.lengthMm, drawnMm(pieceOf(pair, under), mark)[0]!, 3, name);
      // On the piece that lies over, the border of its skive runs 3.5 mm inside the edge, and so 2 mm inside the row.
      const piece = pieceOf(pair, over);
      const beside = drawn(piece, "skive to here").map((points) => acrossMm(piece, movedOut(piece, points, 2)));
      expect(Math.min(...beside.map((mm) => Math.abs(mm - row.lengthMm))), `${name}: ${row.lengthMm} beside ${beside.join(", ")}`).toBeLessThan(0.25);
    }
  });

  test("in one: its back seam, as drawn on both banks, through two thicknesses", () => {
    const pair = made({ lining: "one" });
    const seam = line(pair, "lining back seam");
    for (const mark of ["back seam, inside", "back seam, outside"]) near(seam.lengthMm, drawnMm(pieceOf(pair, "lining"), mark)[0]!, 0.1, mark);
    near(seam.stackMm, 1.6, 1e-9);
  });
});

describe("what is sewn on", () => {
  const pair = made({ strap: true, toeCap: true, backStrip: true, bow: true });

  test("a strap is stitched round inside its edge: two straight sides and half a circle", () => {
    const { outline, marks } = pieceOf(pair, "strap lining");
    // The lining is 0.5 mm shorter than the strap's finished 12 mm wide band.
    const long = Math.max(...outline.xy.filter((_, i) => i % 2 === 0)) + 0.5;
    near(line(pair, "strap edge").lengthMm, 2 * (long - 6) + Math.PI * (6 - 1.5), 0.01);
    expect(marks.length).toBeGreaterThan(0);
    const setIn = line(pair, "strap set in");
    expect([setIn.lengthMm, setIn.rows]).toEqual([12, 2]);
  });

  test("a back strip along both edges, a cap along its own", () => {
    const strip = line(pair, "back strip");
    expect(strip.rows).toBe(2);
    for (const mm of drawnMm(pieceOf(pair, "back strip"), "fold")) near(strip.lengthMm, mm, 0.01);
    const cap = line(pair, "toe cap"), [edge] = drawnMm(pieceOf(pair, "upper"), "edge of the toe cap"), [skive] = drawnMm(pieceOf(pair, "toe cap"), "skive to here");
    // The row lies 1.5 mm ahead of the edge, the skive's border 3.5 mm; the toe narrows between them.
    near(cap.lengthMm, edge! + (1.5 / 3.5) * (skive! - edge!), 0.3);
  });

  test("a bow across its band and its knot", () => {
    expect(["bow", "bow knot"].map((name) => line(pair, name).lengthMm)).toEqual([26, 13]);
  });
});

describe("thicknesses", () => {
  test("are the maker's own, and skived no thinner than they were", () => {
    const thin = made({}, "taped", { upperThicknessMm: 0.4, liningThicknessMm: 0.6 });
    near(line(thin, "back seam").stackMm, 0.8, 1e-9);
    near(line(thin, "topline").stackMm, 2 * 0.4 + 0.2 + 0.6, 1e-9);
    near(line(made({}, "taped", { skiveSeamMm: 0 }), "back seam").stackMm, 2.2, 1e-9);
  });

  test("add up to the stack", () => {
    for (const edge of toplineEdges)
      for (const { plies, stackMm } of made({ gore: true, bow: true, toeCap: true }, edge).stitching) near(plies.reduce((sum, { mm, count }) => sum + mm * count, 0), stackMm, 1e-9);
  });
});

describe("either foot", () => {
  test("is sewn alike, whichever last the pair is drawn on", () => {
    const other = demoMeasurements.side === "left" ? "right" : "left";
    const parts = { cut: "quarters", seam: "lapped", strap: true, gore: false, toeCap: true } as const;
    const [one, two] = [pairOf({ parts }), pairOf({ parts, last: { from: "measures", measures: { ...demoMeasurements, side: other } } }, new SweepBench())];
    expect(two.stitching.map(({ name }) => name)).toEqual(one.stitching.map(({ name }) => name));
    two.stitching.forEach((row, k) => near(row.lengthMm, one.stitching[k]!.lengthMm, 1e-4, row.name));
  });
});
