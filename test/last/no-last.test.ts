// What is no last is refused in words. Bodies are invented fixtures; the shoes and meshes of ../shared/data are others' (see its README).
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { binaryStl, box, torus, type Triangles } from "../support/solids.ts";

const cleaned = (file: string, bytes: Uint8Array): Mesh => cleanScan(readScan(file, bytes).mesh, unwatched).mesh;
const solid = (t: Triangles, scale = 1): Mesh => cleaned("solid.stl", binaryStl(t, { scale }));

function refusalOf(mesh: Mesh): Refusal {
  try {
    lastFromScan(mesh, { name: "trial" }, unwatched);
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error("it was taken for a last");
}

const bodies: readonly (readonly [string, Triangles, string])[] = [
  ["a ring", torus(90, 35), "not-a-last"],
  ["a slim ring", torus(120, 14), "not-a-last"],
  ["a cube", box(250, 250, 250, 12), "not-a-last"],
  ["a plate", box(250, 90, 6, 20), "not-a-last"],
  ["a rod", box(250, 30, 30, 20), "not-a-last"],
  ["a brick of a last's proportions", box(250, 80, 85, 24), "not-a-last"],
  ["a speck", box(0.7, 0.25, 0.25, 4), "last-size-absurd"],
];

test.each(bodies)("%s is refused", (_, body, code) => {
  const { finding } = refusalOf(solid(body));
  expect(finding.code).toBe(code);
  expect(explain(finding)).toMatch(/(Load|Scale|Scan) the|load it again/);
});

describe.skipIf(!hasShared)("what others made", () => {
  test.each(["crop_mh_shoes01_one.obj", "crop_mh_shoes03_one.obj", "wellington_boot.glb"])("the shoe %s is refused as a shoe", (file) => {
    const { finding } = refusalOf(cleaned(file, sharedBytes("shoes", file)));
    expect(finding.code).toBe("looks-like-shoe");
    expect(explain(finding)).toContain("scan the last without the shoe");
  });

  test("a bottle, slender as a last, is refused for want of an edge and a ball", () => {
    const { finding } = refusalOf(cleaned("fuze.ply", sharedBytes("import", "fuze.ply")));
    expect(finding.code).toBe("not-a-last");
    expect(explain(finding)).toMatch(/no feather edge.*narrower than the/);
  });

  test.each(["torus.obj", "hand_lowres.obj", "nefertiti.stl", "cube_no_bottom.obj"])("%s is refused", (file) => {
    expect(refusalOf(cleaned(file, sharedBytes("surfaces", file))).finding.code).toMatch(/^(not-a-last|last-size-absurd)$/);
  });
});
