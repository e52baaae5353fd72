import { distanceInSpace } from "#flatten/distance.ts";
import { heelBreastX } from "#last/heel-breast.ts";
import { medialSign, type Last, type Point3 } from "#last/last.ts";
import { halves, type Half } from "#lines/feather.ts";
import { area } from "#mesh/area.ts";
import type { Wrapped } from "#wrap/wrap.ts";
import type { CheckInput } from "./check-input.ts";
import { edgeLength, flatLength } from "./edge-length.ts";
import { crossings, partLength, planeThrough } from "./girths.ts";
import type { Shell, ShellEdges } from "./shell.ts";

/** What a maker checks of a card against the last before trusting it. */
export type CheckKey = "topline-free" | "topline-drawn" | "back" | "throat-depth" | "feather" | "joint-girth" | "area" | "flank";

/**
 * One check: a length on the last or over what lies beneath, and the same on the card; `leastMm` and `mostMm` are the limits of card
 * less last. The area is in mm² all through. A flank's stand-off counts as card, with 0 on the last.
 */
export interface CheckRow {
  readonly key: CheckKey;
  readonly half?: Half;
  readonly onLastMm: number;
  readonly onCardMm: number;
  readonly leastMm: number;
  readonly mostMm: number;
  readonly holds: boolean;
  /** A place to look at, mm in the last's frame: the throat, the joint, where a flank stands off most, else the middle of the edge; none for the area. */
  readonly at?: Point3;
}

/** Limits of card less last, mm, and of the area as a share: common practice, no source. */
const limits = { topline: 1, back: 0.5, throat: 0.5, featherShorter: -2, featherLonger: 4, girth: 1, areaShare: 0.02, flank: 1 } as const;

/** The most that a card may stand off before it gapes, mm. */
export const mostStandOffMm: number = limits.flank;

/** The part of a topline half, from the back point, that is flank: behind it lies the back seam, before it the throat's curve. */
const flank = { from: 0.03, to: 0.9 } as const;
/** Farther along a half than this, as a share from the back point, is the throat. */
export const throatFrom: number = flank.to;

const ofHalf = (edges: ShellEdges, half: Half) =>
  half === "medial"
    ? { topline: edges.toplineMedial, back: edges.backMedial, feather: edges.featherMedial }
    : { topline: edges.toplineLateral, back: edges.backLateral, feather: edges.featherLateral };

function row(key: CheckKey, half: Half | undefined, [onLastMm, onCardMm]: readonly [number, number], [leastMm, mostMm]: readonly [number, number], at?: Point3): CheckRow {
  const off = onCardMm - onLastMm;
  return { key, ...(half && { half }), onLastMm, onCardMm, leastMm, mostMm, holds: off >= leastMm && off <= mostMm, ...(at && { at }) };
}

const pointOf = (p: Float64Array, v: number): Point3 => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!];
const middleOf = (p: Float64Array, ids: Uint32Array): Point3 => pointOf(p, ids[ids.length >> 1]!);

/** All rows, in the order in which a maker goes through them. */
export function checkRows(input: CheckInput, wrapped: Wrapped): readonly CheckRow[] {
  return [...halves.flatMap((half) => halfRows(input, half)), ...wholeRows(input), ...halves.map((half) => flankRow(input, half, wrapped))];
}

function halfRows(input: CheckInput, half: Half): readonly CheckRow[] {
  const { flat, freeUv, last, asked } = input;
  const free = { uv: freeUv };
  const over = flat.shell.mesh.positions;
  const { topline, back } = ofHalf(flat.shell.edges, half);
  const bareMm = edgeLength(flat.onLast.mesh.positions, topline);
  const [shorter, feather, girth] = [-asked.shell.toplineShorter * bareMm, unnicked(flat.shell, last, half), jointParts(flat.onLast, last, half)];
  const joint = half === "medial" ? last.landmarks.jointMedial : last.landmarks.jointLateral;
  const alongTop = middleOf(over, topline);
  return [
    row("topline-free", half, [edgeLength(over, topline), flatLength(free, topline)], [-limits.topline, limits.topline], alongTop),
    row("topline-drawn", half, [bareMm, flatLength(flat, topline)], [shorter - limits.topline, shorter + limits.topline], alongTop),
    row("back", half, [edgeLength(over, back), flatLength(flat, back)], [-limits.back, limits.back], middleOf(over, back)),
    row("feather", half, [edgeLength(over, feather), flatLength(flat, feather)], [limits.featherShorter, limits.featherLonger], middleOf(over, feather)),
    row("joint-girth", half, [sumOf(over, girth), sumOf(inSpace(freeUv), girth)], [-limits.girth, limits.girth], joint),
  ];
}

function wholeRows({ flat, freeUv }: CheckInput): readonly CheckRow[] {
  const { mesh, edges } = flat.shell;
  const square = area(mesh);
  const throat = edges.centre[edges.centre.length - 1]!;
  return [
    row("throat-depth", undefined, [edgeLength(mesh.positions, edges.centre), flatLength(flat, edges.centre)], [-limits.throat, limits.throat], pointOf(mesh.positions, throat)),
    row("area", undefined, [square, area({ positions: inSpace(freeUv), triangles: mesh.triangles })], [-limits.areaShare * square, limits.areaShare * square]),
  ];
}

function flankRow({ coarse }: CheckInput, half: Half, { height }: Wrapped): CheckRow {
  const { topline } = ofHalf(coarse.shell.edges, half);
  const { positions } = coarse.shell.mesh;
  const shares = sharesAlong(positions, topline);
  let top = topline.length >> 1;
  topline.forEach((v, i) => {
    if (shares[i]! >= flank.from && shares[i]! <= flank.to && height[v]! > height[topline[top]!]!) top = i;
  });
  return row("flank", half, [0, Math.max(0, height[topline[top]!]!)], [0, limits.flank], pointOf(positions, topline[top]!));
}

/** Running length of each vertex of an edge as a share of the whole. */
export function sharesAlong(positions: Float64Array, ids: Uint32Array): Float64Array {
  const arc = new Float64Array(ids.length);
  for (let k = 1; k < ids.length; k++) arc[k] = arc[k - 1]! + distanceInSpace(positions, ids[k - 1]!, ids[k]!);
  return arc.map((at) => at / arc[arc.length - 1]!);
}

/**
 * The feather edge between heel breast and joint. Round the seat and round the toe card is nicked all along, and what the edge is too
 * long there is what the tongues overlap: see {@link nickedMm}.
 */
function unnicked(shell: Shell, last: Last, half: Half): Uint32Array {
  const [from, to] = waist(shell, last, half);
  return ofHalf(shell.edges, half).feather.slice(from, to + 1);
}

/** Places in a half's feather edge of heel breast and joint. */
function waist({ mesh: { positions: p }, edges }: Shell, { landmarks }: Last, half: Half): readonly [number, number] {
  const { feather } = ofHalf(edges, half);
  const joint = half === "medial" ? landmarks.jointMedial : landmarks.jointLateral;
  const breastX = heelBreastX({ landmarks });
  const from = feather.findIndex((v) => p[3 * v]! > breastX);
  let to = from + 1;
  const far = (i: number): number => [0, 1, 2].reduce((sum, d) => sum + (p[3 * feather[i]! + d]! - joint[d]!) ** 2, 0);
  for (let i = from + 1; i < feather.length; i++) if (far(i) < far(to)) to = i;
  return [from, to];
}

/** How much longer the card's edge is than the last's where it is nicked, round the seat and round the toe, mm: the sum of all overlaps. */
export function nickedMm({ flat, last }: CheckInput, half: Half): { readonly seatMm: number; readonly toeMm: number } {
  const { feather } = ofHalf(flat.shell.edges, half);
  const [from, to] = waist(flat.shell, last, half);
  const longer = (ids: Uint32Array): number => flatLength(flat, ids) - edgeLength(flat.shell.mesh.positions, ids);
  return { seatMm: longer(feather.slice(0, from + 1)), toeMm: longer(feather.slice(to)) };
}

/** The parts in which the plane through joint points and vamp point crosses one half of the shell. */
function jointParts(onLast: Shell, { landmarks, side }: Last, half: Half): ReturnType<typeof crossings> {
  const sign = half === "medial" ? medialSign(side) : -medialSign(side);
  return crossings(onLast, planeThrough(landmarks.jointMedial, landmarks.jointLateral, landmarks.vampPoint)).filter(({ at }) => sign * at[1] > 0);
}

const sumOf = (positions: Float64Array, parts: ReturnType<typeof crossings>): number => parts.reduce((sum, part) => sum + partLength(positions, part), 0);

/** Flat places as positions with z = 0. */
const inSpace = (uv: Float64Array): Float64Array => Float64Array.from({ length: (uv.length / 2) * 3 }, (_, k) => (k % 3 === 2 ? 0 : uv[2 * Math.floor(k / 3) + (k % 3)]!));
