import { describe, expect, test } from "vitest";
import { lastFromMeasures } from "#last/from-measures.ts";
import { demoMeasurements } from "#last/demo.ts";
import { girthAt } from "#last/girth.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import { cutShell } from "#shell/cut.ts";
import { crossings, partLength } from "#shell/girths.ts";
import { lifted } from "#shell/lift.ts";
import { demoBoard } from "../support/demo-shell.ts";
import { capMesh } from "../support/formula-surfaces.ts";

/** A tube along z without ends, its section (a cos φ, b sin φ). */
function tube(a: number, b: number, around = 256, rows = 8): Mesh {
  const positions: number[] = [], triangles: number[] = [];
  for (let r = 0; r <= rows; r++) for (let k = 0; k < around; k++) positions.push(a * Math.cos((2 * Math.PI * k) / around), b * Math.sin((2 * Math.PI * k) / around), 2 * r);
  for (let r = 0; r < rows; r++)
    for (let k = 0; k < around; k++) {
      const p = r * around + k, q = r * around + ((k + 1) % around);
      triangles.push(p, q, q + around, p, q + around, p + around);
    }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

const even = (mesh: Mesh, mm: number): Float64Array => new Float64Array(mesh.positions.length / 3).fill(mm);

describe("a surface lifted by an even thickness", () => {
  // Steiner: the outer girth of any closed convex section is longer by 2 pi t; values to four places.
  const known = [[1, 6.2832], [1.2, 7.5398], [1.3, 8.1681], [1.5, 9.4248], [2.2, 13.823]] as const;

  test.each([["round", 40, 40], ["oval", 46, 28]] as const)("is longer round a closed %s section by 2 pi times the thickness", (_, a, b) => {
    const mesh = tube(a, b);
    const parts = crossings({ mesh }, { through: [0, 0, 7], normal: [0, 0, 1] });
    const girth = (p: Float64Array) => parts.reduce((sum, part) => sum + partLength(p, part), 0);
    for (const [t, adds] of known) expect(Math.abs(girth(lifted(mesh, even(mesh, t)).positions) - girth(mesh.positions) - adds), `${t} mm`).toBeLessThan(0.002 * t);
  });

  // Before the throat the upper closes over the last. Farther back the ridge slopes in the plane of the tape, which adds, and a tape
  // cuts off a little at the sharp edges of comb and bottom.
  test("is longer round the example last by the same, as a tape lies: within 1 % before the throat, 5 % farther back", () => {
    const { mesh } = lastFromMeasures(demoMeasurements, "example last", () => {});
    const on = new Sectioner(mesh);
    for (const [t, adds] of known) {
      const over = new Sectioner({ ...mesh, positions: lifted(mesh, even(mesh, t)).positions });
      // The lifted last begins t before the last itself, so the same place is asked for at another share.
      for (const [share, within] of [[0.2, 0.05], [0.5, 0.05], [0.68, 0.05], [0.75, 0.01], [0.8, 0.01]] as const) {
        const grown = girthAt(over, shareOf(over.mesh, on.mesh, share)) - girthAt(on, share);
        expect(Math.abs(grown / adds - 1), `${t} mm at ${share}`).toBeLessThan(within);
      }
    }
  });

  test("is a larger sphere over a sphere, its rim too", () => {
    const mesh = capMesh(40, 70, 24);
    const { positions, folded } = lifted(mesh, even(mesh, 2));
    expect(folded).toEqual([]);
    for (let i = 0; i < positions.length; i += 3) expect(Math.abs(Math.hypot(positions[i]!, positions[i + 1]!, positions[i + 2]!) - 42)).toBeLessThan(0.02);
  });
});

/** The share of the lifted mesh's length at which lies what lies at a share of the other. */
function shareOf(over: Mesh, on: Mesh, share: number): number {
  const ends = ({ positions }: Mesh) => {
    const xs = positions.filter((_, i) => i % 3 === 0);
    return [xs.reduce((a, b) => Math.min(a, b)), xs.reduce((a, b) => Math.max(a, b))] as const;
  };
  const [a, b] = ends(on), [c, d] = ends(over);
  return (a + share * (b - a) - c) / (d - c);
}

describe("where the surface is not smooth", () => {
  /** A gutter of radius 3 mm along x between two level strips, hollow side up. */
  const gutter = (): Mesh => {
    const profile: [number, number][] = [];
    for (let y = -12; y < -3; y++) profile.push([y, 0]);
    for (let k = 0; k <= 12; k++) profile.push([-3 * Math.cos((Math.PI * k) / 12), -3 * Math.sin((Math.PI * k) / 12)]);
    for (let y = 4; y <= 12; y++) profile.push([y, 0]);
    const n = profile.length, positions: number[] = [], triangles: number[] = [];
    for (let x = 0; x <= 20; x++) for (const [y, z] of profile) positions.push(x, y, z);
    for (let x = 0; x < 20; x++) for (let k = 0; k + 1 < n; k++) triangles.push(x * n + k, (x + 1) * n + k, (x + 1) * n + k + 1, x * n + k, (x + 1) * n + k + 1, x * n + k + 1);
    return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
  };

  test("a hollow wider than the lift is thick stays whole; one far tighter is told", () => {
    const mesh = gutter();
    expect(lifted(mesh, even(mesh, 1.3)).folded).toEqual([]);
    expect(lifted(mesh, even(mesh, 9)).folded.length).toBeGreaterThan(0);
  });

  test("the two banks of the back stay one line", () => {
    const { board, drawn } = demoBoard();
    const { mesh, edges } = cutShell(board, drawn, 2500);
    const twins = [...edges.backMedial].flatMap((v, i) => [v, edges.backLateral[i]!]);
    const { positions, folded } = lifted(mesh, even(mesh, 2.2), twins);
    expect(folded).toEqual([]);
    edges.backMedial.forEach((v, i) => expect(positions.subarray(3 * v, 3 * v + 3)).toEqual(positions.subarray(3 * edges.backLateral[i]!, 3 * edges.backLateral[i]! + 3)));
  });
});
