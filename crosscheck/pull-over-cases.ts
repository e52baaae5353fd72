// Sheets of leather on forms that a formula tells, for the outside check of the mechanics.
import type { Form } from "#lasting/forward/form.ts";
import { sumOf } from "#leather/combined.ts";
import type { Law } from "#leather/law.ts";
import { ToeLaw, linearLaw, type LeatherNumbers } from "#leather/toe-law.ts";
import { capMesh, gridMesh } from "../test/support/formula-surfaces.ts";
import { flatGrid } from "../test/support/sheets-on-forms.ts";

export interface RoundForm {
  /** A cylinder upright at the origin, or a ball there. */
  readonly kind: "cylinder" | "sphere";
  readonly radius: number;
}

/** A layer of the sheet, its direction of least stretch turned from the flat's +x, degrees counter-clockwise. */
export interface Layer {
  readonly numbers: LeatherNumbers;
  readonly turnDeg: number;
}

export interface Case {
  readonly name: string;
  readonly triangles: Uint32Array;
  readonly flat: Float64Array;
  readonly start: Float64Array;
  readonly layers: readonly Layer[];
  readonly form?: RoundForm;
  /** Dead force on each vertex, N. */
  readonly load: Float64Array;
  /** Vertices tacked, and where. */
  readonly tacked: Uint32Array;
  readonly at: Float64Array;
  /** In its own plane: what is tacked does not move at all. */
  readonly plane?: boolean;
}

// Invented, about those of a soft goat and its lining.
const upper: LeatherNumbers = { along: 40, across: 20, bias: 18, poisson: 0.4, toe: 0.02, early: 0.25 };
const lining: LeatherNumbers = { along: 18, across: 11, bias: 11, poisson: 0.35, toe: 0.03, early: 0.2 };
const straight: LeatherNumbers = linearLaw(upper).numbers;

const turned = (numbers: LeatherNumbers, turnDeg: number): Law => {
  const turn = (turnDeg * Math.PI) / 180;
  return new ToeLaw(numbers).turned(Math.cos(turn), Math.sin(turn));
};

export const lawOf = (layers: readonly Layer[]): Law => sumOf(layers.map(({ numbers, turnDeg }) => turned(numbers, turnDeg)));

/** Exact cylinder or ball to lie on. */
export function formOf({ kind, radius }: RoundForm): Form {
  const axes = kind === "sphere" ? 3 : 2;
  return {
    planesInto(plane, foot, _near, x, bend) {
      for (let p = 0; 3 * p < x.length; p++) {
        const n = [0, 0, 0];
        let size = 0;
        for (let d = 0; d < axes; d++) size += x[3 * p + d]! ** 2;
        size = Math.sqrt(size);
        for (let d = 0; d < axes; d++) n[d] = x[3 * p + d]! / size;
        plane.set([...n, radius], 4 * p);
        for (let d = 0; d < 3; d++) foot[3 * p + d] = d < axes ? radius * n[d]! : x[3 * p + d]!;
        for (let r = 0, k = 6 * p; r < 3; r++) for (let q = 0; q <= r; q++, k++) bend[k] = ((r === q && r < axes ? 1 : 0) - n[r]! * n[q]!) / radius;
      }
    },
  };
}

export const strip = { radius: 40, wrapDeg: 120, tail: 24, width: 18, columns: 60, rows: 6 };
/** Which way it leads at its other end. */
export const there = [-Math.sin((strip.wrapDeg * Math.PI) / 180), Math.cos((strip.wrapDeg * Math.PI) / 180), 0] as const;

/** Where a strip leads round the cylinder at this way from its first end, and straight on beyond. */
function alongStrip(way: number): readonly [number, number] {
  const { radius, tail } = strip, s = way - tail;
  if (s < 0) return [radius, s];
  const at = Math.min(s / radius, (strip.wrapDeg * Math.PI) / 180), beyond = s - radius * at;
  return [radius * Math.cos(at) + beyond * there[0], radius * Math.sin(at) + beyond * there[1]];
}

/** Each place of the strip as if it were drawn out evenly, its other end by so much. */
export const drawnEvenly = ({ flat }: Case, by: number): Float64Array => {
  const share = 1 + by / Math.max(...flat);
  return Float64Array.from({ length: 1.5 * flat.length }, (_, k) => [...alongStrip(share * flat[2 * Math.floor(k / 3)]!), flat[2 * Math.floor(k / 3) + 1]!][k % 3]!);
};

/** A strip that lies on a cylinder and leaves it straight at both ends; its first end tacked, its other end too or pulled there. */
export function stripOver(name: string, layers: readonly Layer[], first: { readonly pull: number } | "tacked", last: { readonly pull: number } | { readonly moved: number }): Case {
  const { radius, wrapDeg, tail, width, columns, rows } = strip;
  const length = (radius * wrapDeg * Math.PI) / 180 + 2 * tail;
  const { positions: start, triangles } = gridMesh((s, t) => [...alongStrip(length * s), width * (t - 0.5)], columns, rows);
  const flat = flatGrid((s, t) => [length * s, width * (t - 0.5)], { columns, rows });
  const end = (c: number): number[] => Array.from({ length: rows + 1 }, (_, r) => r * (columns + 1) + c);
  const load = new Float64Array(start.length), tacked: number[] = [], at: number[] = [];
  const hold = (vertices: number[], [x, y]: readonly number[], how: { readonly pull: number } | { readonly moved: number }): void =>
    vertices.forEach((v, r) => {
      const share = (r === 0 || r === rows ? 0.5 : 1) / rows;
      if ("pull" in how) load.set([x! * share * how.pull * width, y! * share * how.pull * width, 0], 3 * v);
      else {
        tacked.push(v);
        at.push(start[3 * v]! + x! * how.moved, start[3 * v + 1]! + y! * how.moved, start[3 * v + 2]!);
      }
    });
  hold(end(0), [0, -1], first === "tacked" ? { moved: 0 } : first);
  hold(end(columns), there, last);
  return { name, triangles, flat, start, layers, form: { kind: "cylinder", radius }, load, tacked: Uint32Array.from(tacked), at: Float64Array.from(at) };
}

export const cap = { radius: 60, degrees: 24, rings: 18 };
export const capRim = (): number[] => Array.from({ length: 6 * cap.rings }, (_, k) => 1 + 3 * cap.rings * (cap.rings - 1) + k);

/** A flat disc on a ball, pulled at its rim along the ball; a share of the rim may be tacked farther down the ball instead. */
export function discOver(name: string, layers: readonly Layer[], pull: number, tackedShare = 0, drawnOut = 0): Case {
  const { radius, degrees, rings } = cap, rim = capRim();
  const { positions: start, triangles } = capMesh(radius, degrees, rings);
  const flat = new Float64Array((2 * start.length) / 3);
  for (let v = 1; 2 * v < flat.length; v++) {
    const x = start[3 * v]!, y = start[3 * v + 1]!, aside = Math.hypot(x, y), way = radius * Math.atan2(aside, start[3 * v + 2]!);
    flat.set([(way * x) / aside, (way * y) / aside], 2 * v);
  }
  const edge = (2 * Math.PI * radius * ((degrees * Math.PI) / 180)) / rim.length;
  const load = new Float64Array(start.length), tacked = rim.slice(0, Math.round(tackedShare * rim.length));
  for (const v of rim.slice(tacked.length)) {
    const [x, y, z] = [start[3 * v]!, start[3 * v + 1]!, start[3 * v + 2]!], aside = Math.hypot(x, y);
    const out = (pull * edge * z) / radius / aside;
    load.set([out * x, out * y, (-pull * edge * aside) / radius], 3 * v);
  }
  const turn = drawnOut / radius;
  const farther = (v: number): number[] => {
    const [x, y, z] = [start[3 * v]!, start[3 * v + 1]!, start[3 * v + 2]!], aside = Math.hypot(x, y);
    const out = (aside * Math.cos(turn) + z * Math.sin(turn)) / aside;
    return [out * x, out * y, z * Math.cos(turn) - aside * Math.sin(turn)];
  };
  return { name, triangles, flat, start, layers, form: { kind: "sphere", radius }, load, tacked: Uint32Array.from(tacked), at: Float64Array.from(tacked.flatMap(farther)) };
}

/** Cook's panel, clamped at the left, under so small a shear at the right that it answers in proportion; E 1 N/mm, Poisson's ratio 1/3. */
export function cooksPanel(cells: number, force: number): Case {
  const { positions: start, triangles } = gridMesh((s, t) => [48 * s, 44 * s + t * (44 - 28 * s), 0], cells, cells);
  const flat = flatGrid((s, t) => [48 * s, 44 * s + t * (44 - 28 * s)], { columns: cells, rows: cells });
  const load = new Float64Array(start.length), left: number[] = [];
  for (let r = 0; r <= cells; r++) {
    left.push(r * (cells + 1));
    load[3 * (r * (cells + 1) + cells) + 1] = (force * (r === 0 || r === cells ? 0.5 : 1)) / cells;
  }
  const layers = [{ numbers: linearLaw({ along: 1, across: 1, bias: 1, poisson: 1 / 3 }).numbers, turnDeg: 0 }];
  return { name: "Cook's panel", triangles, flat, start, layers, load, tacked: Uint32Array.from(left), at: Float64Array.from(left.flatMap((v) => [...start.subarray(3 * v, 3 * v + 3)])), plane: true };
}

const one = (numbers: LeatherNumbers, turnDeg = 0): Layer[] => [{ numbers, turnDeg }];
const both: Layer[] = [{ numbers: upper, turnDeg: 20 }, { numbers: lining, turnDeg: -35 }];

export const theCases = (): Case[] => [
  stripOver("strip, in proportion, tacked and pulled", one(straight), "tacked", { pull: 1 }),
  stripOver("strip, soft at first, tacked and pulled", one(upper), "tacked", { pull: 1 }),
  stripOver("strip of two layers askew, tacked at both ends, drawn 6 mm", both, "tacked", { moved: 6 }),
  discOver("disc, in proportion, pulled all round", one(straight), 1.5),
  discOver("disc, soft at first, pulled all round", one(upper), 1.5),
  discOver("disc of two layers askew, a quarter tacked, the rest pulled", both, 2, 0.25, 0.8),
  cooksPanel(32, 1e-4),
];

/** A strip drawn over the cylinder against friction, at its other end a weight of `pull` a mm of width. */
export const drawnStrip = (): Case => stripOver("strip drawn over a rough cylinder", one(upper), { pull: 0.5 }, { moved: 0 });
/** What the disc for the inverse is made of. */
export const inverseLayers = both;
