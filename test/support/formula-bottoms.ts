import type { Last, Point3 } from "#last/last.ts";
import { netBottomOf, type NetBottom } from "#pieces/bottom/net-bottom.ts";
import { ringEdge } from "#pieces/marks.ts";
import { pointAt } from "#plane/along.ts";
import { fillOutline } from "#plane/fill.ts";
import { noStrain, type FlatBottom } from "#shell/shell.ts";

// Bottoms by formula, invented: a long oval with straight sides, bent about one axis only, so that how it lies flat is known exactly.

export interface FormulaBottom {
  readonly last: Last;
  readonly bottom: FlatBottom;
  readonly net: NetBottom;
}

export interface Bent {
  readonly lengthMm: number;
  readonly halfWidthMm: number;
  /** Height over a place of the plan. */
  readonly z: (x: number, y: number) => number;
  /** Where a place of the plan lies on the flat. */
  readonly flat: (x: number, y: number) => readonly [number, number];
}

/** A right bottom in its place: from the seat at x = 0, half circles at both ends. */
export function formulaBottom({ lengthMm, halfWidthMm: r, z, flat }: Bent, spacing = 2.5): FormulaBottom {
  const plan = ovalFrom(lengthMm, r, 240);
  const filled = fillOutline({ outline: plan.xy, lines: [], spacing });
  const n = plan.xy.length / 2, count = filled.xy.length / 2;
  const positions = new Float64Array(3 * count), uv = new Float64Array(2 * count);
  for (let v = 0; v < count; v++) {
    const [x, y] = [filled.xy[2 * v]!, filled.xy[2 * v + 1]!];
    positions.set([x, y, z(x, y)], 3 * v);
    uv.set(flat(x, y), 2 * v);
  }
  // Seat first, over the medial side (+y) to the toe and back: clockwise in plan.
  const loop = Uint32Array.from({ length: n }, (_, i) => (n - i) % n);
  const bottom: FlatBottom = { bottom: { mesh: { positions, triangles: filled.triangles }, loop, toeIndex: n / 2 }, uv, strain: noStrain };
  const outline = { xy: Float64Array.from({ length: 2 * n }, (_, i) => uv[i]!) };
  const joint = 0.72 * lengthMm;
  const net = netBottomOf({ outline, toePoint: flat(lengthMm, 0), jointMedialPoint: flat(joint, r), jointLateralPoint: flat(joint - 20, -r), lengthMm: flat(lengthMm, 0)[0] });
  return { last: lastOf(lengthMm, z), bottom, net };
}

/** Counter-clockwise from the seat over −y to the toe; points evenly along it, half of them on either side. */
function ovalFrom(length: number, r: number, points: number): { readonly xy: Float64Array } {
  const half: number[] = [];
  for (let k = 0; k <= 200; k++) half.push(r - r * Math.cos((Math.PI / 2) * (k / 200)), -r * Math.sin((Math.PI / 2) * (k / 200)));
  for (let k = 200; k >= 0; k--) half.push(length - r + r * Math.cos((Math.PI / 2) * (k / 200)), -r * Math.sin((Math.PI / 2) * (k / 200)));
  const edge = ringEdge({ xy: Float64Array.from(half) });
  const total = edge.arc[edge.arc.length - 2]!;
  const at = Array.from({ length: points / 2 + 1 }, (_, k) => pointAt(edge.line, edge.arc, (k * total) / (points / 2)));
  const back = at.slice(1, -1).reverse().map(([x, y]) => [x, -y] as const);
  return { xy: Float64Array.from([...at, ...back].flat()) };
}

/** As much of a last as the bottom is asked for. */
function lastOf(lengthMm: number, z: Bent["z"]): Last {
  const at = (x: number): Point3 => [x, 0, z(x, 0)];
  return { name: "formula", side: "right", landmarks: { seatPoint: at(0), toePoint: at(lengthMm) }, measures: { heelHeight: z(0, 0) } } as unknown as Last;
}

/** Level along, a circle of radius `radius` across: rounded down (like the seat of a last) or hollow. */
export function crossArc(lengthMm: number, halfWidthMm: number, radius: number, way: "round" | "hollow"): FormulaBottom {
  const sign = way === "round" ? -1 : 1;
  const rim = Math.sqrt(radius * radius - halfWidthMm * halfWidthMm);
  return formulaBottom({
    lengthMm, halfWidthMm,
    z: (_, y) => sign * (Math.sqrt(radius * radius - y * y) - rim),
    flat: (x, y) => [x, radius * Math.asin(y / radius)],
  });
}

/** Level across; a seat that falls straight at a pitch to `kneeMm`, then straight down to the ground at `groundMm`, then level. */
export function pitched(lengthMm: number, halfWidthMm: number, heelMm: number, pitchDeg: number, kneeMm: number, groundMm: number): FormulaBottom {
  const fall = Math.tan((pitchDeg * Math.PI) / 180);
  const knee = heelMm - fall * kneeMm, steep = knee / (groundMm - kneeMm);
  const stretch = (slope: number): number => Math.sqrt(1 + slope * slope);
  return formulaBottom({
    lengthMm, halfWidthMm,
    z: (x) => (x <= kneeMm ? heelMm - fall * x : x <= groundMm ? knee - steep * (x - kneeMm) : 0),
    flat: (x, y) => [Math.min(x, kneeMm) * stretch(fall) + Math.max(0, Math.min(x, groundMm) - kneeMm) * stretch(steep) + Math.max(0, x - groundMm), y],
  });
}
