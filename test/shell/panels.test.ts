import { beforeAll, describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { heelBreastX } from "#last/heel-breast.ts";
import { area } from "#mesh/area.ts";
import { pieceRulesFor } from "#pieces/rules.ts";
import { flatLength } from "#shell/edge-length.ts";
import { layHeel, openHeel } from "#shell/panel-heel.ts";
import { bankTops } from "#shell/panel-lay.ts";
import type { LaidPanels } from "#shell/panels.ts";
import { areas } from "#shell/strain.ts";
import { topologyOf } from "../support/disk-topology.ts";
import { lastOf, layCut, tableOf, type Table } from "../support/laid-panels.ts";

let table: Table, quarters: LaidPanels, inner: LaidPanels;
beforeAll(() => {
  table = tableOf(lastOf());
  quarters = layCut(table, "quarters");
  inner = layCut(table, "inner-seam");
});

/** Where a line meets topline and feather line on the last. */
const ends = ({ opened }: LaidPanels, k = 0) => {
  const path = opened.paths[k]!, p = opened.onLast.mesh.positions;
  return [path[0]!, path.at(-1)!].map((v) => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!] as const);
};
const throatX = ({ onLast: { mesh, edges } }: Table): number => mesh.positions[3 * edges.centre.at(-1)!]!;

describe("where seams run", () => {
  // An early handbook for cordwainers, 1813: the seam of vamp and quarter 1 to 1½ inches behind the throat; nearer it tears.
  test("the side seams lie 25 to 38 mm behind the throat and slant back to the feather line", () => {
    const rule = pieceRulesFor(table.last).sideSeamBehindThroatMm;
    expect([rule.min, rule.max]).toEqual([Math.floor(25.4), Math.floor(1.5 * 25.4)]);
    expect(rule.source).toContain("1813");
    for (const k of [0, 1]) {
      const [top, foot] = ends(quarters, k);
      expect(throatX(table) - top![0]).toBeCloseTo(32, 0);
      expect(top![0] - foot![0]).toBeCloseTo(12, 0);
    }
  });

  test("and every point of them at least 10 mm behind the joint line", () => {
    const { jointMedial: a, jointLateral: b, vampPoint: c } = table.last.landmarks;
    const [u, v] = [[0, 1, 2].map((d) => b[d]! - a[d]!), [0, 1, 2].map((d) => c[d]! - a[d]!)];
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const size = Math.hypot(...n) * Math.sign(n[0]!);
    const { positions: p } = quarters.opened.onLast.mesh;
    for (const path of quarters.opened.paths) for (const at of path) expect([0, 1, 2].reduce((sum, d) => sum + (n[d]! * (p[3 * at + d]! - a[d]!)) / size, 0)).toBeLessThan(-9.7);
  });

  // Common practice, no source: 40 to 45 % of the length from the heel, in front of the heel breast.
  test("the inner seam stands upright at 40 to 45 % of the length", () => {
    const { seatPoint, toePoint } = table.last.landmarks;
    const [top, foot] = ends(inner);
    const share = (foot![0] - seatPoint[0]) / (toePoint[0] - seatPoint[0]);
    expect(share).toBeGreaterThan(0.4);
    expect(share).toBeLessThan(0.45);
    expect(foot![0]).toBeGreaterThan(heelBreastX(table.last) + 36);
    expect(Math.abs(top![0] - foot![0])).toBeLessThan(0.5);
    expect(top![1] * foot![1]).toBeGreaterThan(0);
    expect(foot![1]).toBeGreaterThan(0);
  });

  test("a throat far forward moves the side seams back, and that is told with both numbers", () => {
    const low = tableOf(table.last, { lines: { throatDepthMm: 52 }, triangles: 1500 });
    const laid = layCut(low, "quarters");
    const told = laid.findings.find(({ code }) => code === "side-seam-moved")!;
    const setMm = throatX(low) - ends(laid)[0]![0];
    expect(setMm).toBeGreaterThan(38);
    expect(explain(told)).toContain("32.0 mm behind the throat");
    expect(explain(told)).toContain(`set ${(Math.round(2 * setMm) / 2).toFixed(1)} mm behind`);
    expect(throatX(low) - ends(laid, 1)[0]![0]).toBeCloseTo(setMm, 0);
  });

  test("nearer to the throat than an inch is drawn where the joint allows it, and told", () => {
    const high = tableOf(table.last, { lines: { throatDepthMm: 84 }, triangles: 1500, pieces: { sideSeamBehindThroatMm: 20 } });
    const told = layCut(high, "quarters").findings.map(explain).join(" ");
    expect(told).toMatch(/20\.0 mm behind the throat; nearer than 25 mm they tear/);
  });

  test("through the joint or behind the heel is refused with what to do", () => {
    const seams = { ...table.seams, innerSeamBeforeBreastMm: 120 };
    const inJoint = () => layCut({ ...table, seams }, "inner-seam");
    expect(inJoint).toThrow(/120.0 mm before the heel breast the seam runs through the joint/);
    const most = Number(/at most (\d+) mm/.exec(message(inJoint))![1]);
    expect(layCut({ ...table, seams: { ...seams, innerSeamBeforeBreastMm: most } }, "inner-seam").panels).toHaveLength(1);
    for (const sideSeamBehindThroatMm of [190, -20, NaN]) expect(() => layCut({ ...table, seams: { ...table.seams, sideSeamBehindThroatMm } }, "quarters")).toThrow(/side seams cannot stand .* mm behind the throat/);
    expect(() => layCut({ ...table, seams: { ...table.seams, seamClearOfJointMm: 140 } }, "quarters")).toThrow(/side seams 32.0 mm behind the throat the seam runs through the joint/);
  });
});

const message = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    return (error as Error).message;
  }
  return "";
};

describe("the panels", () => {
  test("are what the shell was, in disks: areas add up to it on the last and over what lies beneath", () => {
    for (const { panels } of [quarters, inner]) {
      for (const [on, whole] of [["onLast", table.onLast], ["over", table.over]] as const) expect(panels.reduce((sum, { panel }) => sum + area(panel[on]), 0) / area(whole.mesh)).toBeCloseTo(1, 4);
      for (const { panel } of panels) expect(topologyOf(panel.over).euler).toBe(1);
    }
    expect(quarters.panels.map(({ panel }) => panel.name)).toEqual(["vamp", "inner quarter", "outer quarter"]);
    expect(inner.panels.map(({ panel }) => panel.name)).toEqual(["whole"]);
  });

  test("meet along seams whose banks are the same points of the last, and equally long on the flat to 0.1 mm", () => {
    for (const laid of [quarters, inner])
      for (const { seam, lengthsMm: [a, b] } of laid.banks) {
        expect(Math.abs(a - b), seam).toBeLessThan(0.1);
        const rows = laid.panels.flatMap(({ panel }) => panel.edges.filter((edge) => edge.seam === seam).map(({ vertices }) => Array.from(vertices, (v) => Array.from(panel.onLast.positions.subarray(3 * v, 3 * v + 3)))));
        expect(rows[1]!.reverse()).toEqual(rows[0]);
      }
    expect(quarters.banks.map(({ seam }) => seam).sort()).toEqual(["back", "inner side", "outer side"]);
  });

  test("have the topline as short together as the upper in one piece", () => {
    const { medial, lateral } = table.flat.tension;
    for (const { panels } of [quarters, inner]) {
      const mm = panels.flatMap(({ panel, uv }) => panel.edges.filter(({ role }) => role === "topline").map(({ vertices }) => flatLength({ uv }, vertices))).reduce((a, b) => a + b, 0);
      expect(Math.abs(mm - medial.flatMm - lateral.flatMm)).toBeLessThan(0.3);
    }
  });

  test("lie in their frames", () => {
    const at = (p: LaidPanels, name: string, v: (panel: LaidPanels["panels"][number]["panel"]) => number) => {
      const { panel, uv } = p.panels.find(({ panel }) => panel.name === name)!;
      return [uv[2 * v(panel)]!, uv[2 * v(panel) + 1]!];
    };
    for (const [laid, name] of [[quarters, "vamp"], [inner, "whole"]] as const) {
      expect(at(laid, name, ({ centre }) => centre![0]!)).toEqual([0, 0]);
      const [x, y] = at(laid, name, ({ centre }) => centre!.at(-1)!);
      expect(x).toBeLessThan(-60);
      expect(Math.abs(y!)).toBeLessThan(1e-9);
    }
    // Inner on +y, outer on −y, the feather line's ends level, the heel at low x.
    for (const [name, sign] of [["inner quarter", 1], ["outer quarter", -1]] as const) {
      const [x0, y0] = at(quarters, name, ({ edges }) => edges[0]!.vertices[0]!), [x1, y1] = at(quarters, name, ({ edges }) => edges[0]!.vertices.at(-1)!);
      expect(Math.abs(y0! - y1!)).toBeLessThan(1e-9);
      expect(sign * y0!).toBeGreaterThan(40);
      expect(sign * (x0! - x1!)).toBeGreaterThan(100);
    }
  });

  // Fewer bends in one piece, less stretch: what side seams are for (facts of the trade). A closed back must be bent both ways, so it costs more.
  test("in quarters are stretched less than the upper in one piece, with a clean heel more", () => {
    for (const one of [table, tableOf(lastOf({ toe: "almond", stickLengthMm: 240, heelGirthMm: 322 }))]) {
      const whole = energy([{ mesh: one.over.mesh, ...one.flat }]);
      const of = (laid: LaidPanels) => energy(laid.panels.map(({ panel, stretchMax, stretchMin }) => ({ mesh: panel.over, stretchMax, stretchMin })));
      const cut = layCut(one, "quarters");
      expect(of(cut)).toBeLessThan(0.985 * whole);
      expect(cut.strain.p50).toBeLessThan(one.flat.strain.p50);
      expect(of(layCut(one, "inner-seam"))).toBeGreaterThan(1.05 * whole);
    }
  });

  test("say how much they must be worked and where", () => {
    const told = quarters.findings.filter(({ code }) => code === "panel-eased");
    expect(told).toHaveLength(3);
    expect(explain(told[0]!)).toMatch(/^The vamp must be stretched by up to \d+ % and gathered by up to \d\d % /);
    expect(told.every(({ at }) => at?.every(Number.isFinite))).toBe(true);
    // Round the toe of the vamp too much is gathered for pulls alone; at the seat of the quarters it is not.
    expect(told.map((f) => /nick each out as a wedge, not closer than 3 mm to the feather line/.test(explain(f)))).toEqual(told.map((f) => f.code === "panel-eased" && f.data.gatherPercent > 25));
    expect(told.map((f) => /by small pulls/.test(explain(f)))).toEqual([false, true, true]);
  });

  test("begin from the upper laid in one piece or from nothing and come out the same", () => {
    const { flat, ...cold } = table;
    expect(flat).toBeDefined();
    const anew = layCut(cold as Table, "quarters");
    quarters.panels.forEach(({ uv }, p) => anew.panels[p]!.uv.forEach((x, i) => expect(Math.abs(x - uv[i]!)).toBeLessThan(0.1)));
  });

  test("the inner seam's banks are swung together by the spring, and no farther than they lie apart", () => {
    const gap = ({ panels: [one] }: LaidPanels): number => {
      const { a, b } = bankTops(one!.panel)!;
      return flatLength(one!, Uint32Array.of(a, b));
    };
    expect(gap(inner) - gap(layCut(table, "inner-seam", 6))).toBeCloseTo(6, 0);
    expect(() => layCut(table, "inner-seam", gap(inner))).toThrow(/spring of .* cannot be laid/);
    for (const { panel } of quarters.panels) expect(bankTops(panel)).toBeUndefined();
  });
});

describe("the heel in one piece", () => {
  test("reaches as far as asked, has no seam at the back, and lies upright", () => {
    const heel = openHeel({ ...table, reachMm: { medial: 85, lateral: 78 } });
    expect(topologyOf(heel.panel.onLast).euler).toBe(1);
    expect(heel.panel.edges.map(({ role, half }) => [role, half])).toEqual([["feather", undefined], ["end", "lateral"], ["topline", undefined], ["end", "medial"]]);
    const { positions } = heel.panel.onLast;
    const feather = heel.panel.edges[0]!.vertices, seat = feather.indexOf(heel.panel.back![0]!);
    const length = (ids: Uint32Array) => ids.slice(1).reduce((sum, v, k) => sum + Math.hypot(...[0, 1, 2].map((d) => positions[3 * v + d]! - positions[3 * ids[k]! + d]!)), 0);
    expect(length(feather.slice(0, seat + 1))).toBeCloseTo(85, 0);
    expect(length(feather.slice(seat))).toBeCloseTo(78, 0);
    for (const on of ["onLast", "over"] as const) {
      const { uv, strain } = layHeel(heel, { on });
      expect([uv[2 * heel.panel.back![0]!], uv[2 * heel.panel.back![0]! + 1]]).toEqual([0, 0]);
      expect(Math.abs(uv[2 * heel.panel.back!.at(-1)!]!)).toBeLessThan(1e-9);
      expect(uv[2 * heel.panel.back!.at(-1)! + 1]).toBeGreaterThan(45);
      expect(uv[2 * feather[0]!]).toBeLessThan(-70);
      expect(strain.give).toBeLessThan(0.1);
    }
    // Over lining and stiffener it is larger.
    expect(area(heel.panel.over)).toBeGreaterThan(1.02 * area(heel.panel.onLast));
  });

  test("takes its share of a shorter topline", () => {
    const heel = openHeel({ ...table, reachMm: { medial: 85, lateral: 78 } });
    const top = heel.panel.edges.find(({ role }) => role === "topline")!.vertices;
    const by = flatLength(layHeel(heel, { on: "onLast" }), top) - flatLength(layHeel(heel, { on: "onLast", shorterMm: { medial: 5, lateral: 5 } }), top);
    expect(by).toBeGreaterThan(2);
    expect(by).toBeLessThan(6);
  });

  test("is refused where there is no upper above its end", () => {
    for (const medial of [0, -5, 4, 250, 900, NaN]) expect(() => openHeel({ ...table, reachMm: { medial, lateral: 78 } })).toThrow(/heel pocket cannot reach .* inner side/);
  });
});

/** Area mean of σ₁² + σ₂² + σ₁⁻² + σ₂⁻² less 4, of all parts together. */
function energy(parts: readonly { readonly mesh: Table["over"]["mesh"]; readonly stretchMax: Float64Array; readonly stretchMin: Float64Array }[]): number {
  let sum = 0, whole = 0;
  for (const { mesh, stretchMax, stretchMin } of parts)
    areas(mesh).forEach((a, t) => {
      const [s, r] = [stretchMax[t]! ** 2, stretchMin[t]! ** 2];
      sum += a * (s + r + 1 / s + 1 / r - 4);
      whole += a;
    });
  return sum / whole;
}
