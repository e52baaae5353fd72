import { distanceInSpace } from "#flatten/distance.ts";
import { vertexNormals } from "#mesh/normals.ts";
import type { Shell } from "#shell/shell.ts";
import type { DraftPlace } from "./pulls.ts";
import { jawsMm } from "./settings.ts";

/**
 * The net feather edge once round over what lies beneath: from the seat along the inner half to the toe and back along the outer one.
 * The seat's two vertices, one on each bank of the back, are its first and its last.
 */
export interface FeatherRing {
  /** Vertices of the shell. */
  readonly ids: Uint32Array;
  /** Running length of each over what lies beneath, mm; the last is the whole way round. */
  readonly at: Float64Array;
  /** For each, the way of a pull: unit vector in the surface, square to the feather line, down the wall. */
  readonly outward: Float64Array;
  /** Place of the toe point in ids. */
  readonly toe: number;
}

export function featherRing({ mesh, edges: { featherMedial, featherLateral } }: Shell): FeatherRing {
  const ids = Uint32Array.from([...featherMedial, ...Array.from(featherLateral).reverse().slice(1)]);
  const at = new Float64Array(ids.length);
  for (let k = 1; k < at.length; k++) at[k] = at[k - 1]! + distanceInSpace(mesh.positions, ids[k - 1]!, ids[k]!);
  return { ids, at, outward: outwardOf(mesh, ids), toe: featherMedial.length - 1 };
}

function outwardOf(mesh: Shell["mesh"], ids: Uint32Array): Float64Array {
  const { positions: p } = mesh, normals = vertexNormals(mesh), n = ids.length - 1;
  const out = new Float64Array(3 * ids.length);
  // Over the seat the two banks go on into each other.
  const near = (k: number): number => 3 * ids[k < 0 ? n - 1 : k > n ? 1 : k]!;
  for (let k = 0; k <= n; k++) {
    const a = near(k - 1), b = near(k + 1), v = 3 * ids[k]!;
    const other = k === 0 ? 3 * ids[n]! : k === n ? 3 * ids[0]! : v;
    const t = [0, 1, 2].map((d) => p[b + d]! - p[a + d]!), m = [0, 1, 2].map((d) => normals[v + d]! + normals[other + d]!);
    const x = t[1]! * m[2]! - t[2]! * m[1]!, y = t[2]! * m[0]! - t[0]! * m[2]!, z = t[0]! * m[1]! - t[1]! * m[0]!;
    const size = Math.sqrt(x * x + y * y + z * z);
    out.set([x / size, y / size, z / size], 3 * k);
  }
  // Whichever way the ring runs round the shell: all lead away from it, or all into it.
  const inside = awayFrom(mesh, ids, out);
  return inside > 0 ? out : out.map((c) => -c);
}

/** Above 0 where the directions lead away from the triangles at the ring, on the whole. */
function awayFrom({ positions: p, triangles: t }: Shell["mesh"], ids: Uint32Array, out: Float64Array): number {
  const place = new Map(Array.from(ids, (v, k) => [v, k]));
  let sum = 0;
  for (let i = 0; i < t.length; i++) {
    const k = place.get(t[i]!);
    if (k === undefined) continue;
    for (let j = i - (i % 3); j < i - (i % 3) + 3; j++) for (let d = 0; d < 3; d++) sum += out[3 * k + d]! * (p[3 * t[i]! + d]! - p[3 * t[j]! + d]!);
  }
  return sum;
}

/** Running length of a draft's place on the ring, mm. `onLast`: the same shell on the last itself, where drafts are placed. */
export function placeOnRing({ ids, at, toe }: FeatherRing, { mesh: { positions } }: Shell, { half, alongMm, number }: DraftPlace): number {
  // Neither toe centre nor back lies in a half.
  if (half === undefined) return number === 1 ? at[toe]! : 0;
  const step = half === "medial" ? 1 : -1, first = half === "medial" ? 0 : ids.length - 1;
  for (let k = first, far = 0; k !== toe; k += step) {
    const length = distanceInSpace(positions, ids[k]!, ids[k + step]!);
    if (far + length >= alongMm) return at[k]! + ((alongMm - far) / length) * (at[k + step]! - at[k]!);
    far += length;
  }
  return at[toe]!;
}

/** Share of a pull that each vertex of the ring bears when the jaws bite with their middle at `place`; the sum is 1. Over the seat it goes on round. */
export function jawShares({ at }: FeatherRing, place: number): Float64Array {
  const round = at[at.length - 1]!, out = new Float64Array(at.length);
  for (const shift of [-round, 0, round]) {
    const from = place + shift - jawsMm / 2, to = place + shift + jawsMm / 2;
    for (let k = 0; k + 1 < at.length; k++) {
      const low = Math.max(from, at[k]!), high = Math.min(to, at[k + 1]!);
      if (high <= low) continue;
      // The pull is even along the jaws; each piece of the edge hands it to its two ends.
      const middle = ((low + high) / 2 - at[k]!) / (at[k + 1]! - at[k]!), share = (high - low) / jawsMm;
      out[k]! += (1 - middle) * share;
      out[k + 1]! += middle * share;
    }
  }
  return out;
}

/** What N per mm of feather line at each vertex of the ring comes to on each of them, N. */
export function pullOnVertices({ at }: FeatherRing, perMm: Float64Array): Float64Array {
  const out = new Float64Array(at.length);
  for (let k = 0; k + 1 < at.length; k++) {
    const length = at[k + 1]! - at[k]!;
    out[k]! += (length * (2 * perMm[k]! + perMm[k + 1]!)) / 6;
    out[k + 1]! += (length * (perMm[k]! + 2 * perMm[k + 1]!)) / 6;
  }
  return out;
}

/** Values along both halves, seat → toe, put in the ring's order. */
export const roundRing = ({ medial, lateral }: Readonly<Record<"medial" | "lateral", Float64Array>>): Float64Array => Float64Array.from([...medial, ...Array.from(lateral).reverse().slice(1)]);
