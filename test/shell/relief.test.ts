import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { explain, finding } from "#base/findings.ts";
import { Cancelled, unwatched } from "#base/watch.ts";
import { defaultJob, jobForScan } from "#job/default-job.ts";
import type { Files } from "#job/files.ts";
import type { Job } from "#job/job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { cutShell } from "#shell/cut.ts";
import { heelGap, layFlat } from "#shell/lay-flat.ts";
import { featherOver, heelGapOf, mostOver } from "#shell/relief-card.ts";
import { rowLengths, SlitTable, type SlitLay } from "#shell/relief-lay.ts";
import { NickChooser } from "#shell/relief-nicks.ts";
import { nickPlaces, type NickPlace } from "#shell/relief-places.ts";
import { edgeCurve, sheetOf, type Sheet } from "#shell/relief-sheet.ts";
import { featherLimits, reliefOf, type Relief } from "#shell/relief.ts";
import type { FlatShell } from "#shell/shell.ts";
import { toplineAsked } from "#shell/tension.ts";
import { parts } from "#mesh/topology.ts";
import { demoBoard } from "../support/demo-shell.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { lastNames } from "../support/truth-last.ts";

/** The card as the pieces are cut from it: over lining, stiffener and puff, its topline drawn shorter. */
function flatOf(job: Job, files: Files = new Map()): FlatShell {
  const pair = new Pipeline().run(job, files, { withoutPieces: true });
  if (pair.from === "tape") throw new Error("a last was asked for");
  return pair.flat;
}

/** Within −2 … +4 mm (a handbook of hand pattern-making, for the base pattern), and what the shorter topline adds, of which it does not speak. */
function expectTrue({ feather, findings }: Relief): void {
  for (const { withoutNicksMm, withNicksMm, overMm, drawnMm, mostMm, holds } of [feather.medial, feather.lateral]) {
    expect(withoutNicksMm - overMm).toBeGreaterThan(15);
    expect(withNicksMm - overMm).toBeGreaterThan(-2);
    expect(withNicksMm - overMm).toBeLessThan(4 + drawnMm);
    expect(mostMm).toBeCloseTo(4 + drawnMm, 12);
    // A topline shorter as by rule adds a few mm, by far the smaller part.
    expect(drawnMm).toBeGreaterThan(2);
    expect(drawnMm).toBeLessThan(5);
    expect(holds).toBe(true);
  }
  expect(findings.map(({ code }) => code)).not.toContain("feather-not-true");
}

describe("nicks and seams of the example last", () => {
  let flat: FlatShell, relief: Relief;
  beforeAll(() => {
    flat = flatOf(defaultJob());
    relief = reliefOf(flat);
  });
  const edge = (name: keyof FlatShell["shell"]["edges"]) => {
    const xy = edgeCurve(flat, flat.shell.edges[name]).uv;
    return { xy, arc: arcLengths({ xy }) };
  };
  const toe = () => relief.nicks.filter((n) => n.zone === "toe");

  test("keeps to what a handbook of hand pattern-making cuts: 5 to 8 at the toe, 15 to 30 mm long; at most 4 of 15 to 25 mm a half at joint and waist; one beside the heel line", () => {
    expect(toe().length).toBeGreaterThanOrEqual(5);
    expect(toe().length).toBeLessThanOrEqual(8);
    for (const n of toe()) expect(n.lengthMm).toBeLessThanOrEqual(30);
    for (const half of ["medial", "lateral"] as const) {
      expect(relief.nicks.filter((n) => n.half === half && n.zone === "waist").length).toBeLessThanOrEqual(4);
      expect(relief.nicks.filter((n) => n.half === half && n.zone === "heel").map((n) => n.fromSeatMm >= 10 && n.fromSeatMm <= 15)).toEqual([true]);
    }
    for (const n of relief.nicks) expect(n.lengthMm).toBeGreaterThanOrEqual(15);
    for (const n of relief.nicks.filter((m) => m.zone !== "toe")) expect(n.lengthMm).toBeLessThanOrEqual(25);
  });

  test("stops them 10 mm short of topline and back, off the front centre, 8 mm apart (the same handbook)", () => {
    const off = ["toplineMedial", "toplineLateral", "backMedial", "backLateral"] as const;
    for (const { onFlat: [, , x, y] } of relief.nicks) for (const name of off) expect(nearestOn(edge(name), edge(name).arc, x!, y!).distance).toBeGreaterThanOrEqual(10);
    for (const { half, onFlat: [x0, y0, x, y] } of relief.nicks) {
      expect(Math.sign(y!)).toBe(half === "medial" ? 1 : -1);
      expect(Math.abs(y!)).toBeGreaterThan(1.5);
      expect(Math.hypot(x0! - x!, y0! - y!)).toBeGreaterThan(14);
    }
    const along = relief.nicks.map((n) => n.fromToeMm * (n.half === "medial" ? 1 : -1)).sort((a, b) => a - b);
    along.slice(1).forEach((s, k) => expect(s - along[k]!).toBeGreaterThanOrEqual(8));
  });

  test("cuts the toe alike on both sides of the centre", () => {
    const places = (half: string) => toe().filter((n) => n.half === half).map((n) => `${n.fromToeMm.toFixed(3)} ${n.lengthMm}`);
    expect(places("medial")).toEqual(places("lateral"));
  });

  test("brings the feather edge of each half, openings left out, from far too long to what is allowed", () => expectTrue(relief));

  test("judges the card that is cut: without nicks its feather edges are as long as the flat card's own", () => {
    for (const [half, name] of [["medial", "featherMedial"], ["lateral", "featherLateral"]] as const) {
      expect(Math.abs(relief.feather[half].withoutNicksMm - edge(name).arc.at(-1)!)).toBeLessThan(0.3);
      expect(Math.abs(relief.feather[half].overMm - edgeCurve(flat, flat.shell.edges[name]).arc.at(-1)!)).toBeLessThan(0.3);
    }
  });

  test("accounts for what is taken away: nicks' shares add up to the whole, pulling and gathering fall", () => {
    const sum = relief.nicks.reduce((s, n) => s + n.takesAway, 0);
    expect(Math.abs(sum - relief.gain)).toBeLessThan(0.02);
    expect(relief.strainWithNicks.gather).toBeLessThan(relief.strain.gather / 2);
    expect(relief.strainWithNicks.give).toBeLessThan(relief.strain.give);
    for (const n of toe()) expect(n.opensMm).toBeGreaterThan(0);
  });

  test("tells how far the heel ends lie apart: without nicks as in the flat shell", () => {
    expect(Math.abs(relief.heelGapMm.withoutNicks - heelGap(flat))).toBeLessThan(0.4);
    expect(relief.heelGapMm.withNicks).toBeLessThan(relief.heelGapMm.withoutNicks);
  });

  test("never lets a seam more do harm: every way with more seams takes away at least as much", () => {
    const gain = (seam: string) => relief.seams.find((s) => s.seam === seam)!.gain;
    expect(gain("back")).toBe(0);
    expect(gain("back-and-sides")).toBeGreaterThanOrEqual(Math.max(gain("back"), gain("sides")));
    expect(gain("back-and-inner-waist")).toBeGreaterThanOrEqual(Math.max(gain("back"), gain("inner-waist")));
    expect(relief.seams.map((s) => s.pieces).sort()).toEqual([1, 1, 2, 2, 3]);
    relief.seams.slice(1).forEach((s, k) => expect(s.gain).toBeLessThanOrEqual(relief.seams[k]!.gain));
    const back = relief.seams.find((s) => s.seam === "back")!;
    expect(Math.abs(back.seamMm - edgeCurve(flat, flat.shell.edges.backMedial).arc.at(-1)!)).toBeLessThan(0.2);
  });

  test("says all of it to the maker", () => {
    const said = relief.findings.map(explain);
    expect(said[0]).toMatch(/Nick the card round the toe in \d places, 15 to \d+ mm in/);
    for (const s of [...said, ...relief.mustNot.map(({ reason }) => explain(reason))]) expect(s).not.toMatch(/undefined|NaN/);
    expect(relief.mustNot.map(({ edge: e }) => e)).toEqual(["topline", "back", "centre"]);
  });

  test("gives the left card the right one's nicks, mirrored", () => {
    const { mesh, edges } = flat.shell;
    const left = {
      shell: { mesh: { positions: mesh.positions.map((v, i) => (i % 3 === 1 ? -v : v)), triangles: mesh.triangles.map((v, i, t) => (i % 3 === 0 ? v : t[i % 3 === 1 ? i + 1 : i - 1]!)) }, edges },
      uv: flat.uv.map((v, i) => (i % 2 === 1 ? 0 - v : v)),
    };
    const { nicks, heelGapMm } = reliefOf(left);
    expect(nicks.map((n) => [n.half, n.fromSeatMm, n.lengthMm])).toEqual(relief.nicks.map((n) => [n.half, n.fromSeatMm, n.lengthMm]));
    nicks.forEach((n, i) => expect(Math.abs(n.opensMm - relief.nicks[i]!.opensMm)).toBeLessThan(0.01));
    expect(Math.abs(heelGapMm.withNicks - relief.heelGapMm.withNicks)).toBeLessThan(0.01);
  });

  test("tells heel ends that nicks let swing past each other as a gap below 0, as at a topline 6 % shorter", () => {
    const { heelGapMm } = reliefOf(flatOf({ ...defaultJob(), shell: { toplineShorter: 0.06 } }));
    expect(heelGapMm.withoutNicks).toBeGreaterThan(0);
    expect(heelGapMm.withNicks).toBeLessThan(0);
  });

  test("can be cancelled", () => {
    expect(() => reliefOf(flat, () => { throw new Cancelled(); })).toThrow(Cancelled);
  });
});

test("on the bare last, its topline as long as there, nothing comes from a shorter topline and the handbook's −2 … +4 mm hold as they stand", () => {
  const { board, drawn } = demoBoard();
  const { feather, findings } = reliefOf(layFlat(cutShell(board, drawn, 6000), 0));
  for (const { drawnMm, withNicksMm, overMm } of [feather.medial, feather.lateral]) {
    expect(drawnMm).toBeLessThan(0.2);
    expect(withNicksMm - overMm).toBeGreaterThan(featherLimits.least);
    expect(withNicksMm - overMm).toBeLessThan(featherLimits.most + 0.2);
  }
  expect(findings.map(({ code }) => code)).not.toContain("feather-not-true");
});

test.skipIf(!hasShared).each(lastNames)("%s: as it is really cut, with its nicks the feather edge of both halves is as true as a handbook of hand pattern-making asks", (name) => {
  const relief = reliefOf(flatOf(jobForScan(`${name}.stl`), new Map([[`${name}.stl`, sharedBytes("lasts", `${name}.stl`)]])));
  expectTrue(relief);
  // The same handbook: one nick beside the heel line on each half, 5 to 8 at the toe.
  for (const half of ["medial", "lateral"] as const) expect(relief.nicks.filter((n) => n.zone === "heel" && n.half === half)).toHaveLength(1);
  const toe = relief.nicks.filter((n) => n.zone === "toe").length;
  expect(toe).toBeGreaterThanOrEqual(5);
  expect(toe).toBeLessThanOrEqual(8);
});

describe("the sheet that nicks are tried on", () => {
  let places: readonly NickPlace[], sheet: Sheet, table: SlitTable, flat: FlatShell;
  beforeAll(() => {
    const { board, drawn } = demoBoard();
    flat = layFlat(cutShell(board, drawn, 3000), 0);
    places = nickPlaces(flat);
    sheet = sheetOf(flat, places, 1200);
    table = SlitTable.of(sheet);
  });

  test("without slits comes to lie as the flat card does, its topline drawn or not", () => {
    const drawn = layFlat(flat.shell, 0, { toplineMm: toplineAsked(flat.shell, 0.03) });
    for (const laid of [flat, drawn]) {
      const fine = sheetOf(laid, nickPlaces(laid), 5000);
      expect(Math.abs(heelGapOf(fine, SlitTable.of(fine).lay([])) - heelGap(laid))).toBeLessThan(0.6);
      // Held to what they are on the last, it lies as before it was drawn.
      expect(Math.abs(heelGapOf(fine, SlitTable.undrawn(fine).lay([])) - heelGap(flat))).toBeLessThan(1);
    }
    expect(heelGap(flat) - heelGap(drawn)).toBeGreaterThan(20);
  });

  test("goes on cutting towards an aim until nothing more is worth it, within what a hand allows", () => {
    const chooser = new NickChooser(table, places, sheet.paths, unwatched);
    const longer = (): number => featherOver(sheet, "medial", chooser.now) + featherOver(sheet, "lateral", chooser.now);
    const before = longer();
    chooser.byStretch();
    const byStretch = longer(), few = chooser.nicks.length;
    const aim = { valueOf: (lay: SlitLay) => featherOver(sheet, "medial", lay) + featherOver(sheet, "lateral", lay), leastPerMm: 0.01 };
    expect(chooser.towards(aim)).toBe(true);
    expect(byStretch).toBeLessThan(before);
    expect(longer()).toBeLessThan(byStretch);
    expect(chooser.nicks.length).toBeGreaterThan(few);
    expect(chooser.towards(aim)).toBe(false);
    for (const half of ["medial", "lateral"] as const) expect(chooser.nicks.filter(({ place }) => places[place]!.zone === "waist" && places[place]!.half === half).length).toBeLessThanOrEqual(4);
    expect(chooser.nicks.filter(({ place }) => places[place]!.zone === "toe").length).toBeLessThanOrEqual(8);
  });

  test("a feather edge too long still is told with the place where most is gathered: unslit, at the toe", () => {
    const at = mostOver(sheet, "lateral", table.lay([]));
    const toe = edgeCurve(sheet, sheet.shell.edges.featherLateral).points.slice(-3);
    expect(Math.hypot(at[0] - toe[0]!, at[1] - toe[1]!, at[2] - toe[2]!)).toBeLessThan(40);
    expect(explain(finding("feather-not-true", { half: "lateral", longerMm: 9.14, leastMm: -2, mostMm: 7.9, drawnMm: 3.9 }, at))).toMatch(/9\.1 mm longer on the outer half than where it lies.*-?2 to \+7\.9 mm is usual, 3\.9 mm of that from the shorter topline\..*most of them here/);
    expect(explain(finding("feather-not-true", { half: "medial", longerMm: -3, leastMm: -2, mostMm: 4, drawnMm: 0 }, at))).toMatch(/3\.0 mm shorter on the inner half.*\+4\.0 mm is usual\. Leave more lasting allowance there/);
  });

  test("is a disk with the shell's edges and the lines as rows of edges", () => {
    expect(parts(sheet.shell.mesh)).toMatchObject([{ euler: 1, loops: 1 }]);
    for (const name of ["featherMedial", "featherLateral", "backMedial", "toplineLateral", "centre"] as const) {
      const fine = edgeCurve(flat, flat.shell.edges[name]).arc.at(-1)!, coarse = edgeCurve(sheet, sheet.shell.edges[name]).arc.at(-1)!;
      expect(Math.abs(fine - coarse)).toBeLessThan(0.5);
    }
    sheet.paths.forEach((path, i) => {
      expect(path.length).toBe(places[i]!.inner.length / 2 + 1);
      expect(places[i]!.half === "medial" ? [...sheet.shell.edges.featherMedial] : [...sheet.shell.edges.featherLateral]).toContain(path[0]);
    });
  });

  test("property: more slits, or longer ones, never raise the stretch energy", () => {
    const chosen = fc.array(fc.record({ place: fc.nat(places.length - 1), steps: fc.integer({ min: 1, max: 5 }), more: fc.integer({ min: 0, max: 3 }) }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(chosen, fc.nat(5), (cuts, kept) => {
        const path = (place: number, steps: number) => sheet.paths[place]!.subarray(0, steps + 1);
        const few = cuts.slice(0, kept).map(({ place, steps }) => path(place, steps));
        const many = cuts.map(({ place, steps, more }) => path(place, steps + more));
        const before = table.lay(few), after = table.lay(many, before.corners);
        expect(after.total).toBeLessThanOrEqual(before.total + 1e-9);
        // The start does not matter: laid from nothing it comes to the same.
        expect(Math.abs(table.lay(many).total - after.total)).toBeLessThan(1e-6);
      }),
      { seed: 4, numRuns: 60 },
    );
  });

  test("has feather edges that only slits free: their surface length stays, their flat length falls", () => {
    const row = sheet.shell.edges.featherMedial;
    const none = rowLengths(sheet.shell.mesh, table.lay([]), row);
    const one = rowLengths(sheet.shell.mesh, table.lay([sheet.paths[places.findIndex((p) => p.half === "medial" && p.zone === "toe")]!.subarray(0, 4)]), row);
    expect(one.surfaceMm).toBeCloseTo(none.surfaceMm, 9);
    expect(one.flatMm).toBeLessThan(none.flatMm);
  });
});
