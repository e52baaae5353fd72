import { describe, expect, test } from "vitest";
import { area } from "#mesh/area.ts";
import { flatLength } from "#shell/edge-length.ts";
import type { Panel, PanelName } from "#shell/panel.ts";
import { layPanel } from "#shell/panel-lay.ts";
import { openShell } from "#shell/panel-open.ts";
import type { SeamLine } from "#shell/seam-line.ts";
import { bandShell, coneBand, tube } from "../support/developable-shells.ts";
import { topologyOf } from "../support/disk-topology.ts";

// Surfaces that unroll without stretch, so that each panel's flat form is known: a tube and a cone (facets of 120 sides).
const half = 60, rows = 20, radius = 40, height = 50;
const wide = Math.PI * radius;
const chord = 2 * radius * Math.sin(Math.PI / (2 * half));
const shell = bandShell(tube(radius, height), half, rows, { wide, high: height });

/** A line of the plane between two places round, from the topline down, in many points. */
const line = (name: string, of: SeamLine["half"], top: number, foot: number, high = height): SeamLine => ({
  name,
  half: of,
  plane: Float64Array.from({ length: 42 }, (_, i) => (i % 2 === 0 ? wide * (top + ((foot - top) * (i >> 1)) / 20) : high * (1 - (i >> 1) / 20))),
  toplineMm: 0,
  featherMm: 0,
});
const sides = (top: number, foot: number) => [line("inner side", "medial", top, foot), line("outer side", "lateral", -top, -foot)];
const named = (panels: readonly Panel[], name: PanelName): Panel => panels.find((p) => p.name === name)!;
const corners = ({ edges }: Panel): Uint32Array => Uint32Array.from(edges, ({ vertices }) => vertices[0]!);

describe("a tube", () => {
  test("cut along its own rulings comes out in rectangles, to the last digits", () => {
    const { panels } = openShell({ onLast: shell, side: "right", lines: sides(0.5, 0.5), backClosed: false });
    expect(panels.map(({ name }) => name).sort()).toEqual(["inner quarter", "outer quarter", "vamp"]);
    for (const [name, columns] of [["vamp", half], ["inner quarter", half / 2], ["outer quarter", half / 2]] as const) {
      const panel = named(panels, name), { uv, stretchMax, stretchMin, strain } = layPanel(panel);
      expect(Math.max(...stretchMax)).toBeLessThan(1 + 1e-7);
      expect(Math.min(...stretchMin)).toBeGreaterThan(1 - 1e-7);
      expect(strain.max).toBeLessThan(1e-7);
      const c = corners(panel);
      expect(flatLength({ uv }, Uint32Array.of(c[0]!, c[1]!))).toBeCloseTo(columns * chord, 5);
      expect(flatLength({ uv }, Uint32Array.of(c[0]!, c[2]!))).toBeCloseTo(Math.sqrt((columns * chord) ** 2 + height ** 2), 5);
    }
  });

  test("cut aslant keeps its area and gives banks as long as the unrolled line", () => {
    const { panels } = openShell({ onLast: shell, side: "right", lines: sides(0.45, 0.537), backClosed: false });
    expect(panels.reduce((sum, { over }) => sum + area(over), 0) / (2 * half * chord * height)).toBeCloseTo(1, 5);
    for (const panel of panels) {
      const { uv, strain } = layPanel(panel);
      expect(strain.max).toBeLessThan(2e-4);
      for (const { role, vertices } of panel.edges) if (role === "side") expect(flatLength({ uv }, vertices)).toBeCloseTo(Math.sqrt((0.087 * half * chord) ** 2 + height ** 2), 2);
    }
  });

  test("welded at the back and opened at the inner waist is one rectangle", () => {
    const { panels } = openShell({ onLast: shell, side: "right", lines: [line("inner waist", "medial", 0.3, 0.3)], backClosed: true });
    expect(panels).toHaveLength(1);
    const whole = panels[0]!, { uv, strain } = layPanel(whole);
    expect(strain.max).toBeLessThan(1e-7);
    expect(whole.edges.map(({ role }) => role)).toEqual(["feather", "inner waist", "topline", "inner waist"]);
    expect(flatLength({ uv }, whole.edges[0]!.vertices)).toBeCloseTo(2 * half * chord, 5);
    expect(flatLength({ uv }, Uint32Array.of(corners(whole)[0]!, corners(whole)[1]!))).toBeCloseTo(2 * half * chord, 5);
    expect(whole.back).toHaveLength(rows + 1);
  });

  test("its topline drawn together by a share comes out so much shorter", () => {
    const { panels } = openShell({ onLast: shell, side: "right", lines: sides(0.5, 0.5), backClosed: false });
    const quarter = named(panels, "inner quarter"), top = quarter.edges.find(({ role }) => role === "topline")!.vertices;
    const draw = new Map(Array.from({ length: top.length - 1 }, (_, k) => {
      const [a, b] = [quarter.source[top[k]!]!, quarter.source[top[k + 1]!]!];
      return [a < b ? `${a} ${b}` : `${b} ${a}`, 0.02 * chord] as const;
    }));
    expect(flatLength(layPanel(quarter, { draw }), top) / ((half / 2) * chord)).toBeCloseTo(0.98, 3);
  });
});

test("a cone welded at the back and opened before it is a sector of 360° · sine", () => {
  const sine = 0.3, low = 160, high = 110;
  const cone = bandShell(coneBand(low, high, sine), half, rows, { wide, high: height });
  const { panels } = openShell({ onLast: cone, side: "right", lines: [line("inner waist", "medial", 0.25, 0.25)], backClosed: true });
  const whole = panels[0]!, { uv, strain } = layPanel(whole);
  expect(strain.max).toBeLessThan(1e-6);
  const angle = 4 * half * Math.asin(sine * Math.sin(Math.PI / (2 * half)));
  expect(angle / (2 * Math.PI * sine)).toBeCloseTo(1, 3);
  const [first, foot, top] = corners(whole);
  expect(flatLength({ uv }, Uint32Array.of(first!, foot!))).toBeCloseTo(2 * low * Math.sin(angle / 2), 4);
  expect(flatLength({ uv }, Uint32Array.of(foot!, top!))).toBeCloseTo(low - high, 5);
});

describe("what is opened", () => {
  test("are disks, none of whose triangles is lost, doubled or a sliver", () => {
    for (const [lines, backClosed] of [[sides(0.41, 0.53), false], [[line("inner waist", "medial", 0.31, 0.36)], true]] as const) {
      const { panels, onLast } = openShell({ onLast: shell, side: "right", lines, backClosed });
      expect(panels.reduce((sum, { over }) => sum + over.triangles.length, 0)).toBe(onLast.mesh.triangles.length);
      for (const panel of panels) {
        const { euler, loops } = topologyOf(panel.over);
        expect([euler, loops.length]).toEqual([1, 1]);
        expect(loops[0]!.length).toBe(panel.edges.reduce((sum, { vertices }) => sum + vertices.length - 1, 0));
        expect(new Set(panel.over.triangles).size).toBe(panel.source.length);
        expect(leastAngle(panel)).toBeGreaterThan(10);
      }
    }
  });

  test("has its edges counter-clockwise on a right last and in the same order on a left one", () => {
    const open = (side: "right" | "left") => openShell({ onLast: shell, side, lines: sides(0.5, 0.55), backClosed: false }).panels;
    for (const panel of open("right")) {
      const left = named(open("left"), panel.name);
      panel.edges.forEach(({ vertices }, k) => expect(panel.edges[(k + 1) % 4]!.vertices[0]).toBe(vertices.at(-1)));
      expect(panel.edges[0]!.role).toBe("feather");
      expect(left.edges[0]!.vertices).toEqual(panel.edges[0]!.vertices.slice().reverse());
    }
    expect(named(open("right"), "vamp").edges.map(({ role, half: of }) => [role, of])).toEqual([["feather", undefined], ["side", "medial"], ["topline", undefined], ["side", "lateral"]]);
    expect(named(open("right"), "inner quarter").edges.map(({ role, half: of }) => [role, of])).toEqual([["feather", "medial"], ["back", "medial"], ["topline", "medial"], ["side", "medial"]]);
    expect(named(open("right"), "outer quarter").edges.map(({ role, half: of }) => [role, of])).toEqual([["feather", "lateral"], ["side", "lateral"], ["topline", "lateral"], ["back", "lateral"]]);
  });

  test("is refused where the line does not run from topline to feather line", () => {
    const short = { ...line("inner side", "medial", 0.5, 0.5), plane: Float64Array.of(wide * 0.4, height * 2, wide * 0.6, height * 2) };
    expect(() => openShell({ onLast: shell, side: "right", lines: [short], backClosed: false })).toThrow(/inner side.*leaving the upper/);
  });
});

/** Least angle of any triangle, degrees. */
function leastAngle({ over: { positions: p, triangles: t } }: Panel): number {
  let least = 180;
  for (let k = 0; k < t.length; k++) {
    const [a, b, c] = [t[k]!, t[k % 3 === 2 ? k - 2 : k + 1]!, t[k % 3 === 0 ? k + 2 : k - 1]!];
    const way = (to: number) => [0, 1, 2].map((d) => p[3 * to + d]! - p[3 * a + d]!);
    const [u, v] = [way(b), way(c)];
    least = Math.min(least, (Math.acos(u.reduce((sum, x, d) => sum + x * v[d]!, 0) / (Math.hypot(...u) * Math.hypot(...v))) * 180) / Math.PI);
  }
  return least;
}
