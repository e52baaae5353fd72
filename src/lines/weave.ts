import { must } from "#base/bug.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Last, Point3 } from "#last/last.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { Arc, Arcs } from "./arcs.ts";
import { curveLength, pointOn } from "#last/surface-curve.ts";
import { featherHalf, footAtX, halfSign, halves, type Half } from "./feather.ts";

/** The woven forme: a disk open at the back, and its named edges as vertex lists. */
export interface Woven {
  readonly mesh: Mesh;
  /** Seat → toe. */
  readonly feather: Readonly<Record<Half, readonly number[]>>;
  /** Seat → top. */
  readonly back: Readonly<Record<Half, readonly number[]>>;
  /** Toe → as far as the tapes reach the axis. */
  readonly centre: readonly number[];
  /** Height at which the tapes behind the instep point end, mm. */
  readonly ceilingMm: number;
}

/** Below this no pump's topline has room. */
const leastCeilingMm = 50;

/**
 * Lays a tape up from the feather line every `spacing` mm and joins neighbouring tapes by triangles. Behind the instep point the
 * tapes end at one height, `wantedCeilingMm` above the feather line or less where the last is lower; before it they meet on the
 * centre ridge.
 */
export function weave(last: Last, arcs: Arcs, spacing: number, wantedCeilingMm: number): Woven {
  const positions: number[] = [];
  const triangles: number[] = [];
  const ridge = new Map<number, number>();
  const put = (p: Point3): number => positions.push(p[0], p[1], p[2]) / 3 - 1;
  const ridgeVertex = (axisX: number, p: Point3): number => {
    const known = ridge.get(axisX);
    if (known !== undefined) return known;
    const id = put([p[0], 0, p[2]]);
    ridge.set(axisX, id);
    return id;
  };
  const strips = { medial: feetOf(last, arcs, "medial", spacing), lateral: feetOf(last, arcs, "lateral", spacing) };
  const laid = (foot: Point3): Laid => layTape(last, arcs, foot, wantedCeilingMm);
  const strung = { medial: strips.medial.map(laid), lateral: strips.lateral.map(laid) };
  const ceilingMm = commonCeiling([...strung.medial, ...strung.lateral], wantedCeilingMm);
  const tape = ({ arc, toRidge }: Laid): number[] => {
    const total = toRidge ? curveLength(arc) : ceilingMm;
    const count = Math.max(2, Math.round(total / spacing));
    const ids: number[] = [];
    for (let i = 0; i < count; i++) ids.push(put(pointOn(arc, (total * i) / count)));
    ids.push(toRidge ? ridgeVertex(arc.axisX, pointOn(arc, total)) : put(pointOn(arc, total)));
    return ids;
  };
  const back: Partial<Record<Half, readonly number[]>> = {};
  const feather: Partial<Record<Half, readonly number[]>> = {};
  const toeTape = tape(laid(last.landmarks.toePoint));
  for (const half of halves) {
    const tapes = [...strung[half].map(tape), toeTape];
    const outward = halfSign(last, half);
    for (let k = 0; k + 1 < tapes.length; k++) zip(positions, triangles, tapes[k]!, tapes[k + 1]!, outward);
    back[half] = tapes[0]!;
    feather[half] = tapes.map((ids) => ids[0]!);
  }
  const centre = [...toeTape.slice(0, -1), ...[...ridge].sort((a, b) => b[0] - a[0]).map(([, id]) => id)];
  return {
    mesh: { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) },
    feather: feather as Record<Half, readonly number[]>,
    back: back as Record<Half, readonly number[]>,
    centre,
    ceilingMm,
  };
}

/** One tape as it lies; before the instep point it runs up to the centre ridge. */
interface Laid {
  readonly arc: Arc;
  readonly toRidge: boolean;
}

function layTape(last: Last, arcs: Arcs, foot: Point3, ceilingMm: number): Laid {
  const toRidge = arcs.stationOf(foot).axisX >= last.landmarks.instepPoint[0];
  const arc = arcs.from(foot, toRidge ? 400 : ceilingMm);
  if (toRidge && !arc.reachesAxis) throw new Refusal(finding("surface-open", { xMm: foot[0], heightMm: curveLength(arc) }, foot));
  return { arc, toRidge };
}

/** The height that every tape behind the instep point reaches: on a low last or a foot some meet over the axis before the wanted one. */
function commonCeiling(tapes: readonly Laid[], wantedMm: number): number {
  let ceiling = wantedMm;
  for (const { arc, toRidge } of tapes) {
    if (toRidge || curveLength(arc) >= wantedMm - 1e-6) continue;
    const reach = curveLength(arc) - 2;
    const at = pointOn(arc, 0);
    if (reach < leastCeilingMm) throw new Refusal(finding("surface-open", { xMm: at[0], heightMm: curveLength(arc) }, at));
    ceiling = Math.min(ceiling, reach);
  }
  return ceiling;
}

/** Feather points of one half from the seat point to just short of the toe point; along the flank at x shared by both halves. */
function feetOf(last: Last, arcs: Arcs, half: Half, spacing: number): Point3[] {
  const curve = featherHalf(last.feather, half);
  const heelEnd = footAtX(curve, arcs.heelX), toeStart = footAtX(curve, arcs.toeX);
  must(heelEnd && toeStart, "feather half without flank");
  const feet: Point3[] = [];
  const heelCount = Math.max(3, Math.round(heelEnd.along / spacing));
  for (let i = 0; i < heelCount; i++) feet.push(pointOn(curve, (heelEnd.along * i) / heelCount));
  const flankCount = Math.round((arcs.toeX - arcs.heelX) / spacing);
  for (let i = 0; i <= flankCount; i++) {
    // The last one stands on the centre of the toe fan to the last bit, or the ridge would get two points in one place there.
    const at = footAtX(curve, i === flankCount ? arcs.toeX : arcs.heelX + ((arcs.toeX - arcs.heelX) * i) / flankCount);
    must(at, "feather half with a gap");
    feet.push(at.foot);
  }
  const toeLength = curveLength(curve) - toeStart.along;
  const toeCount = Math.max(3, Math.round(toeLength / spacing));
  for (let i = 1; i < toeCount; i++) feet.push(pointOn(curve, toeStart.along + (toeLength * i) / toeCount));
  return feet;
}

/** Joins two neighbouring tapes by triangles, always by the shorter next rung. */
function zip(positions: readonly number[], triangles: number[], p: readonly number[], q: readonly number[], outward: 1 | -1): void {
  const gap = (a: number, b: number) =>
    (positions[3 * a]! - positions[3 * b]!) ** 2 + (positions[3 * a + 1]! - positions[3 * b + 1]!) ** 2 + (positions[3 * a + 2]! - positions[3 * b + 2]!) ** 2;
  const put = (a: number, b: number, c: number) => {
    if (a === b || b === c || c === a) return;
    if (outward > 0) triangles.push(a, b, c);
    else triangles.push(a, c, b);
  };
  let i = 0, j = 0;
  while (i + 1 < p.length || j + 1 < q.length) {
    const stepP = i + 1 < p.length ? gap(p[i + 1]!, q[j]!) : Infinity;
    const stepQ = j + 1 < q.length ? gap(p[i]!, q[j + 1]!) : Infinity;
    if (stepP <= stepQ) {
      put(p[i]!, p[i + 1]!, q[j]!);
      i++;
    } else {
      put(p[i]!, q[j + 1]!, q[j]!);
      j++;
    }
  }
}
