// Simple bodies and damaged files, as bytes of STL. Invented geometric fixtures.

export interface Triangles {
  readonly positions: ArrayLike<number>;
  readonly triangles: ArrayLike<number>;
}

/** Binary STL, coordinates times `scale`; `count` overrides what the header promises. */
export function binaryStl({ positions, triangles }: Triangles, { scale = 1, count = triangles.length / 3, header = "" } = {}): Uint8Array {
  const bytes = new Uint8Array(84 + (triangles.length / 3) * 50);
  bytes.set(new TextEncoder().encode(header).subarray(0, 80));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (let t = 0; t < triangles.length / 3; t++) {
    for (let corner = 0; corner < 3; corner++) {
      const v = triangles[3 * t + corner]!;
      for (let k = 0; k < 3; k++) view.setFloat32(84 + 50 * t + 12 + 12 * corner + 4 * k, positions[3 * v + k]! * scale, true);
    }
  }
  return bytes;
}

/** A grid of quads bent by `place` and closed both ways; outward when u × v points outward. */
function grid(nu: number, nv: number, place: (u: number, v: number) => readonly [number, number, number]): Triangles {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i < nu; i++) for (let j = 0; j < nv; j++) positions.push(...place(i / nu, j / nv));
  const id = (i: number, j: number) => (i % nu) * nv + (j % nv);
  for (let i = 0; i < nu; i++) for (let j = 0; j < nv; j++) triangles.push(id(i, j), id(i + 1, j), id(i + 1, j + 1), id(i, j), id(i + 1, j + 1), id(i, j + 1));
  return { positions, triangles };
}

export const torus = (ring: number, tube: number): Triangles =>
  grid(96, 48, (u, v) => {
    const [a, b] = [2 * Math.PI * u, 2 * Math.PI * v];
    const r = ring + tube * Math.cos(b);
    return [r * Math.cos(a), r * Math.sin(a), tube * Math.sin(b)];
  });

/** A box with each face cut into n × n squares; corner points are repeated from face to face, as in an STL. */
export function box(x: number, y: number, z: number, n: number): Triangles {
  const positions: number[] = [];
  const triangles: number[] = [];
  const size = [x, y, z];
  for (let axis = 0; axis < 3; axis++) {
    for (const end of [0, 1]) {
      const first = positions.length / 3;
      const [a, b] = [(axis + 1) % 3, (axis + 2) % 3];
      for (let i = 0; i <= n; i++) {
        for (let j = 0; j <= n; j++) {
          const p = [0, 0, 0];
          p[axis] = end * size[axis]!;
          p[a] = (i / n) * size[a]!;
          p[b] = (j / n) * size[b]!;
          positions.push(...p);
        }
      }
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) {
          const [p, q, r, s] = [first + i * (n + 1) + j, first + (i + 1) * (n + 1) + j, first + (i + 1) * (n + 1) + j + 1, first + i * (n + 1) + j + 1];
          triangles.push(...(end === 1 ? [p, q, r, p, r, s] : [p, r, q, p, s, r]));
        }
      }
    }
  }
  return { positions, triangles };
}

/** One sheet of paper, open. */
export const sheet = (x: number, y: number, n: number): Triangles => {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i <= n; i++) for (let j = 0; j <= n; j++) positions.push((i / n) * x, (j / n) * y, 0);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) triangles.push(i * (n + 1) + j, (i + 1) * (n + 1) + j, (i + 1) * (n + 1) + j + 1, i * (n + 1) + j, (i + 1) * (n + 1) + j + 1, i * (n + 1) + j + 1);
  return { positions, triangles };
};

/** The same body twice, side by side. */
export function twice({ positions, triangles }: Triangles, apart: number): Triangles {
  const n = positions.length / 3;
  const moved = Array.from(positions, (value, i) => (i % 3 === 1 ? value + apart : value));
  return { positions: [...Array.from(positions), ...moved], triangles: [...Array.from(triangles), ...Array.from(triangles, (v) => v + n)] };
}

/** The STL with the first corner of every so many triangles put at a value that is no place. */
export function spoilt(bytes: Uint8Array, value: number, every = 1): Uint8Array {
  const out = bytes.slice();
  const view = new DataView(out.buffer);
  for (let at = 84 + 12; at + 38 <= out.length; at += 50 * every) view.setFloat32(at, value, true);
  return out;
}
