import type { Mesh } from "#mesh/mesh.ts";

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export function stlBinary({ positions: p, triangles }: Mesh, header = "made in a test"): Uint8Array {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * count);
  bytes.set(bytesOf(header).subarray(0, 80));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (let i = 0; i < triangles.length; i++) for (let k = 0; k < 3; k++) view.setFloat32(84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3) + 4 * k, p[3 * triangles[i]! + k]!, true);
  return bytes;
}

export function stlText({ positions: p, triangles }: Mesh): string {
  let text = "solid body\n";
  for (let i = 0; i < triangles.length; i += 3) {
    text += "facet normal 0 0 0\n outer loop\n";
    for (let k = 0; k < 3; k++) text += `  vertex ${Array.from(p.subarray(3 * triangles[i + k]!, 3 * triangles[i + k]! + 3)).join(" ")}\n`;
    text += " endloop\nendfacet\n";
  }
  return text + "endsolid body\n";
}

export function objText({ positions: p, triangles }: Mesh): string {
  const lines: string[] = [];
  for (let i = 0; i < p.length; i += 3) lines.push(`v ${p[i]} ${p[i + 1]} ${p[i + 2]}`);
  for (let i = 0; i < triangles.length; i += 3) lines.push(`f ${triangles[i]! + 1} ${triangles[i + 1]! + 1} ${triangles[i + 2]! + 1}`);
  return lines.join("\n") + "\n";
}

/** GLB of a description and a binary part, each padded to four bytes. */
export function glb(json: object, bin: Uint8Array): Uint8Array {
  const text = bytesOf(JSON.stringify(json));
  const pad = (n: number): number => (n + 3) & ~3;
  const bytes = new Uint8Array(12 + 8 + pad(text.length) + 8 + pad(bin.length));
  const view = new DataView(bytes.buffer);
  view.setUint32(0, 0x46546c67, true);
  view.setUint32(4, 2, true);
  view.setUint32(8, bytes.length, true);
  view.setUint32(12, pad(text.length), true);
  view.setUint32(16, 0x4e4f534a, true);
  bytes.fill(32, 20, 20 + pad(text.length));
  bytes.set(text, 20);
  const at = 20 + pad(text.length);
  view.setUint32(at, pad(bin.length), true);
  view.setUint32(at + 4, 0x004e4942, true);
  bytes.set(bin, at + 8);
  return bytes;
}

/** Positions as float32 and indices of the given width, as one GLB; `change` may alter the description. */
export function glbOf({ positions, triangles }: Mesh, width: 1 | 2 | 4 = 4, change: (json: GlbJson) => void = () => {}): Uint8Array {
  const points = new Uint8Array(Float32Array.from(positions).buffer);
  const corners = new Uint8Array((width === 1 ? Uint8Array.from(triangles) : width === 2 ? Uint16Array.from(triangles) : triangles.slice()).buffer);
  const bin = new Uint8Array(points.length + corners.length);
  bin.set(points);
  bin.set(corners, points.length);
  const json: GlbJson = {
    asset: { version: "2.0" },
    scene: 0,
    scenes: [{ nodes: [0] }],
    nodes: [{ mesh: 0 }],
    meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
    buffers: [{ byteLength: bin.length }],
    bufferViews: [{ buffer: 0, byteOffset: 0, byteLength: points.length }, { buffer: 0, byteOffset: points.length, byteLength: corners.length }],
    accessors: [{ bufferView: 0, componentType: 5126, count: positions.length / 3, type: "VEC3" }, { bufferView: 1, componentType: width === 1 ? 5121 : width === 2 ? 5123 : 5125, count: triangles.length, type: "SCALAR" }],
  };
  change(json);
  return glb(json, bin);
}

export interface GlbJson {
  [key: string]: unknown;
  nodes: Record<string, unknown>[];
  meshes: { primitives: Record<string, unknown>[] }[];
  buffers: Record<string, unknown>[];
  bufferViews: Record<string, unknown>[];
  accessors: Record<string, unknown>[];
}
