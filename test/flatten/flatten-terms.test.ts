import { describe, expect, test } from "vitest";
import { Bug } from "#base/bug.ts";
import type { Step } from "#flatten/descent.ts";
import { Flattener, flatten } from "#flatten/flatten.ts";
import { capMesh, pumpShell } from "../support/formula-surfaces.ts";
import { flatDistance } from "../support/flat-kernel.ts";

const shell = pumpShell(3000);
const count = shell.positions.length / 3;
/** Last row of the formula: the topline. */
const topline = rowOfTop();

function rowOfTop(): number[] {
  // The inner back edge ends where the topline begins; its vertices are the last of the mesh, joined one to the next.
  const row: number[] = [count - 1];
  const joined = new Set<number>();
  for (let k = 0; k < shell.triangles.length; k += 3) for (let e = 0; e < 3; e++) joined.add(shell.triangles[k + e]! * count + shell.triangles[k + ((e + 1) % 3)]!);
  while (joined.has(row.at(-1)! * count + row.at(-1)! - 1)) row.push(row.at(-1)! - 1);
  return row;
}

const inSpace = (a: number, b: number) => Math.hypot(...[0, 1, 2].map((i) => shell.positions[3 * a + i]! - shell.positions[3 * b + i]!));
const worstChange = (uv: Float64Array) => Math.max(...topline.slice(1).map((b, k) => Math.abs(flatDistance(uv, topline[k]!, b) / inSpace(topline[k]!, b) - 1)));
const settled = (steps: readonly Step[]) => steps.at(-1)!.moveMm;

describe("weights on edges", () => {
  test("keep the topline's edges true at the cost of the rest", () => {
    expect(topline.length).toBeGreaterThan(60);
    const free = flatten(shell);
    const edges = { a: Uint32Array.from(topline.slice(1)), b: Uint32Array.from(topline.slice(0, -1)), weight: new Float64Array(topline.length - 1).fill(1) };
    const held = flatten(shell, { edges });
    expect(worstChange(free.uv)).toBeGreaterThan(5e-3);
    expect(worstChange(held.uv)).toBeLessThan(0.02 * worstChange(free.uv));
    expect(held.energy).toBeGreaterThan(free.energy);
    expect(held.flipped).toBe(0);
    expect(settled(held.steps)).toBeLessThan(0.01);
    expect(held.steps.length).toBeLessThanOrEqual(9);
  });
});

describe("edges scaled", () => {
  const edges = { a: Uint32Array.from(topline.slice(1)), b: Uint32Array.from(topline.slice(0, -1)), weight: new Float64Array(topline.length - 1).fill(10) };
  const scaled = (by: number) => new Float64Array(edges.a.length).fill(by);
  const lengthOf = (uv: Float64Array) => topline.slice(1).reduce((sum, b, k) => sum + flatDistance(uv, topline[k]!, b), 0);
  const spaceLength = topline.slice(1).reduce((sum, b, k) => sum + inSpace(topline[k]!, b), 0);

  test("the topline comes out shorter by the share that was asked for", () => {
    for (const by of [1, 0.98, 1.01]) {
      const { uv, flipped } = flatten(shell, { edges: { ...edges, scale: scaled(by) } });
      expect(flipped).toBe(0);
      expect(Math.abs(lengthOf(uv) / spaceLength - by)).toBeLessThan(3e-4);
    }
  });

  test("scales and weights may change from run to run of one Flattener; what the first had is still there for the next", () => {
    const kept = new Flattener(count, shell.triangles, { edges });
    const first = kept.run(shell.positions);
    const shorter = kept.run(shell.positions, { edges: { scale: scaled(0.98) } });
    expect(shorter).toEqual(flatten(shell, { edges: { ...edges, scale: scaled(0.98) } }));
    expect(kept.run(shell.positions, { edges: { weight: scaled(2) } })).toEqual(flatten(shell, { edges: { ...edges, weight: scaled(2) } }));
    expect(kept.run(shell.positions)).toEqual(first);
    const warm = kept.run(shell.positions, { edges: { scale: scaled(0.98) }, start: first.uv });
    expect(warm.steps.length).toBeLessThan(shorter.steps.length);
    expect(warm.energy).toBeCloseTo(shorter.energy, 8);
  });

  test("a list of the wrong length or a scale of nothing is our own fault", () => {
    const kept = new Flattener(count, shell.triangles, { edges });
    expect(() => kept.run(shell.positions, { edges: { scale: new Float64Array(2).fill(1) } })).toThrow(Bug);
    expect(() => kept.run(shell.positions, { edges: { scale: scaled(0) } })).toThrow(Bug);
    expect(() => kept.run(shell.positions, { ties: [{ targetMm: 1, weight: 1 }] })).toThrow(Bug);
  });
});

describe("ties", () => {
  const [inner, outer] = [count - 1, topline.at(-1)!];

  test("swing the heel ends together for little strain, as the pattern's soft mode is", () => {
    const free = flatten(shell);
    const gap = flatDistance(free.uv, inner, outer);
    const kept = new Flattener(count, shell.triangles, { ties: [{ a: inner, b: outer, targetMm: gap, weight: 1 }] });
    const asItLies = kept.run(shell.positions, { start: free.uv });
    expect(Math.abs(flatDistance(asItLies.uv, inner, outer) - gap)).toBeLessThan(0.01);
    expect(asItLies.energy).toBeCloseTo(free.energy, 9);
    let energy = free.energy;
    for (const closer of [5, 10, 20]) {
      const swung = kept.run(shell.positions, { start: free.uv, ties: [{ targetMm: gap - closer, weight: 1 }] });
      expect(Math.abs(flatDistance(swung.uv, inner, outer) - (gap - closer))).toBeLessThan(0.05 * closer);
      expect(swung.energy).toBeGreaterThan(energy);
      expect(settled(swung.steps)).toBeLessThan(0.01);
      energy = swung.energy;
    }
    expect(energy - free.energy).toBeLessThan(2e-3);
  });

  test("pull two points of a flat disk together against the energy's resistance", () => {
    const disk = capMesh(1000, 3, 6); // nearly flat
    const [a, b] = [91, 100]; // on the rim, opposite
    const free = flatDistance(flatten(disk).uv, a, b);
    const pulled = flatten(disk, { ties: [{ a, b, targetMm: 0, weight: 1 }] });
    expect(flatDistance(pulled.uv, a, b)).toBeLessThan(free - 1);
    expect(pulled.flipped).toBe(0);
  });
});

test("where it stops, at most 0.005 mm are left to the end, though the last step may keep an older factor", () => {
  const lines = { a: Uint32Array.from(topline.slice(1)), b: Uint32Array.from(topline.slice(0, -1)) };
  const kept: string[] = [];
  for (const weight of [0, 0.02, 0.5]) {
    const edges = { ...lines, weight: new Float64Array(topline.length - 1).fill(weight) };
    const stopped = flatten(shell, { edges });
    const end = flatten(shell, { edges, toleranceMm: 1e-8 });
    kept.push(stopped.steps.at(-1)!.hessian);
    for (let i = 0; i < count; i += 5) expect(Math.abs(flatDistance(stopped.uv, topline[0]!, i) - flatDistance(end.uv, topline[0]!, i))).toBeLessThan(0.005);
  }
  expect(kept).toContain("kept");
});

describe("starting from an earlier result", () => {
  test("ends where a cold start ends, in fewer steps", () => {
    const kept = new Flattener(count, shell.triangles);
    const before = kept.run(shell.positions);
    const wider = shell.positions.map((x, i) => (i % 3 === 0 ? x : 1.03 * x));
    const cold = kept.run(wider, { toleranceMm: 1e-6 });
    const warm = kept.run(wider, { start: before.uv, toleranceMm: 1e-6 });
    expect(warm.steps.length).toBeLessThan(cold.steps.length);
    for (let i = 0; i < count; i += 11) expect(Math.abs(flatDistance(warm.uv, 0, i) - flatDistance(cold.uv, 0, i))).toBeLessThan(1e-5);
  });

  test("a start that is folded over is not used", () => {
    const cold = flatten(shell);
    const folded = cold.uv.slice();
    folded.set(cold.uv.subarray(0, 2), 2 * 300); // one vertex far away from its neighbours
    expect(flatten(shell, { start: folded }).steps).toEqual(cold.steps);
  });
});
