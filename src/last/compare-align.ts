import type { Watch } from "#base/watch.ts";
import type { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { faceNormals } from "#mesh/normals.ts";
import type { Point3 } from "./last.ts";
import { sampleSurface, type Samples } from "./samples.ts";
import { solveSmall } from "./small-system.ts";
import { add, cross, dot, norm, scale, sub } from "./vector.ts";

/** A rigid motion: q = rotation · p + translation. `rotation` is row-major 3×3, determinant +1. */
export interface Motion {
  readonly rotation: readonly number[];
  readonly translation: Point3;
}
export const noMotion: Motion = { rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translation: [0, 0, 0] };

export const turned = ({ rotation: r }: Motion, [x, y, z]: Point3): Point3 => [r[0]! * x + r[1]! * y + r[2]! * z, r[3]! * x + r[4]! * y + r[5]! * z, r[6]! * x + r[7]! * y + r[8]! * z];
export const moved = (m: Motion, p: Point3): Point3 => add(turned(m, p), m.translation);

/** First `a`, then `b`. */
function after(a: Motion, b: Motion): Motion {
  const [x, y, z] = [0, 1, 2].map((c) => turned(b, [a.rotation[c]!, a.rotation[3 + c]!, a.rotation[6 + c]!])) as [Point3, Point3, Point3];
  return { rotation: [0, 1, 2].flatMap((k) => [x[k]!, y[k]!, z[k]!]), translation: moved(b, a.translation) };
}

/** Places looked at, and the share of them, those that fit worst, that has no say: local changes, holes, a cut-off comb. */
const places = 3000;
const trimmed = 0.1;
const rounds = 80;

/**
 * The rigid motion that lays one surface best on another, begun from `start`: closest points in turn with the least squares of the
 * distance along both normals (symmetric objective: Rusinkiewicz, ACM Trans. Graph. 38(4), 2019, from memory), the worst tenth left out.
 * Both meshes in mm, already within a few millimetres and degrees of each other.
 * Stops when a round moves it by less than 10⁻⁷ mm, or by less than 1/2000 of what is left between them: unlike bodies creep on for ever.
 */
export function layOn(moving: Mesh, still: ClosestPoint, start: Motion, watch: Watch): Motion {
  const samples = sampleSurface(moving, places);
  const normals = faceNormals(still.mesh);
  const hints = new Int32Array(samples.count).fill(-1);
  let motion = start;
  for (let round = 0; round < rounds; round++) {
    watch("laying one last on the other", round / rounds);
    const step = stepToward(matches(samples, still, normals, hints, motion));
    motion = after(motion, step.motion);
    if (step.mm < Math.max(1e-7, step.leftMm / 2000)) break;
  }
  return motion;
}

/** Matched places: p (moved), q on the other surface, n sum of both normals. */
interface Match {
  readonly p: Point3;
  readonly q: Point3;
  readonly n: Point3;
  readonly off: number;
}

function matches({ points, normals, count }: Samples, still: ClosestPoint, faces: Float64Array, hints: Int32Array, motion: Motion): Match[] {
  const found = new Float64Array(3);
  const all: Match[] = [];
  for (let i = 0; i < count; i++) {
    const p = moved(motion, [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!]);
    const own = turned(motion, [normals[3 * i]!, normals[3 * i + 1]!, normals[3 * i + 2]!]);
    const t = still.findInto(found, p[0], p[1], p[2], hints[i]!);
    hints[i] = t;
    const other: Point3 = [faces[3 * t]!, faces[3 * t + 1]!, faces[3 * t + 2]!];
    // Surfaces that look another way are no match: a rim, the other side of a thin place.
    if (dot(own, other) < 0.5) continue;
    all.push({ p, q: [found[0]!, found[1]!, found[2]!], n: add(own, other), off: Math.sqrt(still.squaredDistance) });
  }
  const limit = all.map((m) => m.off).sort((a, b) => a - b)[Math.floor((1 - trimmed) * all.length)] ?? 0;
  return all.filter((m) => m.off <= limit);
}

interface Step {
  readonly motion: Motion;
  /** How far it takes the farthest places, about. */
  readonly mm: number;
  /** Root mean square of the distances before it. */
  readonly leftMm: number;
}

/** One step of the symmetric objective, as a motion of the p's. */
function stepToward(pairs: readonly Match[]): Step {
  if (pairs.length < 20) return { motion: noMotion, mm: 0, leftMm: 0 };
  const middle = (of: "p" | "q"): Point3 => scale(pairs.reduce((sum, m) => add(sum, m[of]), [0, 0, 0] as Point3), 1 / pairs.length);
  const [pm, qm] = [middle("p"), middle("q")];
  const size = 100; // mm, so that turns and shifts weigh alike in the system
  const normal = Array.from({ length: 6 }, () => new Array<number>(6).fill(0));
  const right = new Array<number>(6).fill(0);
  for (const { p, q, n } of pairs) {
    const [a, b] = [sub(p, pm), sub(q, qm)];
    const row = [...scale(cross(add(a, b), n), 1 / size), ...n];
    const gap = dot(sub(a, b), n);
    for (let i = 0; i < 6; i++) {
      for (let k = 0; k < 6; k++) normal[i]![k] = normal[i]![k]! + row[i]! * row[k]!;
      right[i] = right[i]! - row[i]! * gap;
    }
  }
  // A body of revolution turns freely: a trace of stiffness keeps it where it is.
  for (let i = 0; i < 6; i++) normal[i]![i] = normal[i]![i]! + 1e-9 * pairs.length;
  const [ax, ay, az, tx, ty, tz] = solveSmall(normal, right) as [number, number, number, number, number, number];
  const turn: Point3 = scale([ax, ay, az], 1 / size);
  const tangent = norm(turn);
  const cosine = 1 / Math.sqrt(1 + tangent * tangent);
  const half = turnBy(turn, cosine);
  const motion = [shift(scale(pm, -1)), half, shift(scale([tx, ty, tz], cosine)), half, shift(qm)].reduce((m, next) => after(m, next), noMotion);
  const leftMm = Math.sqrt(pairs.reduce((sum, m) => sum + m.off * m.off, 0) / pairs.length);
  return { motion, mm: norm(sub(moved(motion, pm), pm)) + 2 * tangent * size, leftMm };
}

const shift = (translation: Point3): Motion => ({ rotation: noMotion.rotation, translation });

/** The turn about `axis` whose angle has |axis| for its tangent (Rodrigues), without an angle ever being worked out. */
function turnBy([x, y, z]: Point3, c: number): Motion {
  // sine · unit axis = cosine · axis; (1 − cosine) · axis axisᵗ / |axis|² = cosine² / (1 + cosine) · axis axisᵗ
  const [sx, sy, sz] = [c * x, c * y, c * z];
  const k = (c * c) / (1 + c);
  return { rotation: [c + k * x * x, k * x * y - sz, k * x * z + sy, k * x * y + sz, c + k * y * y, k * y * z - sx, k * x * z - sy, k * y * z + sx, c + k * z * z], translation: [0, 0, 0] };
}
