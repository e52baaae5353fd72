import { describe, expect, test } from "vitest";
import { area, bounds, volume } from "#mesh/area.ts";
import { readScan } from "#mesh/read.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { bytesOf, glbOf, objText, stlBinary, stlText } from "./support/files.ts";
import { box, ellipsoid, loose } from "./support/shapes.ts";

const body = box(3, 5, 7);
const plyHeader = (form: string, vertices: number, faces: number, more = ""): string =>
  `ply\nformat ${form} 1.0\ncomment from a test\nelement vertex ${vertices}\nproperty float x\nproperty float y\nproperty float z\n${more}element face ${faces}\nproperty list uchar int vertex_indices\nend_header\n`;

function plyText(): string {
  let text = plyHeader("ascii", 8, 12, "property uchar red\n");
  for (let v = 0; v < 8; v++) text += `${Array.from(body.positions.subarray(3 * v, 3 * v + 3)).join(" ")} 200\n`;
  for (let t = 0; t < 36; t += 3) text += `3 ${Array.from(body.triangles.subarray(t, t + 3)).join(" ")}\n`;
  return text;
}

function plyBinary(little: boolean): Uint8Array {
  const head = bytesOf(plyHeader(little ? "binary_little_endian" : "binary_big_endian", 8, 12).replace("list uchar int", "list ushort uint8"));
  const bytes = new Uint8Array(head.length + 8 * 12 + 12 * 5);
  bytes.set(head);
  const view = new DataView(bytes.buffer);
  let at = head.length;
  for (const x of body.positions) view.setFloat32((at += 4) - 4, x, little);
  for (let t = 0; t < 36; t += 3) {
    view.setUint16(at, 3, little);
    bytes.set(body.triangles.subarray(t, t + 3), at + 2);
    at += 5;
  }
  return bytes;
}

describe("every form of one box gives one box (its area and volume from Euclid)", () => {
  const files: [string, string, Uint8Array][] = [
    ["a.stl", "STL, binary", stlBinary(body)],
    ["solid but binary.stl", "STL, binary", stlBinary(body, "solid made by a program that says so")],
    ["a.stl", "STL, text", bytesOf(stlText(body))],
    ["A.STL", "STL, text", bytesOf(stlText(body).toUpperCase().replaceAll("\n", "\r\n"))],
    ["a.obj", "OBJ", bytesOf(objText(body))],
    ["named.stl", "OBJ", bytesOf(`# told by content\n${objText(body)}`)],
    ["a.ply", "PLY, text", bytesOf(plyText())],
    ["a.ply", "PLY, binary", plyBinary(true)],
    ["a.ply", "PLY, binary", plyBinary(false)],
    ["a.glb", "GLB", glbOf(body, 4)],
    ["a.glb", "GLB", glbOf(body, 2)],
    ["a.glb", "GLB", glbOf(body, 1)],
    ["a.glb", "GLB", glbOf(loose(body), 4, (json) => delete json.meshes[0]!.primitives[0]!["indices"])],
  ];
  test.each(files)("%s as %s", (name, format, bytes) => {
    const scan = readScan(name, bytes);
    expect(scan.format).toBe(format);
    expect(scan.findings).toEqual([]);
    expect(area(scan.mesh)).toBeCloseTo(2 * (15 + 21 + 35), 12);
    expect(volume(scan.mesh)).toBeCloseTo(105, 12);
  });

  test("a view into a longer buffer is read from its own start", () => {
    const inner = stlBinary(body);
    const outer = new Uint8Array(inner.length + 10);
    outer.set(inner, 6);
    expect(volume(readScan("a.stl", outer.subarray(6, 6 + inner.length)).mesh)).toBeCloseTo(105, 12);
  });
});

describe("OBJ", () => {
  const corners = "v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\nv 0.5 0.5 1e0\n";
  test.each([
    ["polygons fanned", "f 4 3 2 1\nf 1 2 5\nf 2 3 5\nf 3 4 5\nf 4 1 5\n"],
    ["counted from the end", "f -2 -3 -4 -5\nf -5 -4 -1\nf -4 -3 -1\nf -3 -2 -1\nf -2 -5 -1\n"],
    ["with texture and normal numbers", "vt 0 0\nvn 0 0 1\nf 4/1 3/1 2/1 1/1\nf 1/1/1 2/1/1 5/1/1\nf 2//1 3//1 5//1\nf 3 4 5\nf 4/ 1/ 5/\n"],
    ["groups, carriage returns and a continued line", "g a b\r\nusemtl x\r\ns off\r\nf 4 3 \\\r\n 2 1\r\no part\r\nf 1 2 5 # side\r\nf 2 3 5\r\nf 3 4 5\r\nf 4 1 5"],
  ])("%s", (_, faces) => {
    expect(volume(readScan("a.obj", bytesOf(corners + faces)).mesh)).toBeCloseTo(1 / 3, 12); // pyramid: base · height / 3
  });

  test("colours after the place are no places", () => {
    const text = corners.replaceAll("\n", " 0.2 0.3 0.4\n") + "f 4 3 2 1\nf 1 2 5\nf 2 3 5\nf 3 4 5\nf 4 1 5\n";
    expect(volume(readScan("a.obj", bytesOf(text)).mesh)).toBeCloseTo(1 / 3, 12);
  });
});

describe("numbers as text", () => {
  test("come out as the engine's own parser reads them", () => {
    const words = ["0.1", "-1.5e-3", "+2", "1e22", "123456789.123456789", "1.7976931348623157e308", "4.9e-324", "9007199254740993", "-.5", "5.", "1E+2", "0.000000000000000000000012345"];
    const text = `${words.map((w) => `v ${w} 0 0`).join("\n")}\nf 1 2 3\nf 1 2 4\nf 1 3 4\nf 2 3 4\n`;
    const { positions } = readScan("a.obj", bytesOf(text)).mesh;
    words.forEach((w, i) => expect(positions[3 * i], w).toBe(Number(w)));
  });
});

describe("GLB scenes", () => {
  test("nodes put their meshes in place, and a mirror keeps them outward", () => {
    const bytes = glbOf(body, 2, (json) => {
      json.nodes = [{ children: [1, 2], scale: [2, 2, 2] }, { mesh: 0, translation: [10, 0, 0] }, { mesh: 0, matrix: [-1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1] }];
    });
    const { mesh } = readScan("a.glb", bytes);
    expect(volume(mesh)).toBeCloseTo(2 * 8 * 105, 9);
    expect(bounds(mesh)).toEqual({ low: [-6, 0, 0], high: [26, 10, 14] });
  });

  test("a quarter turn about z by quaternion (0, 0, √½, √½) takes x to y", () => {
    const bytes = glbOf(body, 2, (json) => {
      json.nodes = [{ mesh: 0, rotation: [0, 0, Math.SQRT1_2, Math.SQRT1_2] }];
    });
    const { low, high } = bounds(readScan("a.glb", bytes).mesh);
    [-5, 0, 0].forEach((x, k) => expect(low[k]).toBeCloseTo(x, 12));
    [0, 3, 7].forEach((x, k) => expect(high[k]).toBeCloseTo(x, 12));
  });

  test("strips and fans turn as the standard says (glTF 2.0, 3.7.2.1)", () => {
    const strip = { positions: Float64Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0, 0, 2, 0, 1, 2, 0]), triangles: Uint32Array.from([0, 1, 2, 3, 4, 5]) };
    const { mesh } = readScan("a.glb", glbOf(strip, 2, (json) => (json.meshes[0]!.primitives[0]!["mode"] = 5)));
    expect(Array.from(mesh.triangles)).toEqual([0, 1, 2, 1, 3, 2, 2, 3, 4, 3, 5, 4]);
    const fan = readScan("a.glb", glbOf(strip, 2, (json) => (json.meshes[0]!.primitives[0]!["mode"] = 6))).mesh;
    expect(Array.from(fan.triangles)).toEqual([0, 1, 2, 0, 2, 3, 0, 3, 4, 0, 4, 5]);
  });
});

describe.skipIf(!hasShared)("files that nobody here wrote", () => {
  test("the scanned foot is the same as STL and as OBJ", () => {
    const stl = readScan("foot.stl", sharedBytes("feet", "my-feet_left_foot.stl")).mesh;
    const obj = readScan("foot.obj", sharedBytes("feet", "my-feet_left_foot.obj")).mesh;
    expect(stl.triangles.length).toBe(3 * 12_772); // data/README.md
    expect(obj.triangles.length).toBe(3 * 12_772);
    expect(area(stl) / area(obj)).toBeCloseTo(1, 6);
    expect(volume(stl) / volume(obj)).toBeCloseTo(1, 6);
  });

  test("the bottle is the same as binary and as text PLY, though the text has more on its lines than it promises", () => {
    const binary = readScan("fuze.ply", sharedBytes("import", "fuze.ply")).mesh;
    const text = readScan("fuze.ply", sharedBytes("import", "fuze_ascii.ply")).mesh;
    expect(text.triangles).toEqual(binary.triangles);
    expect(area(text) / area(binary)).toBeCloseTo(1, 6);
  });

  test("the feature part is the same as STL and as PLY", () => {
    const [stl, ply] = [readScan("a.stl", sharedBytes("import", "featuretype.STL")).mesh, readScan("a.ply", sharedBytes("import", "featuretype.ply")).mesh];
    expect(volume(stl) / volume(ply)).toBeCloseTo(1, 6);
  });

  test("boxes of the glTF samples measure 1 × 1 × 1, interleaved or not", () => {
    for (const name of ["BoxInterleaved.glb", "BoxTextured.glb"]) expect(volume(readScan(name, sharedBytes("import", name)).mesh)).toBeCloseTo(1, 9);
  });

  test.each([
    ["last_eu36_round_scan.ply", 61_336], ["last_eu37_almond_scan.stl", 15_056], ["last_eu38_round_heel20_scan.obj", 64_133], ["last_eu39_square_scan.ply", 32_168], ["last_eu41_pointed_scan.glb", 15_024],
  ])("%s holds the triangles its truth file tells", (name, triangles) => {
    expect(readScan(name, sharedBytes("lasts", name)).mesh.triangles.length).toBe(3 * triangles);
  });
});

test("a few corners that are no numbers cost their triangles, and that is said", () => {
  const ball = ellipsoid(1, 1, 1, 3); // 1280 triangles
  const positions = ball.positions.slice();
  positions[0] = NaN; // a corner of five triangles
  const scan = readScan("a.obj", bytesOf(objText({ positions, triangles: ball.triangles })));
  expect(scan.findings).toEqual([{ code: "dropped-not-numbers", data: { triangles: 5 } }]);
  expect(scan.mesh.triangles.length).toBe(3 * 1275);
  expect(scan.mesh.positions.every(Number.isFinite)).toBe(true);
});
