import { describe, expect, test } from "vitest";
import { boundaryLoops, edgePartners, neighbours, nextCorner, vertexRings } from "#mesh/neighbours.ts";
import { parts } from "#mesh/topology.ts";
import { cleanedScan } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";
import { angleDefects, box, ellipsoid, icosahedron, tetrahedron, together, torus, where } from "./support/shapes.ts";

describe("Gauss-Bonnet: the angle defects of a closed mesh sum to 2π·χ (checks.md SP-05; textbook)", () => {
  test.each([
    ["tetrahedron", tetrahedron(), 2], ["cube", box(1, 1, 1), 2], ["icosahedron", icosahedron(), 2], ["ellipsoid", ellipsoid(120, 45, 35, 4), 2], ["ring", torus(60, 20, 40, 20), 0],
  ])("%s", (_, mesh, euler) => {
    expect(angleDefects(mesh)).toBeCloseTo(2 * Math.PI * euler, 9);
    expect(parts(mesh)).toMatchObject([{ euler, genus: 1 - euler / 2, loops: 0 }]);
  });

  test.skipIf(!hasShared).each([
    ["feet", "my-feet_left_foot.stl"], ["feet", "find_template_foot.obj"], ["feet", "crop_VH_F_foot_xpos.obj"], ["shoes", "wellington_boot.glb"], ["import", "featuretype.STL"], ["import", "busted.STL"], ["surfaces", "torus.obj"],
    ["lasts", "last_eu36_round_scan.ply"], ["lasts", "last_eu37_almond_scan.stl"], ["lasts", "last_eu38_round_heel20_scan.obj"], ["lasts", "last_eu39_square_scan.ply"], ["lasts", "last_eu41_pointed_scan.glb"],
  ])("%s/%s, cleaned", (...path) => {
    const mesh = cleanedScan(path[0], path[1]);
    const [part, ...others] = parts(mesh);
    expect(others).toEqual([]);
    expect(part!.loops).toBe(0);
    expect(angleDefects(mesh)).toBeCloseTo(2 * Math.PI * part!.euler, 6);
  });
});

test("parts are told apart, each with its handles and holes", () => {
  const open = where(box(1, 1, 1), (_x, _y, z) => z < 0.99);
  const found = parts(together(torus(60, 20, 24, 12), open, tetrahedron()));
  expect(found).toMatchObject([{ genus: 1, loops: 0, euler: 0, triangles: 576 }, { genus: 0, loops: 1, euler: 1, triangles: 10 }, { genus: 0, loops: 0, triangles: 4 }]);
  expect(found[1]!.area).toBeCloseTo(5, 12);
});

describe("neighbours", () => {
  test("every twin runs the other way along the same edge, and twins are mutual", () => {
    const mesh = ellipsoid(3, 2, 1, 2);
    const { twin, openEdges, crowdedEdges, turnedEdges } = neighbours(mesh);
    expect([openEdges, crowdedEdges, turnedEdges]).toEqual([0, 0, 0]);
    for (let h = 0; h < twin.length; h++) {
      expect(twin[twin[h]!]).toBe(h);
      expect(mesh.triangles[twin[h]!]).toBe(mesh.triangles[nextCorner(h)]);
    }
  });

  test("open, crowded and turned edges are counted", () => {
    const fins = { positions: Float64Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 1]), triangles: Uint32Array.from([0, 1, 2, 1, 0, 3, 0, 1, 4]) };
    expect(neighbours(fins)).toMatchObject({ openEdges: 6, crowdedEdges: 1, turnedEdges: 0 });
    const turned = { positions: fins.positions, triangles: Uint32Array.from([0, 1, 2, 0, 1, 3]) };
    expect(neighbours(turned)).toMatchObject({ openEdges: 4, crowdedEdges: 0, turnedEdges: 1 });
    expect(edgePartners(turned).partner[0]).toBe(3);
  });

  test("one loop runs around the missing face of a box", () => {
    const open = where(box(1, 1, 1), (_x, _y, z) => z < 0.99);
    const loops = boundaryLoops(neighbours(open).twin);
    expect(loops.map((l) => Array.from(l, (h) => open.triangles[h]).sort())).toEqual([[4, 5, 6, 7]]);
  });

  test("points of an icosahedron have five neighbours each", () => {
    const { start, items } = vertexRings(icosahedron());
    for (let v = 0; v < 12; v++) expect(new Set(items.subarray(start[v], start[v + 1])).size).toBe(5);
  });
});
