import { beforeAll, describe, expect, it } from "vitest";
import { carriedLining, carriedPanel, carriedPanels } from "#lasting/carry.ts";
import { correctFlat, type Corrected } from "#lasting/correct.ts";
import { fabricOf } from "#lasting/fabric.ts";
import { layForLeather } from "#lasting/inverse/lay-for-leather.ts";
import { pullsAlong, tightN } from "#lasting/pulls.ts";
import { lastingFrom } from "#lasting/settings.ts";
import { leatherFrom } from "#leather/leather-from.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import { netUpper } from "#pieces/net-upper.ts";
import { mirrorLast } from "#last/mirror.ts";
import { flatLength } from "#shell/edge-length.ts";
import { layFree, layLining } from "#shell/lay-flat.ts";
import { openHeel, layHeel } from "#shell/panel-heel.ts";
import { lastOf, layCut, tableOf, type Table } from "../support/laid-panels.ts";

const settings = lastingFrom();
const fabricFor = (known: "goat" | "nappa") => fabricOf(leatherFrom({ known }, "upper", 1), leatherFrom(undefined, "lining", 0.8), settings, "taped");
const correctedOn = (table: Table, known: "goat" | "nappa"): Corrected => correctFlat(table.flat, fabricFor(known), settings, { last: table.last });
const rows = (table: Table) => table.flat.shell.edges;

let table: Table, goat: Corrected, nappa: Corrected;
beforeAll(() => {
  table = tableOf(lastOf(), { triangles: 3000 });
  goat = correctedOn(table, "goat");
  nappa = correctedOn(table, "nappa");
});

describe("pulls along the feather line", () => {
  it("name the drafts as the pieces do, and are a draft's pull over its jaws at its place", () => {
    const { drafts, perMm } = pullsAlong(table.onLast, table.last, settings);
    expect(drafts.map(({ number, name }) => [number, name])).toEqual(draftOrder.map(({ number, name }) => [number, name]));
    // What a draft takes that stops at its mark is not known before: it counts as just past tight.
    expect(perMm.medial[0]).toBeCloseTo(tightN / 20, 12);
    expect(pullsAlong(table.onLast, table.last, { ...settings, stopAtMarks: false }).perMm.medial[0]).toBeCloseTo(settings.pullBackN / 20, 12);
    expect(perMm.lateral[0]).toBe(perMm.medial[0]);
    expect(perMm.medial.at(-1)).toBeCloseTo(settings.pullToeN / 20, 12);
    const [low, high] = [tightN, Math.max(...drafts.map(({ pullN }) => pullN))];
    for (const p of [...perMm.medial, ...perMm.lateral]) expect(p >= low / 20 - 1e-12 && p <= high / 20 + 1e-12).toBe(true);
  });
});

describe("the upper corrected for its leather", () => {
  it("comes to rest in its frame, without folds, and is shorter and narrower: pulls stretch it", () => {
    for (const { flat, settled, difference: d } of [goat, nappa]) {
      expect(settled).toBe(true);
      const { centre } = flat.shell.edges, throat = centre.at(-1)!;
      expect([flat.uv[2 * centre[0]!], flat.uv[2 * centre[0]! + 1], flat.uv[2 * throat + 1]]).toEqual([0, 0, 0]);
      expect(flat.uv[2 * throat]).toBeLessThan(0);
      expect(Math.min(...flat.stretchMin)).toBeGreaterThan(0);
      expect(d.throatDepthMm.after).toBeLessThan(d.throatDepthMm.before);
      expect(d.widthMm.after).toBeLessThan(d.widthMm.before);
      expect(d.lengthMm.after).toBeLessThan(d.lengthMm.before);
      // Topline and back are cut no longer than they were laid, but for what holds them giving a little.
      for (const half of ["medial", "lateral"] as const) expect(d.toplineMm[half].after).toBeLessThan(d.toplineMm[half].before + 0.5);
      expect(Math.abs(d.backHeightMm.after - d.backHeightMm.before)).toBeLessThan(0.5);
    }
  });

  it("asks for more of a leather that gives more", () => {
    const shorter = ({ difference: { throatDepthMm: t } }: Corrected): number => t.before - t.after;
    expect(shorter(nappa)).toBeGreaterThan(1.2 * shorter(goat));
  });

  it("hardly differs from the uncorrected one for a stiff sheet, alike in all ways, that nothing pulls", () => {
    const law = new ToeLaw({ along: 400, across: 400, bias: 400, poisson: 0.3, toe: 0, early: 1 });
    const pulls = { perMm: { medial: goat.pulls.perMm.medial.map(() => 0), lateral: goat.pulls.perMm.lateral.map(() => 0) } };
    const still = layForLeather({ over: table.flat.shell }, table.flat.uv, { ...fabricFor("goat"), law, gatherLimit: -0.49, tapeN: 0 }, pulls, { friction: 0.3 });
    const e = rows(table), most = (uv: Float64Array): number => Math.max(...[e.featherMedial, e.featherLateral, e.toplineMedial, e.toplineLateral].flatMap((ids) => Array.from(ids, (v) => Math.hypot(uv[2 * v]! - table.flat.uv[2 * v]!, uv[2 * v + 1]! - table.flat.uv[2 * v + 1]!))));
    expect(still.settled).toBe(true);
    expect(Math.abs(flatLength(still, e.featherMedial) / flatLength(table.flat, e.featherMedial) - 1)).toBeLessThan(0.01);
    expect(most(still.uv)).toBeLessThan(3);
  });

  it("is found again, in fewer steps, from one found before", () => {
    const firmer = { ...settings, pullToeN: settings.pullToeN * 0.9 }, fabric = fabricFor("goat");
    const warm = correctFlat(table.flat, fabric, firmer, { last: table.last, like: goat }), cold = correctFlat(table.flat, fabric, firmer, { last: table.last });
    expect(warm.steps).toBeLessThan(cold.steps);
    warm.flat.uv.forEach((x, i) => expect(Math.abs(x - cold.flat.uv[i]!)).toBeLessThan(0.03));
  });

  it("does not depend on the mesh: outline measures of 3,000 and 12,000 triangles agree within 0.2 mm", () => {
    const fine = correctedOn(tableOf(lastOf(), { triangles: 12_000 }), "goat").difference, coarse = goat.difference;
    const change = ({ before, after }: { before: number; after: number }): number => after - before;
    for (const name of ["throatDepthMm", "lengthMm", "widthMm", "backHeightMm"] as const) expect(Math.abs(change(fine[name]) - change(coarse[name]))).toBeLessThan(0.2);
    for (const half of ["medial", "lateral"] as const) expect(Math.abs(change(fine.featherMm[half]) - change(coarse.featherMm[half]))).toBeLessThan(0.3);
  });

  it("has edges as fair as before: moves along the outline change by little from vertex to vertex", () => {
    const { uv } = nappa.flat, e = rows(table);
    // At the toe the pull changes fast, and so does what the feather edge moves by: as fast as a curve of 60 mm radius bends.
    for (const [ids, most] of [[e.featherMedial, 0.4], [e.featherLateral, 0.4], [e.toplineMedial, 0.12], [e.toplineLateral, 0.12]] as const) {
      const move = (k: number, i: 0 | 1): number => uv[2 * ids[k]! + i]! - table.flat.uv[2 * ids[k]! + i]!;
      for (let k = 2; k + 2 < ids.length - 2; k++) for (const i of [0, 1] as const) expect(Math.abs(move(k - 1, i) - 2 * move(k, i) + move(k + 1, i))).toBeLessThan(most);
    }
  });

  it("gives net edges that bend to and fro no more often than without the correction", () => {
    // Beside the seat the back seam holds the feather edge: over 20 mm there it may bend by some hundredths of a millimetre.
    const bends = ({ xy }: { readonly xy: Float64Array }, besideMm = 0): number => {
      let count = 0, before = 0;
      const [endX, endY] = [xy[xy.length - 2]!, xy[xy.length - 1]!];
      for (let i = 2; i + 3 < xy.length; i += 2) {
        if (Math.min(Math.hypot(xy[i]! - xy[0]!, xy[i + 1]! - xy[1]!), Math.hypot(xy[i]! - endX, xy[i + 1]! - endY)) < besideMm) continue;
        const [ax, ay, bx, by] = [xy[i]! - xy[i - 2]!, xy[i + 1]! - xy[i - 1]!, xy[i + 2]! - xy[i]!, xy[i + 3]! - xy[i + 1]!];
        const [la, lb] = [Math.hypot(ax, ay), Math.hypot(bx, by)], bend = (2 * (ax * by - ay * bx)) / (la * lb * (la + lb));
        // Straighter than a radius of 5 m is straight.
        if (Math.abs(bend) < 2e-4) continue;
        if (before !== 0 && Math.sign(bend) !== before) count++;
        before = Math.sign(bend);
      }
      return count;
    };
    const net = (flat: Corrected["flat"]) => netUpper(table.last, table.drawn.lines, flat), [plain, corrected] = [net(table.flat), net(goat.flat)];
    expect(bends(corrected.topline.line)).toBeLessThanOrEqual(bends(plain.topline.line));
    expect(bends(corrected.feather.line, 20)).toBeLessThanOrEqual(bends(plain.feather.line, 20));
  });

  it("is the mirror image for the other shoe", () => {
    const other = tableOf(mirrorLast(lastOf()), { triangles: 3000 }), mirrored = correctedOn(other, "goat");
    expect(mirrored.flat.uv.length).toBe(goat.flat.uv.length);
    const names = ["throatDepthMm", "lengthMm", "widthMm", "backHeightMm"] as const;
    for (const name of names) expect(mirrored.difference[name].after).toBeCloseTo(goat.difference[name].after, 5);
    expect(mirrored.difference.featherMm.medial.after).toBeCloseTo(goat.difference.featherMm.medial.after, 5);
  });

  it("says where the grain would crack or the leather tear", () => {
    const tender = { ...fabricFor("goat"), grainLimit: 0.01, breakLimit: 0.4 };
    expect(correctFlat(table.flat, tender, settings, { last: table.last }).findings.map(({ code }) => code)).toContain("corrected-grain");
    expect(correctFlat(table.flat, { ...tender, breakLimit: 0.02 }, settings, { last: table.last }).findings.map(({ code }) => code)).toContain("corrected-tears");
  });
});

describe("the corrected upper at its ends", () => {
  const all = (n: number) => ({ pullToeN: n, pullToeCornerN: n, pullBackN: n, pullSeatSideN: n, pullJointN: n, pullWaistN: n });
  it.each([["lightest", all(2)], ["strong", all(60)], ["hardest", all(200)], ["no friction", { friction: 0 }], ["much friction", { friction: 0.8 }], ["no tape", { tapeN: 0 }], ["firm tape", { tapeN: 5000 }], ["turned", { upperTurnDeg: 90, liningTurnDeg: -45 }]])("never folds over or ends in silence: %s", (_, own) => {
    const small = tableOf(lastOf(), { triangles: 1000 }), chosen = lastingFrom(own);
    const fabric = fabricOf(leatherFrom({ known: "nappa" }, "upper", 1), leatherFrom(undefined, "lining", 0.8), chosen, "taped");
    const { flat, settled, findings } = correctFlat(small.flat, fabric, chosen, { last: small.last });
    expect(flat.uv.every(Number.isFinite)).toBe(true);
    expect(Math.max(...flat.stretchMax)).toBeLessThan(2);
    expect(findings.some(({ code }) => code === "corrected-unsettled")).toBe(!settled);
  });
});

describe("the correction carried to other sheets", () => {
  it("gives back the corrected upper where it is carried to the upper itself", () => {
    const self = carriedLining(goat, { shell: table.flat.shell, onLast: table.flat.onLast, uv: table.flat.uv });
    self.uv.forEach((x, i) => expect(Math.abs(x - goat.flat.uv[i]!)).toBeLessThan(0.02));
  });

  it("shrinks the lining's edges by the same share as the upper's", () => {
    const lining = layLining(table.onLast, table.flat, layFree(table.over)), carried = carriedLining(goat, lining);
    for (const name of ["toplineMedial", "toplineLateral", "featherMedial", "featherLateral", "centre"] as const) {
      const ids = rows(table)[name], share = flatLength(goat.flat, ids) / flatLength(table.flat, ids);
      expect(Math.abs(flatLength(carried, ids) / flatLength(lining, ids) - share)).toBeLessThan(0.002);
    }
  });

  it.each(["quarters", "inner-seam"] as const)("keeps both banks of every seam equally long: %s", (cut) => {
    const laid = layCut(table, cut), carried = carriedPanels(nappa, laid);
    carried.banks.forEach(({ seam, lengthsMm: [a, b] }, k) => {
      const [c, d] = laid.banks[k]!.lengthsMm;
      expect([seam, Math.abs(a - b) < Math.abs(c - d) + 0.1]).toEqual([seam, true]);
    });
    const share = ({ uv }: { readonly uv: Float64Array }, p: number): number => flatLength({ uv }, laid.panels[p]!.panel.edges[0]!.vertices) / flatLength(laid.panels[p]!, laid.panels[p]!.panel.edges[0]!.vertices);
    expect(share(carried.panels[0]!, 0)).toBeLessThan(0.995);
  });

  it("reaches the heel part, which is closed at the back", () => {
    const heel = layHeel(openHeel({ ...table, reachMm: { medial: 90, lateral: 90 } }), { on: "onLast" }), carried = carriedPanel(nappa, heel);
    expect(carried.uv).not.toEqual(heel.uv);
    heel.panel.edges.forEach(({ vertices }) => expect(Math.abs(flatLength(carried, vertices) / flatLength(heel, vertices) - 1)).toBeLessThan(0.03));
  });
});
