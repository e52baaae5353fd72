import { describe, expect, test } from "vitest";
import type { Mesh } from "#mesh/mesh.ts";
import { flatten } from "#flatten/flatten.ts";
import { flatDistance } from "../support/flat-kernel.ts";
import { foldedBox, type Face } from "../support/folded-box.ts";
import { gridMesh } from "../support/formula-surfaces.ts";

// Shortest ways on surfaces that unroll: where the straight line in the flat stays on the piece, it is the way on the body.
// Values by elementary formulas and, for the room, by Dudeney's puzzle (1903); table DV-04 to DV-08.

const exact = { toleranceMm: 1e-9 };

/** Cone of sin γ = `sine` from `inner` to `outer` along its slant, cut open at s = 0, as a pyramid of so many sides that unrolls to the same sector. */
function cutCone(sine: number, inner: number, outer: number, columns: number, rows: number): Mesh {
  const sector = 2 * Math.PI * sine;
  return gridMesh((s, t) => {
    const slant = outer + (inner - outer) * t;
    const radius = (slant * Math.sin(sector / columns / 2)) / Math.sin(Math.PI / columns);
    return [radius * Math.cos(2 * Math.PI * s), radius * Math.sin(2 * Math.PI * s), -Math.sqrt(slant * slant - radius * radius)];
  }, columns, rows);
}

describe("a cone of sin γ = 0.3", () => {
  const [columns, rows] = [48, 10];
  const { uv } = flatten(cutCone(0.3, 20, 100, columns, rows), exact);

  test("DV-04: two points at slant 100 on opposite sides are 90.79809995 apart, shorter than round the circle", () => {
    expect(flatDistance(uv, 12, 36)).toBeCloseTo(90.79809995, 7);
    expect(flatDistance(uv, 12, 36)).toBeLessThan(94.24777961);
  });

  test("DV-05: what its sector lacks of a full turn is the apex's defect, 4.398229715", () => {
    const cut = (column: number) => {
      const [a, b] = [column, rows * (columns + 1) + column];
      return Math.atan2(uv[2 * a + 1]! - uv[2 * b + 1]!, uv[2 * a]! - uv[2 * b]!);
    };
    const turn = (((cut(columns) - cut(0)) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    expect(2 * Math.PI - Math.min(turn, 2 * Math.PI - turn)).toBeCloseTo(4.398229715, 9);
  });
});

test("DV-06: on a cylinder of radius 40, a quarter turn and 50 mm up are 80.29845428 apart", () => {
  const [columns, rows] = [48, 10];
  const radius = (40 * (Math.PI / columns)) / Math.sin(Math.PI / columns); // of a prism as far round as the cylinder
  const { uv } = flatten(gridMesh((s, t) => [radius * Math.cos(2 * Math.PI * s), radius * Math.sin(2 * Math.PI * s), 50 * t], columns, rows), exact);
  expect(flatDistance(uv, 6, rows * (columns + 1) + 18)).toBeCloseTo(80.29845428, 7);
});

test("DV-07: spider and fly in a room of 30 × 12 × 12 are 40 apart over five faces, not 42", () => {
  // End wall, ceiling, side wall, floor, other end wall; all seen from outside.
  const faces: readonly Face[] = [
    { corner: [0, 0, 0], across: [0, 0, 12], up: [0, 12, 0] },
    { corner: [0, 0, 12], across: [30, 0, 0], up: [0, 12, 0] },
    { corner: [0, 12, 0], across: [0, 0, 12], up: [30, 0, 0] },
    { corner: [0, 0, 0], across: [0, 12, 0], up: [30, 0, 0] },
    { corner: [30, 0, 0], across: [0, 12, 0], up: [0, 0, 12] },
  ];
  const { mesh, at } = foldedBox(faces, 1);
  const { uv, energy } = flatten(mesh, exact);
  expect(energy).toBeCloseTo(4, 12);
  expect(flatDistance(uv, at(0, [0, 6, 11]), at(4, [30, 6, 1]))).toBeCloseTo(40, 9);
});

test("DV-08: opposite corners of a unit cube are √5 apart over two faces", () => {
  const { mesh, at } = foldedBox([{ corner: [0, 0, 0], across: [1, 0, 0], up: [0, 0, 1] }, { corner: [1, 0, 0], across: [0, 1, 0], up: [0, 0, 1] }], 0.25);
  const { uv } = flatten(mesh, exact);
  expect(flatDistance(uv, at(0, [0, 0, 0]), at(1, [1, 1, 1]))).toBeCloseTo(2.236067977, 9);
});

test("a tangent surface of a helix keeps every length: its flat facets turn in the plane by the angles between them in space", () => {
  // Rulings along the edges of a polyline on a helix; neighbouring rulings meet in its corners, so the facets are flat.
  const [edges, rows] = [60, 6];
  const corner = (k: number): readonly [number, number, number] => [30 * Math.cos(k / 40), 30 * Math.sin(k / 40), 0.6 * k];
  const along = (k: number) => {
    const [a, b] = [corner(k), corner(k + 1)];
    const side = b.map((x, d) => x - a[d]!) as [number, number, number];
    const length = Math.hypot(...side);
    return { from: b, way: side.map((x) => x / length) as [number, number, number], length };
  };
  const reach = (t: number) => 20 + 40 * t;
  const mesh = gridMesh((s, t) => {
    const { from, way } = along(Math.round(s * edges));
    return [from[0] + reach(t) * way[0], from[1] + reach(t) * way[1], from[2] + reach(t) * way[2]];
  }, edges, rows);
  const flat = flatten(mesh, exact);
  for (const list of [flat.stretchMax, flat.stretchMin]) for (const s of list) expect(Math.abs(s - 1)).toBeLessThan(1e-9);
  // The same polyline in the plane: edge for edge, angle for angle; its rulings' ends are the plan.
  const plan = new Float64Array(flat.uv.length);
  for (let k = 0, x = 0, y = 0, angle = 0; k <= edges; k++) {
    const here = along(k);
    if (k > 0) {
      const before = along(k - 1);
      angle += Math.acos(here.way.reduce((sum, w, d) => sum + w * before.way[d]!, 0));
      x += here.length * Math.cos(angle);
      y += here.length * Math.sin(angle);
    }
    for (let r = 0; r <= rows; r++) plan.set([x + reach(r / rows) * Math.cos(angle), y + reach(r / rows) * Math.sin(angle)], 2 * (r * (edges + 1) + k));
  }
  for (const from of [0, edges, 200]) for (let i = 0; i < plan.length / 2; i++) expect(Math.abs(flatDistance(flat.uv, from, i) - flatDistance(plan, from, i))).toBeLessThan(1e-6);
});
