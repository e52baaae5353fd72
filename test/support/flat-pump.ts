import type { Last, Point3, Side, SurfaceCurve } from "#last/last.ts";
import type { HeightMark, Lines } from "#lines/lines.ts";
import { fillOutline } from "#plane/fill.ts";
import { noStrain, type FlatBottom, type FlatShell, type Shell, type ToplineTension } from "#shell/shell.ts";

type Xy = readonly [number, number];
type Cubic = readonly [Xy, Xy, Xy, Xy];

// Invented: a pump laid flat, drawn by formula as one would see it on a bench, about EU 38. Nothing here was measured.
const featherMedial: readonly Cubic[] = [
  [[0, 0], [0, 34], [-38, 57], [-78, 60]],
  [[-78, 60], [-118, 63], [-190, 106], [-235, 146]],
];
const featherLateral: readonly Cubic[] = [
  [[0, 0], [0, 38], [-34, 58], [-70, 61]],
  [[-70, 61], [-112, 64], [-188, 101], [-234, 141]],
];
const toplineMedial: readonly Cubic[] = [
  [[-72, 0], [-72, 21], [-88, 30], [-112, 36]],
  [[-112, 36], [-152, 46], [-207, 68], [-255, 95]],
];
const toplineLateral: readonly Cubic[] = [
  [[-72, 0], [-72, 21], [-86, 31], [-110, 36]],
  [[-110, 36], [-150, 44.3], [-205, 66], [-253.6, 89.9]],
];

/** Points of cubic curves in a row, from the first to the last, `each` steps a curve. */
function curvePoints(curves: readonly Cubic[], each: number): Xy[] {
  const points: Xy[] = [];
  for (const [k, [a, b, c, d]] of curves.entries()) {
    for (let i = k === 0 ? 0 : 1; i <= each; i++) {
      const t = i / each;
      const u = 1 - t;
      const at = (n: 0 | 1): number => u * u * u * a[n] + 3 * u * u * t * b[n] + 3 * u * t * t * c[n] + t * t * t * d[n];
      points.push([at(0), at(1)]);
    }
  }
  return points;
}

export interface FlatPump {
  readonly last: Last;
  readonly lines: Lines;
  readonly flat: FlatShell;
  readonly bottom: FlatBottom;
}

/**
 * A flat pump whose "last" is the flat itself (z = 0), so that places carried over from it must come back unchanged.
 * `noiseMm` shakes the inner points of every edge by a fixed pattern of that size.
 */
export function flatPump(side: Side = "right", noiseMm = 0): FlatPump {
  const sign = side === "right" ? 1 : -1;
  const positions: number[] = [];
  const add = ([x, y]: Xy): number => {
    positions.push(x, sign * y, 0);
    return positions.length / 3 - 1;
  };
  let shake = 1;
  const noise = (): number => {
    // Park and Miller's generator: a fixed row of numbers, the same on every machine.
    shake = (shake * 48271) % 2147483647;
    return noiseMm * ((2 * shake) / 2147483647 - 1);
  };
  const list = (points: readonly Xy[], ends: { first?: number; last?: number } = {}): Uint32Array =>
    Uint32Array.from(points.map((p, i) => {
      if (i === 0 && ends.first !== undefined) return ends.first;
      if (i === points.length - 1 && ends.last !== undefined) return ends.last;
      return i === 0 || i === points.length - 1 ? add(p) : add([p[0] + noise(), p[1] + noise()]);
    }));
  const lateral = (points: readonly Xy[]): Xy[] => points.map(([x, y]) => [x, -y]);
  const toe = add([0, 0]);
  const throat = add([-72, 0]);
  const feathers = {
    medial: list(curvePoints(featherMedial, 50).reverse(), { last: toe }),
    lateral: list(lateral(curvePoints(featherLateral, 50)).reverse(), { last: toe }),
  };
  const toplines = {
    medial: list(curvePoints(toplineMedial, 45).reverse(), { last: throat }),
    lateral: list(lateral(curvePoints(toplineLateral, 45)).reverse(), { last: throat }),
  };
  const point = (v: number): Xy => [positions[3 * v]!, sign * positions[3 * v + 1]!];
  const back = (seat: number, top: number, bow: number): Uint32Array => list(bowed(point(seat), point(top), bow), { first: seat, last: top });
  const edges = {
    featherMedial: feathers.medial,
    featherLateral: feathers.lateral,
    toplineMedial: toplines.medial,
    toplineLateral: toplines.lateral,
    backMedial: back(feathers.medial[0]!, toplines.medial[0]!, 2),
    backLateral: back(feathers.lateral[0]!, toplines.lateral[0]!, -2),
    centre: Uint32Array.of(toe, throat),
  };
  const xyz = Float64Array.from(positions);
  const uv = new Float64Array((2 * xyz.length) / 3);
  for (let v = 0; v < uv.length / 2; v++) uv.set([xyz[3 * v]!, xyz[3 * v + 1]!], 2 * v);
  const shell: Shell = { mesh: { positions: xyz, triangles: new Uint32Array(0) }, edges };
  const still: ToplineTension = { onLastMm: 0, overMm: 0, flatMm: 0, mostStretch: 0, extraMm: 0 };
  const flat: FlatShell = {
    shell,
    onLast: shell,
    tension: { medial: still, lateral: still },
    uv,
    stretchMax: new Float64Array(0),
    stretchMin: new Float64Array(0),
    strain: noStrain,
    unsprung: noStrain,
    springMm: 0,
    findings: [],
  };
  return { last: lastOf(side, sign), lines: linesOn(xyz, edges.toplineMedial, edges.toplineLateral), flat, bottom: flatBottom(sign) };
}

/** A slightly bowed line from a to b with 28 steps; positive bows to the left. */
function bowed(a: Xy, b: Xy, bow: number): Xy[] {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.sqrt(dx * dx + dy * dy);
  return Array.from({ length: 29 }, (_, i): Xy => {
    const t = i / 28;
    const w = (4 * bow * t * (1 - t)) / length;
    return [a[0] + t * dx - w * dy, a[1] + t * dy + w * dx];
  });
}

const noCurve: SurfaceCurve = { points: new Float64Array(0), arc: new Float64Array(0) };

function lastOf(side: Side, sign: 1 | -1): Last {
  const on = (x: number, y: number): Point3 => [x, sign * y, 0];
  return {
    name: "flat pump drawn by formula",
    source: "measures",
    side,
    mesh: { positions: new Float64Array(0), triangles: new Uint32Array(0) },
    placement: { unit: "mm", unitPerMm: 1, rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translationMm: [0, 0, 0] },
    feather: { points: new Float64Array(0), toeIndex: 0, confidence: new Float64Array(0) },
    landmarks: {
      toePoint: on(0, 0), seatPoint: on(-253, 0), jointMedial: on(-78, 60), jointLateral: on(-95, -62.5),
      seatMedial: on(-225, 137), seatLateral: on(-225, -133), vampPoint: on(-76, 0), waistPoint: on(-110, 0), instepPoint: on(-130, 0), counterPoint: on(-240, 0), treadPoint: on(-75, 0),
    },
    placed: [],
    measures: {
      stickLength: 252, lastLength: 253, jointGirth: 220, waistGirth: 210, instepGirth: 228, heelGirth: 320, ballWidth: 76, seatWidth: 53,
      heelHeight: 12, toeSpring: 9, featherLength: 590, featherMedial: 296, featherLateral: 294, vampPointFromToe: 76,
    },
    centreRidge: noCurve, backCurve: noCurve, bottomCentre: noCurve,
    findings: [],
  };
}

function linesOn(xyz: Float64Array, medial: Uint32Array, lateral: Uint32Array): Lines {
  const mark = (share: number, edge: Uint32Array): HeightMark => {
    const v = edge[Math.round(share * (edge.length - 1))]!;
    const at: Point3 = [xyz[3 * v]!, xyz[3 * v + 1]!, 0];
    return { share, alongFeatherMm: 0, heightMm: 0, foot: at, at };
  };
  return {
    settings: { throatDepthMm: 72, backHeightMm: 56, sideHeightMedialMm: 40, sideHeightLateralMm: 37, lowestAtMedial: 0.5, lowestAtLateral: 0.5, throatRadiusMm: 25 },
    toplineMedial: noCurve, toplineLateral: noCurve, centre: noCurve, back: noCurve,
    quarterHeights: { medial: [0.25, 0.5, 0.75].map((s) => mark(s, medial)), lateral: [0.25, 0.5, 0.75].map((s) => mark(s, lateral)) },
    lowestMedial: mark(0.45, medial),
    lowestLateral: mark(0.45, lateral),
    findings: [],
  };
}

/** Edge length of the bottom's triangles, mm: coarse, heights are what they are for. */
const bottomSpacing = 6;
const bottomLength = 253;

/**
 * A bottom with a hollow inner waist, moved so that the joint places fit the last above. Its flat is its plan; over it it stands as a
 * low pump's bottom does: the tread on the ground, a seat of 12 mm, 9 mm of toe spring, and a little round across.
 */
function flatBottom(sign: 1 | -1): FlatBottom {
  const n = 240;
  const ring = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const a = (2 * Math.PI * i) / n;
    const c = Math.cos(a);
    const half = a < Math.PI ? 25 - 15 * c + 34 * c * c : 29 - 11 * c + 30 * c * c;
    ring.set([(bottomLength / 2) * (1 - c), Math.sin(a) * half], 2 * i);
  }
  const filled = fillOutline({ outline: counterClockwise(ring), lines: [], spacing: bottomSpacing });
  const count = filled.xy.length / 2;
  const uv = new Float64Array(2 * count);
  const positions = new Float64Array(3 * count);
  for (let v = 0; v < count; v++) {
    const [x, y] = [filled.xy[2 * v]!, filled.xy[2 * v + 1]!];
    uv.set([x, sign * y], 2 * v);
    positions.set([x - bottomLength, sign * y, heightAt(x, y)], 3 * v);
  }
  // Seat first, over the inner half to the toe: against the way of the ring as it was filled.
  const loop = Uint32Array.from({ length: n }, (_, i) => (n - i) % n);
  // A left one keeps the order of corners, so that both are worked out alike to the last bit; which way a triangle looks counts for nothing here.
  return { bottom: { mesh: { positions, triangles: filled.triangles }, loop, toeIndex: n / 2 }, uv, strain: noStrain };
}

/** The ring, which runs clockwise from its first point, walked the other way from the same point. */
const counterClockwise = (ring: Float64Array): Float64Array => Float64Array.from(ring, (_, k) => ring[(ring.length - 2 * Math.floor(k / 2)) % ring.length + (k % 2)]!);

/** Height over the ground at `x` from the seat and `y` from the centre line: the edge stands as high as the profile says, the middle hangs up to 1.5 mm lower at seat and tread. */
function heightAt(x: number, y: number): number {
  const eased = (t: number): number => (t <= 0 ? 0 : t >= 1 ? 1 : t * t * (3 - 2 * t));
  const profile = 12 * (1 - eased((x - 85) / 65)) + 9 * Math.max(0, (x - 190) / (bottomLength - 190)) ** 2;
  const across = Math.max(0, 1 - (y / 22) ** 2) * Math.max(0, Math.min(x, bottomLength - x) / (bottomLength / 2));
  return profile - 1.5 * across;
}
