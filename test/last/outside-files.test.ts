// Every 3-D file of the outside data through reading, cleaning and finding a last. None is a last: each is cleaned or refused for the reason
// stated beside it, none crashes, none keeps still for long.
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { unwatched } from "#base/watch.ts";
import { volume } from "#mesh/area.ts";
import { cleanScan } from "#mesh/clean.ts";
import { neighbours } from "#mesh/neighbours.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { parts } from "#mesh/topology.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";

interface Outcome {
  readonly read?: string;
  readonly clean?: string | { readonly codes: readonly string[]; readonly genus?: number };
  /** Part of the refusal; true: taken for a last or a foot; absent: either, but no crash. */
  readonly last?: string | true;
  readonly why: string;
}
const fine: Outcome["clean"] = { codes: [] };

const files: readonly (readonly [string, Outcome])[] = [
  ["import/20mm-xyz-cube.stl", { clean: fine, last: "does not look like a shoe last", why: "a cube, clean" }],
  ["import/BoxInterleaved.glb", { clean: fine, last: "does not look like a shoe last", why: "a cube, points and normals interleaved" }],
  ["import/BoxTextured.glb", { clean: fine, last: "does not look like a shoe last", why: "a cube, points doubled along the seams of its picture" }],
  ["import/busted.STL", { clean: fine, last: "does not look like a shoe last", why: "text STL whose seams differ by rounding: welded, nothing to tell" }],
  ["import/comments.off", { clean: fine, last: "does not look like a shoe last", why: "a cube with comments" }],
  ["import/cube_compressed.obj", { clean: fine, last: "does not look like a shoe last", why: "a cube in the shortest writing" }],
  ["import/cubevt.obj", { clean: fine, last: "", why: "a cube with picture corners" }],
  ["import/empty.obj", { read: "holds no surface", why: "nothing in it" }],
  ["import/empty.ply", { read: "holds no surface", why: "nothing in it" }],
  ["import/empty.stl", { read: "holds no surface", why: "nothing in it" }],
  ["import/face_in_group_name.obj", { read: "holds 1 point but no surface", why: "one point; the word face is a name" }],
  ["import/featuretype.3MF", { clean: { codes: ["cracks-sewn"], genus: 9 }, last: "does not look like a shoe last", why: "a drilled machine part, points doubled along seams: nine holes are part of it" }],
  ["import/featuretype.STL", { clean: { codes: [], genus: 9 }, last: "does not look like a shoe last", why: "the same" }],
  ["import/featuretype.ply", { clean: { codes: [], genus: 9 }, last: "does not look like a shoe last", why: "the same" }],
  ["import/fuze.ply", { clean: fine, last: "does not look like a shoe last", why: "a bottle, clean and slender" }],
  ["import/fuze_ascii.ply", { clean: fine, last: "does not look like a shoe last", why: "the same" }],
  ["import/ply_empty_bin.ply", { read: "holds no surface", why: "nothing in it" }],
  ["import/stl_empty_ascii.stl", { read: "holds no surface", why: "nothing in it" }],
  ["import/stl_empty_bin.stl", { read: "holds no surface", why: "nothing in it" }],
  ["shoes/crop_mh_shoes01_one.obj", { clean: { codes: ["big-hole-closed"] }, last: "looks like a shoe", why: "a low shoe, open at the topline" }],
  ["shoes/crop_mh_shoes03_one.obj", { clean: { codes: ["big-hole-closed"] }, last: "looks like a shoe", why: "a low shoe, open at the topline" }],
  ["shoes/wellington_boot.glb", { clean: { codes: ["triangles-turned", "outer-wall-kept", "big-hole-closed"] }, last: "looks like a shoe", why: "a boot in a thick skin with an open mouth, two triangles turned over: its outer wall is no last" }],
  ["shoes/MaterialsVariantsShoe/MaterialsVariantsShoe.gltf", { read: "is a glTF file in several parts", why: "its points lie in another file" }],
  ["surfaces/cube_no_bottom.obj", { clean: { codes: ["big-hole-closed"] }, last: "does not look like a shoe last", why: "a cube without one side" }],
  ["surfaces/hand_lowres.obj", { clean: { codes: ["big-hole-closed"] }, last: "", why: "a hand, open at the wrist" }],
  ["surfaces/mountain.obj", { clean: "encloses no body", why: "land, seen from above: a sheet that no lid closes" }],
  ["surfaces/nefertiti.stl", { clean: { codes: ["big-hole-closed"] }, last: "does not look like a shoe last", why: "a bust, open below" }],
  ["surfaces/nefertiti_fine.stl", { clean: { codes: ["big-hole-closed"] }, last: "does not look like a shoe last", why: "the same, finer" }],
  ["surfaces/nefertiti_half.stl", { clean: "encloses no body", why: "half a bust as a sheet: a lid over its ragged edge would run through it" }],
  ["surfaces/plane_holes.obj", { clean: { codes: ["holes-closed"] }, last: "", why: "a body with holes right through its skin" }],
  ["surfaces/torus.obj", { clean: { codes: [], genus: 1 }, last: "does not look like a shoe last", why: "a ring: its handle is part of it" }],
  ["feet/crop_VH_F_foot_xpos.obj", { clean: { codes: ["big-hole-closed"] }, why: "a foot, open at the shank" }],
  ["feet/crop_human_woman_foot.obj", { clean: { codes: ["big-hole-closed"] }, why: "a very coarse foot, open at the shank" }],
  ["feet/crop_makehuman_base_foot.obj", { clean: { codes: ["big-hole-closed"] }, why: "a foot, open at the shank" }],
  ["feet/my-feet_left_foot.obj", { clean: fine, why: "a scanned foot, clean" }],
  ["feet/my-feet_left_foot.stl", { clean: fine, why: "the same" }],
  ["feet/find_template_foot.obj", { clean: { codes: ["crossings-cut"] }, why: "a foot whose toes run into each other a little" }],
];

function refusalOf(work: () => void): string {
  try {
    work();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  return "";
}

describe.skipIf(!hasShared)("outside files", () => {
  test.each(files)("%s", { timeout: 60_000 }, (path, { read, clean, last }) => {
    const bytes = sharedBytes(...path.split("/"));
    if (read !== undefined) {
      expect(refusalOf(() => readScan(path, bytes))).toContain(read);
      return;
    }
    const raw = readScan(path, bytes).mesh;
    if (typeof clean === "string") {
      expect(refusalOf(() => cleanScan(raw, unwatched))).toContain(clean);
      return;
    }
    const { mesh, repairs } = cleanScan(raw, unwatched);
    expect(repairs.map((r) => r.code)).toEqual(clean!.codes);
    expect(neighbours(mesh)).toMatchObject({ openEdges: 0, crowdedEdges: 0, turnedEdges: 0 });
    expect(parts(mesh).map((p) => p.genus)).toEqual([clean!.genus ?? 0]);
    expect(volume(mesh)).toBeGreaterThan(0);
    const refused = refusalOf(() => lastFromScan(mesh, { name: path }, unwatched));
    if (typeof last === "string") {
      expect(refused).not.toBe("");
      expect(refused).toContain(last);
    }
  });

  test("the feet whose toes lie on each other are made anew and stay within their own bounds", { timeout: 120_000 }, () => {
    // README of the data: 251.0 by 93.5 mm in plan, z up. Along the axes of the file, where it lies askew, its own points span 251.57 mm.
    const raw = readScan("antonia.obj", sharedBytes("feet", "crop_antonia_foot.obj")).mesh;
    const { mesh, repairs } = cleanScan(raw, unwatched);
    expect(repairs.map((r) => r.code)).toEqual(["made-anew"]);
    const spread = ({ positions: p }: Mesh, k: number): number => {
      let [low, high] = [Infinity, -Infinity];
      for (let i = k; i < p.length; i += 3) [low, high] = [Math.min(low, p[i]!), Math.max(high, p[i]!)];
      return high - low;
    };
    for (const k of [0, 1, 2]) expect(Math.abs(spread(mesh, k) - spread(raw, k)), `axis ${k}`).toBeLessThan(0.3);
    expect(Math.abs(spread(raw, 1) - 251)).toBeLessThan(1);
  });
});
