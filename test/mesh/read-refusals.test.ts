import fc from "fast-check";
import { zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { readScan } from "#mesh/read.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { bytesOf, glb, glbOf, objText, stlBinary, stlText } from "./support/files.ts";
import { box, ellipsoid } from "./support/shapes.ts";

/** The sentence that reading ends with. */
function refusal(name: string, bytes: Uint8Array): string {
  try {
    readScan(name, bytes);
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  return "";
}

const body = box(3, 5, 7);
const stl = stlBinary(body);
const plyHead = "ply\nformat binary_little_endian 1.0\nelement vertex 8\nproperty float x\nproperty float y\nproperty float z\nelement face 12\nproperty list uchar int vertex_indices\nend_header\n";

function hugeCount(): Uint8Array {
  const bytes = stl.slice();
  new DataView(bytes.buffer).setUint32(80, 2_000_000_000, true);
  return bytes;
}

function allNaN(): Uint8Array {
  const bytes = stl.slice();
  const view = new DataView(bytes.buffer);
  for (let t = 0; t < 12; t++) view.setFloat32(84 + 50 * t + 12, Infinity, true);
  return bytes;
}

const compressed = glbOf(body, 2, (json) => (json["extensionsRequired"] = ["KHR_draco_mesh_compression"]));
const off = (text: string): Uint8Array => bytesOf(text);
const model = (inside: string): Uint8Array => zipSync({ "3D/3dmodel.model": bytesOf(`<model><resources>${inside}</resources><build><item objectid="1"/></build></model>`) });
const cases: [string, string, Uint8Array, string][] = [
  ["empty file", "last.stl", new Uint8Array(0), "last.stl is empty. Export the scan again."],
  ["a count of two thousand million", "last.stl", hugeCount(), "last.stl is cut short: it says it holds 2 000 000 000 triangles, but there is room for only 12. Copy or export it again."],
  ["binary STL cut short", "last.stl", stl.slice(0, 400), "last.stl is cut short: it says it holds 12 triangles, but there is room for only 6. Copy or export it again."],
  ["header alone", "last.stl", stl.slice(0, 60), "last.stl is cut short: it ends inside its header. Copy or export it again."],
  ["text STL cut short", "last.stl", bytesOf(stlText(body).slice(0, 700)), 'last.stl is cut short: it ends after 7 triangles, before its closing word "endsolid". Copy or export it again.'],
  ["text that says STL", "last.stl", bytesOf("solid as a rock, said the shoemaker.\n"), "last.stl holds no surface: no points and no triangles. Export the scan again."],
  ["a letter", "last.txt", bytesOf("Dear Sir or Madam,\nplease find my last.\n"), "last.txt does not hold a 3-D surface that can be read here. Export the scan as STL, OBJ, PLY, GLB, 3MF or OFF."],
  ["a letter named OBJ", "last.obj", bytesOf("Dear Sir or Madam,\nplease find my last.\n"), "last.obj does not hold a 3-D surface that can be read here. Export the scan as STL, OBJ, PLY, GLB, 3MF or OFF."],
  ["a picture", "last.png", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0]), "last.png is a picture, which is not read here. Export the scan as STL, OBJ, PLY, GLB, 3MF or OFF."],
  ["one triangle", "last.obj", bytesOf("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n"), "last.obj holds only 1 triangle, which cannot enclose a body. A last needs some thousands: export the whole scan."],
  ["points alone", "last.obj", bytesOf("v 0 0 0\nv 1 0 0\nv 0 1 0\n"), "last.obj holds 3 points but no surface between them. Let the scanner's program make a mesh of triangles and export that."],
  ["infinite corners", "last.stl", allNaN(), "In last.stl 12 of 12 triangles have corners that are no numbers. The scan is damaged: export it again."],
  ["a corner that is not there", "last.obj", bytesOf("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 9\n"), "last.obj is damaged at line 4: a triangle asks for point 9, but there are only 3. Export it again."],
  ["a corner before the first", "last.obj", bytesOf("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 -4\n"), "last.obj is damaged at line 4: a triangle asks for point -4, but there are only 3. Export it again."],
  ["a face of two corners", "last.obj", bytesOf("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2\n"), "last.obj is damaged at line 4: a face has 2 corners instead of three or more. Export it again."],
  ["PLY that promises too much", "last.ply", bytesOf(plyHead.replace("vertex 8", "vertex 800000000")), "last.ply is cut short: it says it holds 800 000 000 points, but there is room for only 0. Copy or export it again."],
  ["PLY with no end of its header", "last.ply", bytesOf(plyHead.slice(0, plyHead.indexOf("element face"))), "last.ply is damaged at its header: the closing word end_header is missing. Export it again."],
  ["PLY without heights", "last.ply", bytesOf("ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\nend_header\n0 0\n"), "last.ply is damaged at its header: the points have no z. Export it again."],
  ["OFF cut short", "last.off", off("OFF\n4 2 0\n0 0 0\n1 0 0\n0 1 0\n0 0 1\n3 0 1 2\n"), "last.off is cut short: it says it holds 2 faces, but there is room for only 1. Copy or export it again."],
  ["OFF with a count beyond the file", "last.off", off("OFF\n4000000 2 0\n0 0 0\n"), "last.off is cut short: it says it holds 4 000 000 points, but there is room for only 3. Copy or export it again."],
  ["OFF with a corner too many", "last.off", off("OFF\n3 1 0\n0 0 0\n1 0 0\n0 1 0\n3 0 1 7\n"), "last.off is damaged at line 6: a triangle asks for point 7, but there are only 3. Export it again."],
  ["OFF without counts", "last.off", off("OFF\nnothing\n"), "last.off is damaged at line 2: the counts of points and faces are missing. Export it again."],
  ["3MF that is no zip", "last.3mf", bytesOf("PK and then nothing"), "last.3mf is damaged at its packing: it cannot be unpacked. Export it again."],
  ["3MF without a surface", "last.3mf", zipSync({ "a.txt": bytesOf("a") }), "last.3mf is a packed folder (zip) without a 3-D surface, which is not read here. Export the scan as STL, OBJ, PLY, GLB, 3MF or OFF."],
  ["3MF that names what is not there", "last.3mf", model(""), "last.3mf is damaged at its description: object 1 is missing. Export it again."],
  ["3MF in a ring", "last.3mf", model('<object id="1"><components><component objectid="1"/></components></object>'), "last.3mf is damaged at its description: its objects hang on each other in a ring. Export it again."],
  ["3MF with a corner too many", "last.3mf", model('<object id="1"><mesh><vertices><vertex x="0" y="0" z="0"/></vertices><triangles><triangle v1="0" v2="0" v3="9"/></triangles></mesh></object>'), "last.3mf is damaged at triangle 1: a triangle asks for point 9, but there are only 1. Export it again."],
  ["packed GLB", "last.glb", compressed, "last.glb holds its surface compressed, which is not read here. Export it as a plain GLB without compression, or as STL."],
  ["sparse GLB", "last.glb", glbOf(body, 2, (json) => (json.accessors[0]!["sparse"] = {})), "last.glb holds its surface as corrections to another one, which is not read here. Export it as a plain GLB without compression, or as STL."],
  ["GLB with outside points", "last.glb", glbOf(body, 2, (json) => (json.buffers[0]!["uri"] = "points.bin")), "last.glb keeps its points in another file (points.bin). Export everything into one GLB, or as STL."],
  ["GLB that reaches beyond itself", "last.glb", glbOf(body, 2, (json) => (json.accessors[0]!["count"] = 4_000_000)), "last.glb is cut short: it says it holds 48 000 000 bytes of points and corners, but there is room for only 168. Copy or export it again."],
  ["GLB whose nodes hang in a ring", "last.glb", glbOf(body, 2, (json) => (json.nodes[0]!["children"] = [0])), "last.glb is damaged at the description of its scene: its parts hang on each other in a ring. Export it again."],
  ["GLB cut short", "last.glb", glbOf(body, 2).slice(0, 300), `last.glb is cut short: it says it holds ${glbOf(body, 2).length} bytes, but there is room for only 300. Copy or export it again.`],
  ["GLB with broken words", "last.glb", (() => { const b = glb({}, new Uint8Array(0)); b[20] = 1; return b; })(), "last.glb is damaged at the description of its scene: it cannot be understood. Export it again."],
];

test.each(cases)("%s is refused with a sentence", (_, name, bytes, sentence) => {
  expect(refusal(name, bytes)).toBe(sentence);
});

test("too many triangles are refused before they are made", () => {
  const head = bytesOf(plyHead.replace("vertex 8", "vertex 0").replace("face 12", "face 6000000"));
  const bytes = new Uint8Array(head.length + 6_000_000);
  bytes.set(head);
  expect(refusal("last.ply", bytes)).toBe("last.ply holds 6 000 000 triangles; at most 5 000 000 are read. Export it at a lower resolution: an edge of 1 mm is plenty for a last.");
});

describe.skipIf(!hasShared)("outside files", () => {
  test.each([
    ["empty.obj", "holds no surface"], ["empty.ply", "holds no surface"], ["empty.stl", "holds no surface"], ["ply_empty_bin.ply", "holds no surface"], ["stl_empty_ascii.stl", "holds no surface"],
    ["stl_empty_bin.stl", "holds no surface"], ["face_in_group_name.obj", "holds 1 point but no surface"],
  ])("%s %s", (name, words) => {
    expect(refusal(name, sharedBytes("import", name))).toContain(words);
  });
});

test("no cut and no flipped byte ends in anything but a mesh or a refusal", () => {
  const ball = ellipsoid(1, 1, 1, 1);
  const files: [string, Uint8Array][] = [["a.stl", stlBinary(ball)], ["a.stl", bytesOf(stlText(ball))], ["a.obj", bytesOf(objText(ball))], ["a.glb", glbOf(ball, 2)], ["a.ply", bytesOf(plyHead + "x".repeat(200))]];
  fc.assert(
    fc.property(fc.constantFrom(...files), fc.double({ min: 0, max: 1, noNaN: true }), fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 4 }), ([name, bytes], part, flips) => {
      const broken = bytes.slice(0, Math.floor(bytes.length * part));
      if (broken.length > 0) for (const [at, value] of flips) broken[at % broken.length] = value;
      refusal(name, broken); // throws on anything that is no refusal
    }),
    { seed: 11, numRuns: 400 },
  );
});
