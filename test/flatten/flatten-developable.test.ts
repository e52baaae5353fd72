import { describe, expect, test } from "vitest";
import type { Mesh } from "#mesh/mesh.ts";
import { flatten } from "#flatten/flatten.ts";
import { gridMesh, type Patch } from "../support/formula-surfaces.ts";
import { flatArea, flatDistance } from "../support/flat-kernel.ts";

// Many-sided prisms and pyramids in place of cylinder and cone: their sides are flat, so they unroll exactly, and their
// girth is set to that of the round body. Expected values: the unrolled shapes by formula (elementary; table DV-01 to DV-09).

const columns = 48;
const rows = 12;

/** Prism whose perimeter is 2π · radius; s goes round, height above the ground from `low` to `high` at each angle. */
function prism(radius: number, low: (angle: number) => number, high: (angle: number) => number, sides = columns): Patch {
  const across = (radius * (Math.PI / sides)) / Math.sin(Math.PI / sides);
  return (s, t) => {
    const angle = 2 * Math.PI * s;
    return [across * Math.cos(angle), across * Math.sin(angle), low(angle) + (high(angle) - low(angle)) * t];
  };
}

/** Pyramid frustum that unrolls to a sector of `sector` radians between the radii `inner` and `outer`; s goes round. */
function pyramid(sector: number, inner: number, outer: number): Patch {
  return (s, t) => {
    const slant = outer + (inner - outer) * t;
    const radius = (slant * Math.sin(sector / columns / 2)) / Math.sin(Math.PI / columns);
    return [radius * Math.cos(2 * Math.PI * s), radius * Math.sin(2 * Math.PI * s), -Math.sqrt(slant * slant - radius * radius)];
  };
}

/** Compares all distances from four spread vertices with those in the expected plan. */
function expectPlan(mesh: Mesh, plan: (s: number, t: number) => readonly [number, number]): void {
  const flat = flatten(mesh, { toleranceMm: 1e-8 });
  const wanted = new Float64Array(flat.uv.length);
  for (let r = 0, i = 0; r <= rows; r++) for (let c = 0; c <= columns; c++, i += 2) wanted.set(plan(c / columns, r / rows), i);
  const count = wanted.length / 2;
  let worst = 0;
  for (const from of [0, columns, count - 1, Math.floor(count / 2)])
    for (let i = 0; i < count; i++) worst = Math.max(worst, Math.abs(flatDistance(flat.uv, from, i) - flatDistance(wanted, from, i)));
  expect(worst).toBeLessThan(1e-6);
  expect(flat.flipped).toBe(0);
  expect(flat.energy).toBeCloseTo(4, 12);
  for (const s of flat.stretchMax) expect(Math.abs(s - 1)).toBeLessThan(1e-9); // DV-09
  for (const s of flat.stretchMin) expect(Math.abs(s - 1)).toBeLessThan(1e-9);
  expect(flatArea(flat.uv, mesh.triangles)).toBeGreaterThan(0);
}

describe("developable surfaces come out exact", () => {
  test("DV-01: a cylinder of radius 40 and height 60 is a rectangle of 251.3274123 × 60", () => {
    expectPlan(gridMesh(prism(40, () => 0, () => 60), columns, rows), (s, t) => [251.3274123 * s, 60 * t]);
  });

  test("DV-02: cut at 30° it ends in a sine of amplitude 23.0940108", () => {
    const cut = (angle: number) => 60 + 40 * Math.tan(Math.PI / 6) * Math.cos(angle);
    expectPlan(gridMesh(prism(40, () => 0, cut), columns, rows), (s, t) => [251.3274123 * s, (60 + 23.0940108 * Math.cos(2 * Math.PI * s)) * t]);
  });

  test("DV-02: that edge is as long as the ellipse 46.188 × 40, 271.1167045", () => {
    const edge = (sides: number) => {
      const cut = (angle: number) => 60 + 40 * Math.tan(Math.PI / 6) * Math.cos(angle);
      const { uv } = flatten(gridMesh(prism(40, () => 0, cut, sides), sides, 2), { toleranceMm: 1e-8 });
      let sum = 0;
      for (let c = 0; c < sides; c++) sum += flatDistance(uv, 2 * (sides + 1) + c, 2 * (sides + 1) + c + 1);
      return sum;
    };
    // The chords' error falls with the square of their number: extrapolate (Richardson).
    expect((4 * edge(240) - edge(120)) / 3).toBeCloseTo(271.1167045, 6);
  });

  test("DV-03: a cone frustum of radii 30 and 50, height 60 is a sector of 113.8419958° between 94.8683298 and 158.1138830", () => {
    const sector = (113.8419958 * Math.PI) / 180;
    const mesh = gridMesh(pyramid(sector, 94.8683298, 158.113883), columns, rows);
    expectPlan(mesh, (s, t) => {
      const r = 158.113883 + (94.8683298 - 158.113883) * t;
      return [r * Math.cos(sector * s), r * Math.sin(sector * s)];
    });
    // Area 15895.34123 of the round sector; the chords of 48 sides take away the known share sin x / x.
    const x = sector / columns;
    expect(flatArea(flatten(mesh).uv, mesh.triangles)).toBeCloseTo((15895.34123 * Math.sin(x)) / x, 3);
  });
});
