import { zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { volume } from "#mesh/area.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { bytesOf } from "./support/files.ts";
import { box } from "./support/shapes.ts";

const body = box(3, 5, 7);

function off({ positions: p, triangles }: Mesh, head: string, face: (corners: string) => string = (c) => c): Uint8Array {
  const lines = [head, `${p.length / 3} ${triangles.length / 3} 0`];
  for (let i = 0; i < p.length; i += 3) lines.push(`${p[i]} ${p[i + 1]} ${p[i + 2]}`);
  for (let i = 0; i < triangles.length; i += 3) lines.push(face(`3 ${triangles[i]} ${triangles[i + 1]} ${triangles[i + 2]}`));
  return bytesOf(lines.join("\n"));
}

function model({ positions: p, triangles }: Mesh, build: string, more = ""): Uint8Array {
  const points = Array.from({ length: p.length / 3 }, (_, v) => `<vertex x="${p[3 * v]}" y='${p[3 * v + 1]}' z="${p[3 * v + 2]}"/>`);
  const faces = Array.from({ length: triangles.length / 3 }, (_, t) => `<triangle v1="${triangles[3 * t]}" v2="${triangles[3 * t + 1]}" v3="${triangles[3 * t + 2]}" p1="1"/>`);
  const text = `<?xml version="1.0"?><model unit="millimeter"><resources><object id="1" type="model"><mesh><vertices>${points.join("\n")}</vertices><triangles>${faces.join("")}</triangles></mesh></object>${more}</resources><build>${build}</build></model>`;
  return zipSync({ "[Content_Types].xml": bytesOf("<Types/>"), "3D/3dmodel.model": bytesOf(text) });
}

describe("OFF", () => {
  test.each<[string, Uint8Array]>([
    ["plain", off(body, "OFF")],
    ["with comments and empty lines", off(body, "OFF # a box\n\n# of three by five by seven")],
    ["with colours on faces", off(body, "COFF", (c) => `${c} 0.1 0.2 0.3 1`)],
  ])("%s", (_, bytes) => {
    const { mesh, format } = readScan("last.off", bytes);
    expect(format).toBe("OFF");
    expect(mesh).toEqual(body);
  });
});

describe("3MF", () => {
  test("the object that the build names", () => {
    const { mesh, format } = readScan("last.3mf", model(body, '<item objectid="1"/>'));
    expect(format).toBe("3MF");
    expect(mesh).toEqual(body);
  });

  test("put where the build and its parts put it: turned by a quarter about z, then shifted", () => {
    const parts = '<object id="2"><components><component objectid="1" transform="0 1 0 -1 0 0 0 0 1 0 0 0"/></components></object>';
    const { mesh } = readScan("last.3mf", model(body, '<item objectid="2" transform="1 0 0 0 1 0 0 0 1 10 20 30"/>', parts));
    // (3, 5, 7) → (−5, 3, 7) → (5, 23, 37)
    const corner = body.positions.findIndex((x, i) => i % 3 === 0 && x === 3 && body.positions[i + 1] === 5 && body.positions[i + 2] === 7);
    expect(Array.from(mesh.positions.subarray(corner, corner + 3))).toEqual([5, 23, 37]);
    expect(volume(mesh)).toBeCloseTo(105, 9);
  });
});

describe.skipIf(!hasShared)("outside files", () => {
  test("the cube of comments.off has an edge of 2.309", () => {
    expect(volume(cleanScan(readScan("comments.off", sharedBytes("import", "comments.off")).mesh, unwatched).mesh)).toBeCloseTo((2 * 1.632993 ** 2) * 2.309402, 4);
  });

  test("featuretype.3MF is the body of featuretype.STL", () => {
    const [a, b] = ["featuretype.3MF", "featuretype.STL"].map((name) => cleanScan(readScan(name, sharedBytes("import", name)).mesh, unwatched).mesh);
    expect(volume(a!) / volume(b!)).toBeCloseTo(1, 2); // the two were cut into triangles of different fineness
  });
});
