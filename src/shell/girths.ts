import { heelBreastX } from "#last/heel-breast.ts";
import { medialSign, type Last, type Point3 } from "#last/last.ts";
import type { Half } from "#lines/feather.ts";
import { edgeLength } from "./edge-length.ts";
import type { Shell } from "./shell.ts";

/** A length on the last itself and over what lies beneath the upper, mm. */
export interface BeneathRow {
  readonly key: "joint" | "heel" | "topline" | "feather" | "back" | "centre" | "lowest";
  /** None where the length lies on the axis. */
  readonly half?: Half;
  readonly onLastMm: number;
  readonly overMm: number;
  /** What a tape over the lasted upper reads more than on the bare last, where shoes are taped. */
  readonly tapeMoreMm?: number;
}

/**
 * What lies beneath adds to each length: joint (half the girth, as far as the upper covers it), heel (level round the back at half its
 * height, to the heel breast), topline, feather, back and centre line. Both shells have the same vertices.
 */
export function beneathRows(last: Last, onLast: Shell, over: Shell): readonly BeneathRow[] {
  const { edges, mesh } = onLast;
  const both = (of: (p: Float64Array) => number) => ({ onLastMm: of(mesh.positions), overMm: of(over.mesh.positions) });
  const edge = (ids: Uint32Array) => both((p) => edgeLength(p, ids));
  const ofSide = (way: readonly Crossing[], half: Half) => {
    const sign = half === "medial" ? medialSign(last.side) : -medialSign(last.side);
    const parts = way.filter(({ at }) => sign * at[1] > 0);
    return both((p) => parts.reduce((sum, part) => sum + partLength(p, part), 0));
  };
  const joint = crossings(onLast, planeThrough(last.landmarks.jointMedial, last.landmarks.jointLateral, last.landmarks.vampPoint));
  const { plane, breastX } = heelPlane(last, onLast);
  const heel = crossings(onLast, plane).filter(({ at }) => at[0] < breastX);
  const ofHalf = (half: Half): readonly BeneathRow[] => [
    { key: "joint", half, ...ofSide(joint, half) },
    { key: "heel", half, ...ofSide(heel, half) },
    { key: "topline", half, ...edge(half === "medial" ? edges.toplineMedial : edges.toplineLateral) },
    { key: "feather", half, ...edge(half === "medial" ? edges.featherMedial : edges.featherLateral) },
  ];
  return [...ofHalf("medial"), ...ofHalf("lateral"), { key: "back", ...edge(edges.backMedial) }, { key: "centre", ...edge(edges.centre) }];
}

interface Plane {
  readonly through: Point3;
  readonly normal: Point3;
}

export function planeThrough(a: Point3, b: Point3, c: Point3): Plane {
  const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const, v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
  return { through: a, normal: [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] };
}

/** The plane runs through the middle of the back, level with the feather line there. */
function heelPlane({ landmarks }: Last, { mesh: { positions: p }, edges }: Shell): { readonly plane: Plane; readonly breastX: number } {
  const breastX = heelBreastX({ landmarks });
  const zAt = (ids: Uint32Array): number => p[3 * (ids.find((v) => p[3 * v]! > breastX) ?? ids[0]!) + 2]!;
  const rise = ((zAt(edges.featherMedial) + zAt(edges.featherLateral)) / 2 - landmarks.seatPoint[2]) / (breastX - landmarks.seatPoint[0]);
  const middle = edges.backMedial[edges.backMedial.length >> 1]!;
  return { breastX, plane: { through: [p[3 * middle]!, p[3 * middle + 1]!, p[3 * middle + 2]!], normal: [-rise, 0, 1] } };
}

/** Where a plane crosses one triangle: two points, each a share of the way from one vertex to another, and their middle. */
export interface Crossing {
  readonly ends: readonly [CrossedEdge, CrossedEdge];
  readonly at: Point3;
}
interface CrossedEdge {
  readonly a: number;
  readonly b: number;
  readonly share: number;
}

/** The plane's way over the mesh in parts, in no order; a vertex on the plane counts as above it. */
export function crossings({ mesh: { positions: p, triangles: t } }: Pick<Shell, "mesh">, { through, normal: [nx, ny, nz] }: Plane): readonly Crossing[] {
  const above = new Float64Array(p.length / 3);
  for (let v = 0; v < above.length; v++) above[v] = nx * (p[3 * v]! - through[0]) + ny * (p[3 * v + 1]! - through[1]) + nz * (p[3 * v + 2]! - through[2]);
  const found: Crossing[] = [];
  for (let f = 0; f < t.length; f += 3) {
    const first = above[t[f]!]! >= 0;
    if (first === above[t[f + 1]!]! >= 0 && first === above[t[f + 2]!]! >= 0) continue;
    const ends: CrossedEdge[] = [];
    for (let k = 0; k < 3; k++) {
      const a = t[f + k]!, b = t[f + ((k + 1) % 3)]!;
      const ha = above[a]!, hb = above[b]!;
      if (ha >= 0 !== hb >= 0) ends.push({ a, b, share: ha / (ha - hb) });
    }
    const [one, two] = [placeOf(p, ends[0]!), placeOf(p, ends[1]!)];
    found.push({ ends: [ends[0]!, ends[1]!], at: [(one[0] + two[0]) / 2, (one[1] + two[1]) / 2, (one[2] + two[2]) / 2] });
  }
  return found;
}

const placeOf = (p: Float64Array, { a, b, share }: CrossedEdge): Point3 => {
  const on = (d: number): number => p[3 * a + d]! + share * (p[3 * b + d]! - p[3 * a + d]!);
  return [on(0), on(1), on(2)];
};

/** Length of a part of the way with the vertices at these places, mm. */
export function partLength(p: Float64Array, { ends }: Crossing): number {
  const [a, b] = [placeOf(p, ends[0]), placeOf(p, ends[1])];
  return Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2);
}
