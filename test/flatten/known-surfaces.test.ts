import { describe, expect, test } from "vitest";
import { diskOf } from "#flatten/disk.ts";
import { flatten } from "#flatten/flatten.ts";
import { framesOf } from "#flatten/frames.ts";
import { area } from "#mesh/area.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { vertexNormals } from "#mesh/normals.ts";
import { planeSections, sectionLength } from "#mesh/section.ts";
import { perimeter } from "#plane/measure.ts";
import { offsetOutline } from "../support/grid-offset.ts";
import { ellipsoid } from "../mesh/support/shapes.ts";
import { flatArea, flatDistance } from "../support/flat-kernel.ts";
import { capMesh } from "../support/formula-surfaces.ts";

// Areas, rims and curvatures of round bodies by formula (elementary; table SP-01 to SP-08, SU-04, SU-05, PL-06). Inscribed meshes
// are off by the square of their edges, which two of them take out (Richardson).

const RADIUS = 100;
const ALPHA = Math.PI / 6;
const cap = (rings: number) => capMesh(RADIUS, 30, rings);
const rimOf = (mesh: Mesh): Uint32Array => diskOf(mesh.positions.length / 3, mesh.triangles).rim;
const away = ({ positions: p }: Mesh, a: number, b: number): number => Math.hypot(p[3 * a]! - p[3 * b]!, p[3 * a + 1]! - p[3 * b + 1]!, p[3 * a + 2]! - p[3 * b + 2]!);
const around = (rim: Uint32Array, far: (a: number, b: number) => number): number => rim.reduce((sum, i, k) => sum + far(i, rim[(k + 1) % rim.length]!), 0);
/** Value in the limit of fine meshes from those of 24 and 48 rings. */
const limit = (of: (rings: number) => number): number => (4 * of(48) - of(24)) / 3;

function rimLength(rings: number): number {
  const mesh = cap(rings);
  return around(rimOf(mesh), (a, b) => away(mesh, a, b));
}

function flatRimLength(rings: number): number {
  const uv = equidistant(rings);
  return around(rimOf(cap(rings)), (a, b) => flatDistance(uv, a, b));
}

/** Along the first vertices of the rings, from the pole outward. */
function meridianLength(rings: number): number {
  const mesh = cap(rings);
  const first = (ring: number) => (ring === 0 ? 0 : 1 + 3 * ring * (ring - 1));
  let sum = 0;
  for (let ring = 0; ring < rings; ring++) sum += away(mesh, first(ring), first(ring + 1));
  return sum;
}

/** Azimuthal equidistant map of the cap: its rings at their geodesic radii. */
function equidistant(rings: number): Float64Array {
  const { positions } = cap(rings);
  const uv = new Float64Array((2 * positions.length) / 3);
  for (let i = 0; i < uv.length / 2; i++) {
    const [x, y, z] = [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
    const out = Math.hypot(x, y);
    if (out > 0) uv.set([(x / out) * RADIUS * Math.atan2(out, z), (y / out) * RADIUS * Math.atan2(out, z)], 2 * i);
  }
  return uv;
}

/** Angles of the triangles at every vertex, summed, from the frames that the flattening works in. */
function angleSums(mesh: Mesh): { readonly sums: Float64Array; readonly onRim: Uint8Array } {
  const { triangles, rim, vertices } = diskOf(mesh.positions.length / 3, mesh.triangles);
  const { of } = framesOf(mesh.positions, triangles);
  const sums = new Float64Array(vertices);
  for (let k = 0; k < triangles.length; k += 3) {
    const [gx, gy, hy] = [of[(4 * k) / 3]!, of[(4 * k) / 3 + 1]!, of[(4 * k) / 3 + 2]!];
    const [x1, y2] = [1 / gx, 1 / hy];
    const x2 = -gy * x1 * y2;
    const [first, second] = [Math.atan2(y2, x2), Math.atan2(y2, x1 - x2)];
    sums[triangles[k]!]! += first;
    sums[triangles[k + 1]!]! += second;
    sums[triangles[k + 2]!]! += Math.PI - first - second;
  }
  const onRim = new Uint8Array(vertices);
  for (const i of rim) onRim[i] = 1;
  return { sums, onRim };
}

describe("a cap of radius 100 and 30°", () => {
  test("SP-01: height 13.39745962, area 8417.872145, geodesic radius 52.35987756, rim 314.1592654", () => {
    const { positions } = cap(24);
    expect(positions[2]! - positions[positions.length - 1]!).toBeCloseTo(13.39745962, 8);
    expect(Math.abs(limit((r) => area(cap(r))) - 8417.872145)).toBeLessThan(1e-3);
    expect(limit(meridianLength)).toBeCloseTo(52.35987756, 6);
    expect(limit(rimLength)).toBeCloseTo(314.1592654, 5);
  });

  test("SP-02: the flat disc of the same geodesic radius has rim 328.9868134 and area 8612.854633: more than the cap's", () => {
    expect(limit(flatRimLength)).toBeCloseTo(328.9868134, 4);
    expect(Math.abs(limit((r) => flatArea(equidistant(r), cap(r).triangles)) - 8612.854633)).toBeLessThan(1e-3);
  });

  test("SP-03: curvature inside 0.8417872145, along the rim 5.441398093, 2π together on every mesh (Gauss and Bonnet)", () => {
    const curvature = (rings: number) => {
      const { sums, onRim } = angleSums(cap(rings));
      let [inside, along] = [0, 0];
      sums.forEach((sum, i) => {
        if (onRim[i] === 1) along += Math.PI - sum;
        else inside += 2 * Math.PI - sum;
      });
      expect(inside + along).toBeCloseTo(2 * Math.PI, 9);
      return { inside, along };
    };
    // Half of the rim's triangles' share of the curvature lies with its vertices: an error of first order.
    const [coarse, fine] = [curvature(24), curvature(48)];
    expect(Math.abs(2 * fine.inside - coarse.inside - 0.8417872145)).toBeLessThan(1e-3);
    expect(Math.abs(2 * fine.along - coarse.along - 5.441398093)).toBeLessThan(1e-3);
  });

  test("SP-04: the rim falls short of a flat circle's by the curvature, 9.8638e-5 of 1e-4", () => {
    const [radius, rim] = [52.35987756, limit(rimLength)];
    expect((3 * (2 * Math.PI * radius - rim)) / (Math.PI * radius ** 3)).toBeCloseTo(9.8638e-5, 9);
  });

  test("flattened, its rim lies between its own and the flat disc's, and radii give way by as much as Milnor's bound leaves", () => {
    const mesh = cap(40);
    const { uv, stretchMax, stretchMin } = flatten(mesh);
    const rim = around(rimOf(mesh), (a, b) => flatDistance(uv, a, b));
    expect(rim).toBeGreaterThan(314.16);
    expect(rim).toBeLessThan(328.99);
    expect(Math.max(...stretchMax) / Math.min(...stretchMin)).toBeGreaterThan((ALPHA / Math.sin(ALPHA)) * (1 - 2e-4));
  });
});

test("SP-07: the octant of a ball of radius 100 has an area of 15707.96327", () => {
  // Eight octants make the ball; the mesh's ball is the ellipsoid with three like axes.
  const [coarse, fine] = [5, 6].map((times) => area(ellipsoid(100, 100, 100, times)) / 8) as [number, number];
  expect(Math.abs((4 * fine - coarse) / 3 - 15707.96327)).toBeLessThan(0.05);
});

test.each([["oblate", 2, 1, 34.68753081], ["prolate", 1, 2, 21.47843533]] as const)("SU-04: the %s ellipsoid", (_, across, along, expected) => {
  const [coarse, fine] = [6, 7].map((times) => area(ellipsoid(across, across, along, times))) as [number, number];
  expect(Math.abs((4 * fine - coarse) / 3 / expected - 1)).toBeLessThan(1e-5);
});

describe("SU-05: the saddle z = xy / 100 over a disc of radius 50", () => {
  const saddle = (rings: number): Mesh => {
    const { positions, triangles } = capMesh(1, 60, rings);
    return {
      triangles,
      positions: positions.map((_, i) => {
        const at = 3 * Math.floor(i / 3);
        const polar = Math.acos(Math.min(1, positions[at + 2]!));
        const out = Math.hypot(positions[at]!, positions[at + 1]!);
        const scale = out > 0 ? (50 * polar) / (Math.PI / 3) / out : 0;
        const [x, y] = [positions[at]! * scale, positions[at + 1]! * scale];
        return [x, y, (x * y) / 100][i % 3]!;
      }),
    };
  };

  test("has an area of 8326.110355", () => {
    expect(Math.abs(limit((r) => area(saddle(r))) - 8326.110355)).toBeLessThan(2e-3);
  });

  test("lies flat with its rim squeezed and its middle stretched, in four like quarters", () => {
    const { uv, stretchMin, stretchMax, flipped } = flatten(saddle(30), { toleranceMm: 1e-7 });
    expect(flipped).toBe(0);
    expect(Math.max(...stretchMax)).toBeGreaterThan(1);
    expect(Math.min(...stretchMin)).toBeLessThan(1);
    // Turned by a quarter about z it is its own mirror image in z: opposite rim points are all alike in fours.
    const first = uv.length / 2 - 180;
    for (const k of [0, 10, 20, 30]) expect(flatDistance(uv, 0, first + k)).toBeCloseTo(flatDistance(uv, 0, first + k + 90), 3);
  });
});

describe("PL-06: a closed girth grows by 2πt when what it girds grows by t", () => {
  test.each([[1, 6.2832], [1.2, 7.5398], [1.3, 8.1681], [1.5, 9.4248], [2.2, 13.823]])("t = %f mm: %f mm, on an ellipse in the plane and on an ellipsoid lifted along its normals", (t, grows) => {
    const n = 120; // for a polygon the formula holds as it does for a curve; many short sides would feel the grid of 0.1 µm more
    const ellipse = { xy: Float64Array.from({ length: 2 * n }, (_, i) => (i % 2 === 0 ? 46 * Math.cos((Math.PI * (i >> 1) * 2) / n) : 28 * Math.sin((Math.PI * (i >> 1) * 2) / n))) };
    expect(Math.abs(perimeter(offsetOutline(ellipse, t, { arcToleranceMm: 1e-4 })[0]!) - perimeter(ellipse) - grows)).toBeLessThan(2e-4);
    const body = ellipsoid(120, 45, 35, 6);
    const normals = vertexNormals(body);
    const girth = (lift: number) => sectionLength(planeSections({ positions: body.positions.map((x, i) => x + lift * normals[i]!), triangles: body.triangles }, [0.01, 0, 0], [1, 0, 0])[0]!);
    expect(Math.abs(girth(t) - girth(0) - grows)).toBeLessThan(5e-3);
    expect(Math.abs(girth(t / 2) - girth(0) - grows / 2)).toBeLessThan(5e-3); // to the middle of the thickness half as much
  });
});
