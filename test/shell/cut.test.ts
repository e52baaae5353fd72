import { beforeAll, describe, expect, test } from "vitest";
import type { SurfaceCurve } from "#last/last.ts";
import { arcNearest, pointOn } from "#last/surface-curve.ts";
import { featherHalf } from "#lines/feather.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { topologyOf } from "../support/disk-topology.ts";
import { cutBottom, layBottomFlat } from "#shell/bottom.ts";
import { cutShell } from "#shell/cut.ts";
import { flatLength } from "#shell/edge-length.ts";
import { heelGap, layFlat } from "#shell/lay-flat.ts";
import type { FlatShell, Shell } from "#shell/shell.ts";
import { areas } from "#shell/strain.ts";
import { demoBoard, type DemoBoard } from "../support/demo-shell.ts";

const gap = (a: ArrayLike<number>, b: ArrayLike<number>) => Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);

describe("the shell of the example last", () => {
  let demo: DemoBoard, shell: Shell, flat: FlatShell;
  const vertex = (v: number) => shell.mesh.positions.subarray(3 * v, 3 * v + 3);
  const offCurve = (ids: Uint32Array, curve: SurfaceCurve) => Math.max(...Array.from(ids, (v) => gap(vertex(v), pointOn(curve, arcNearest(curve, [...vertex(v)] as [number, number, number])))));
  const lengthOnLast = (ids: Uint32Array) => ids.reduce((sum, v, i) => (i === 0 ? 0 : sum + gap(vertex(v), vertex(ids[i - 1]!))), 0);

  beforeAll(() => {
    demo = demoBoard();
    shell = cutShell(demo.board, demo.drawn, 6000);
    flat = layFlat(shell, 0);
  });

  test("is a disk whose rim is the named edges and nothing else", () => {
    const { euler, loops } = topologyOf(shell.mesh);
    expect(euler).toBe(1);
    expect(loops).toHaveLength(1);
    const e = shell.edges;
    const named = new Set([e.featherMedial, e.featherLateral, e.backMedial, e.backLateral, e.toplineMedial, e.toplineLateral].flatMap((ids) => [...ids]));
    expect(new Set(loops[0]!)).toEqual(named);
  });

  test("has its rim exactly on feather line, topline and back, and its inside on the last", () => {
    const { last, drawn } = demo;
    expect(offCurve(shell.edges.featherMedial, featherHalf(last.feather, "medial"))).toBeLessThan(1e-9);
    expect(offCurve(shell.edges.featherLateral, featherHalf(last.feather, "lateral"))).toBeLessThan(1e-9);
    expect(offCurve(shell.edges.toplineMedial, drawn.lines.toplineMedial)).toBeLessThan(1e-9);
    expect(offCurve(shell.edges.toplineLateral, drawn.lines.toplineLateral)).toBeLessThan(1e-9);
    expect(offCurve(shell.edges.centre, drawn.lines.centre)).toBeLessThan(1e-9);
    const onLast = new ClosestPoint(last.mesh);
    let worst = 0;
    for (let v = 0; v < shell.mesh.positions.length / 3; v++) worst = Math.max(worst, onLast.find([...vertex(v)] as [number, number, number]).distance);
    expect(worst).toBeLessThan(0.05);
  });

  test("has the two banks of the back at equal places", () => {
    const { backMedial, backLateral } = shell.edges;
    expect(backMedial.length).toBe(backLateral.length);
    backMedial.forEach((v, i) => expect(gap(vertex(v), vertex(backLateral[i]!))).toBe(0));
  });

  test("has even triangles: no angle under 15 degrees but few", () => {
    const { triangles } = shell.mesh;
    let thin = 0;
    for (let f = 0; f < triangles.length; f += 3)
      for (let k = 0; k < 3; k++) {
        const [a, b, c] = [0, 1, 2].map((d) => vertex(triangles[f + ((k + d) % 3)]!));
        const u = [0, 1, 2].map((d) => b![d]! - a![d]!), v = [0, 1, 2].map((d) => c![d]! - a![d]!);
        const cos = (u[0]! * v[0]! + u[1]! * v[1]! + u[2]! * v[2]!) / (Math.hypot(...u) * Math.hypot(...v));
        if (cos > Math.cos((15 * Math.PI) / 180)) thin++;
      }
    expect(thin / (triangles.length / 3)).toBeLessThan(0.002);
  });

  test("keeps topline, back and centre true to 0.2 mm when laid flat, without a fold (handbook limits, common practice: topline 1, back 0.5, throat 0.5 mm)", () => {
    for (const name of ["toplineMedial", "toplineLateral", "backMedial", "backLateral", "centre"] as const)
      expect(Math.abs(flatLength(flat, shell.edges[name]) - lengthOnLast(shell.edges[name]))).toBeLessThan(0.2);
    expect(Math.min(...flat.stretchMin)).toBeGreaterThan(0);
  });

  test("lies in its frame: toe at the origin, throat behind it on the axis, inside on +y for a right one", () => {
    const { centre, featherMedial, featherLateral } = shell.edges;
    const toe = centre[0]!, throat = centre[centre.length - 1]!;
    expect([flat.uv[2 * toe], flat.uv[2 * toe + 1]]).toEqual([0, 0]);
    expect(flat.uv[2 * throat]!).toBeLessThan(-50);
    expect(Math.abs(flat.uv[2 * throat + 1]!)).toBeLessThan(1e-9);
    expect(demo.last.side).toBe("right");
    expect(flat.uv[2 * featherMedial[0]! + 1]!).toBeGreaterThan(0);
    expect(flat.uv[2 * featherLateral[0]! + 1]!).toBeLessThan(0);
  });

  test("swings its heel ends together by the asked spring at a small price in strain", () => {
    const sprung = layFlat(shell, 10);
    expect(heelGap(flat) - heelGap(sprung)).toBeCloseTo(10, 1);
    // Measured on a smooth pump shell by us before: 10 mm cost at most 0.9 % more local strain.
    expect(sprung.strain.p95 - flat.strain.p95).toBeLessThan(0.005);
    expect(sprung.strain.max - flat.strain.max).toBeLessThan(0.03);
    expect(Math.abs(sprung.strain.p50 - flat.strain.p50)).toBeLessThan(0.002);
  });

  test("comes out the same twice", () => {
    expect(cutShell(demo.board, demo.drawn, 6000)).toEqual(shell);
    expect(layFlat(shell, 0).uv).toEqual(flat.uv);
  });

  test("differs from a finer one by less than 0.3 mm along the heel gap", () => {
    const fine = layFlat(cutShell(demo.board, demo.drawn, 20_000), 0);
    expect(Math.abs(heelGap(fine) - heelGap(flat))).toBeLessThan(0.3);
    expect(Math.abs(flatLength(fine, fine.shell.edges.featherMedial) - flatLength(flat, shell.edges.featherMedial))).toBeLessThan(0.3);
  });

  test("the bottom lies flat with almost no strain, its rim the feather line, seat at the origin and toe on the axis", () => {
    const bottom = cutBottom(demo.last);
    const laid = layBottomFlat(bottom);
    const { loops, euler } = topologyOf(bottom.mesh);
    expect(euler).toBe(1);
    expect(new Set(loops[0]!)).toEqual(new Set(bottom.loop));
    expect(laid.strain.p95).toBeLessThan(0.02);
    const seat = bottom.loop[0]!, toe = bottom.loop[bottom.toeIndex]!;
    expect([laid.uv[2 * seat], laid.uv[2 * seat + 1]]).toEqual([0, 0]);
    expect(Math.abs(laid.uv[2 * toe + 1]!)).toBeLessThan(1e-9);
    // A nearly flat bottom: the chord from seat to toe is about the last length.
    expect(Math.abs(laid.uv[2 * toe]! - demo.last.measures.lastLength)).toBeLessThan(1.5);
    const solid = areas(bottom.mesh).reduce((sum, a) => sum + a, 0);
    let flatArea = 0;
    bottom.loop.forEach((v, i) => {
      const w = bottom.loop[(i + 1) % bottom.loop.length]!;
      flatArea += (laid.uv[2 * v]! * laid.uv[2 * w + 1]! - laid.uv[2 * w]! * laid.uv[2 * v + 1]!) / 2;
    });
    expect(Math.abs(Math.abs(flatArea) / solid - 1)).toBeLessThan(0.005);
  });
});
