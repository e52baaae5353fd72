import type { Mesh } from "#mesh/mesh.ts";

/** Binary STL: 80 bytes of heading, the count, then for each triangle a normal, three corners and two spare bytes. */
export function asStl({ positions, triangles }: Mesh): Buffer {
  const out = Buffer.alloc(84 + (triangles.length / 3) * 50);
  out.writeUInt32LE(triangles.length / 3, 80);
  for (let t = 0; t < triangles.length / 3; t++) {
    for (let k = 0; k < 9; k++) out.writeFloatLE(positions[3 * triangles[3 * t + Math.floor(k / 3)]! + (k % 3)]!, 84 + 50 * t + 12 + 4 * k);
  }
  return out;
}

/** OBJ: a line for each point, then one for each triangle, counted from 1. */
export function asObj({ positions, triangles }: Mesh): Buffer {
  const lines: string[] = [];
  for (let i = 0; i < positions.length; i += 3) lines.push(`v ${positions[i]!.toFixed(6)} ${positions[i + 1]!.toFixed(6)} ${positions[i + 2]!.toFixed(6)}`);
  for (let i = 0; i < triangles.length; i += 3) lines.push(`f ${triangles[i]! + 1} ${triangles[i + 1]! + 1} ${triangles[i + 2]! + 1}`);
  return Buffer.from(`${lines.join("\n")}\n`);
}

/** Binary little-endian PLY with single-precision points. */
export function asPly({ positions, triangles }: Mesh): Buffer {
  const head = `ply\nformat binary_little_endian 1.0\nelement vertex ${positions.length / 3}\nproperty float x\nproperty float y\nproperty float z\nelement face ${triangles.length / 3}\nproperty list uchar int vertex_indices\nend_header\n`;
  const body = Buffer.alloc(positions.length * 4 + (triangles.length / 3) * 13);
  positions.forEach((v, i) => body.writeFloatLE(v, 4 * i));
  for (let t = 0, at = positions.length * 4; t < triangles.length; t += 3, at += 13) {
    body.writeUInt8(3, at);
    for (let k = 0; k < 3; k++) body.writeInt32LE(triangles[t + k]!, at + 1 + 4 * k);
  }
  return Buffer.concat([Buffer.from(head), body]);
}

/** The mesh with every point changed; `mirrored` turns the triangles so that they go on facing outward. */
export function changed({ positions, triangles }: Mesh, point: (x: number, y: number, z: number) => readonly [number, number, number], mirrored = false): Mesh {
  const out = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) out.set(point(positions[i]!, positions[i + 1]!, positions[i + 2]!), i);
  return { positions: out, triangles: mirrored ? triangles.map((_, i) => triangles[i - (i % 3) + [0, 2, 1][i % 3]!]!) : triangles };
}
