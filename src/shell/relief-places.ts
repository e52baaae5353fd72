import { breastShare } from "#last/heel-breast.ts";
import type { Half } from "#lines/feather.ts";
import { arcLengths, directionAt, nearestOn } from "#plane/along.ts";
import type { Polyline } from "#plane/outline.ts";
import { edgeCurve, edgeEnd, onEdge, type EdgeCurve, type LaidShell, type SheetLine } from "./relief-sheet.ts";

export type NickZone = "toe" | "waist" | "heel";

/** What a hand allows of nicks in each zone. `most` counts the toe's on both halves together, the others' on each half. Lengths in mm. */
export const nickLimits = {
  toe: { most: 8, shortestMm: 15, longestMm: 30 },
  waist: { most: 4, shortestMm: 15, longestMm: 25 },
  heel: { most: 1, shortestMm: 15, longestMm: 25 },
} as const satisfies Record<NickZone, { readonly most: number; readonly shortestMm: number; readonly longestMm: number }>;
/** Nicks stand at least so far apart along the feather edge, mm. */
export const nickApartMm = 8;
/** A nick ends at least so far short of topline and back edge, mm. */
export const nickShortOfMm = 10;

/** Places are tried so far from each other along the feather edge at the toe and behind it, and lengths in such steps, mm. */
const placeStepMm = { toe: 4.5, behind: 9 } as const;
export const lengthStepMm = 5;
/** A nick keeps clear of the front centre, and of the line of the next place, so that the sheet's triangles do not get too thin. */
const centreClearMm = 1.8;
const leantClearMm = 1.9;
const lineClearMm = 2;
/** Where the heel's nick stands, from the seat point: handbook 10 to 15 mm in from the heel line. */
const heelPlaceMm = 12.5;
/** The waist's nicks begin so far ahead of the joint, mm. */
const aheadOfJointMm = 20;
/** A nick stands at right angles to the feather edge's chord over so far either side, mm. */
const normalReachMm = 8;

/** A place where a nick may be cut, straight in from the feather edge, with the points of its line every {@link lengthStepMm}. */
export interface NickPlace extends SheetLine {
  readonly zone: NickZone;
  /** Along the feather edge from the toe point on the surface: + on the medial half, − on the lateral one. */
  readonly fromToeMm: number;
}

/** All places to be tried, from the toe backward on both sides by turns. */
export function nickPlaces(laid: LaidShell): readonly NickPlace[] {
  const medial = new HalfPlaces(laid, "medial"), lateral = new HalfPlaces(laid, "lateral");
  const kept: NickPlace[] = [];
  const count = Math.max(medial.count, lateral.count);
  for (let k = 0; k < count; k++)
    for (const half of [medial, lateral]) {
      const place = half.at(k, kept);
      if (place) kept.push(place);
    }
  return kept;
}

/** Running length, from the seat point, of the widest place of a feather half's forepart: its joint, as a straight edge held along the bottom finds it. */
export function jointMm(feather: EdgeCurve): number {
  const { points: p, arc } = feather;
  const seat = p[0]!, toe = p[p.length - 3]!;
  let best = 0, widest = -1;
  for (let i = 0; i < arc.length; i++) {
    const share = (p[3 * i]! - seat) / (toe - seat);
    if (share < 0.5 || share > 0.85 || Math.abs(p[3 * i + 1]!) <= widest) continue;
    widest = Math.abs(p[3 * i + 1]!);
    best = arc[i]!;
  }
  return best;
}

/** Running length of the first place of a feather half at a share of its way along the last's axis. */
export function atShare({ points: p, arc }: EdgeCurve, share: number): number {
  const seat = p[0]!, toe = p[p.length - 3]!;
  for (let i = 0; i < arc.length; i++) if (p[3 * i]! - seat >= share * (toe - seat)) return arc[i]!;
  return edgeEnd({ points: p, arc });
}

interface Line extends Polyline {
  readonly arc: Float64Array;
}

/** Where nicks are tried on one half, from the toe backward. */
function placesAlong(feather: EdgeCurve): { readonly atMm: number; readonly zone: NickZone }[] {
  const total = edgeEnd(feather), waistMm = jointMm(feather) + aheadOfJointMm, heelMm = atShare(feather, breastShare);
  const places: { atMm: number; zone: NickZone }[] = [];
  for (let atMm = total - placeStepMm.toe; atMm > heelMm; atMm -= atMm > waistMm ? placeStepMm.toe : placeStepMm.behind) places.push({ atMm, zone: atMm > waistMm ? "toe" : "waist" });
  return [...places, { atMm: heelPlaceMm, zone: "heel" }];
}

/** The places of one half. */
class HalfPlaces {
  readonly #places: readonly { readonly atMm: number; readonly zone: NickZone }[];
  readonly #half: Half;
  readonly #feather: EdgeCurve;
  readonly #line: Line;
  /** +1 where the half lies on +y of the flat. */
  readonly #sign: 1 | -1;
  readonly #keepOff: readonly Line[];
  readonly #throatX: number;

  constructor(laid: LaidShell, half: Half) {
    const e = laid.shell.edges;
    const line = (xy: Float64Array): Line => ({ xy, arc: arcLengths({ xy }) });
    this.#half = half;
    this.#feather = edgeCurve(laid, half === "medial" ? e.featherMedial : e.featherLateral);
    this.#line = line(this.#feather.uv);
    this.#sign = this.#feather.uv[1]! > 0 ? 1 : -1;
    this.#keepOff = [e.toplineMedial, e.toplineLateral, half === "medial" ? e.backMedial : e.backLateral].map((ids) => line(edgeCurve(laid, ids).uv));
    this.#throatX = laid.uv[2 * e.centre[e.centre.length - 1]!]!;
    this.#places = placesAlong(this.#feather);
  }

  get count(): number {
    return this.#places.length;
  }

  /** Place k from the toe on, shortened to keep clear of all else; undefined when too little is left of it. */
  at(k: number, others: readonly NickPlace[]): NickPlace | undefined {
    if (k >= this.count) return undefined;
    const total = edgeEnd(this.#feather);
    const { atMm, zone } = this.#places[k]!;
    const { shortestMm, longestMm } = nickLimits[zone];
    const [x, y] = onEdge(this.#feather, atMm).flat;
    const { s } = nearestOn(this.#line, this.#line.arc, x, y);
    const [dx, dy] = this.#inward(directionAt(this.#line, this.#line.arc, s, normalReachMm), x, y, shortestMm);
    const points: number[] = [];
    for (let mm = lengthStepMm; mm <= longestMm; mm += lengthStepMm) {
      const px = x + mm * dx, py = y + mm * dy;
      if (!this.#clear(px, py, others)) break;
      points.push(px, py);
    }
    if (points.length / 2 < shortestMm / lengthStepMm) return undefined;
    return { half: this.#half, atMm, zone, inner: Float64Array.from(points), fromToeMm: (total - atMm) * (this.#half === "medial" ? 1 : -1) };
  }

  /** Straight in from the feather edge; at a pointed toe leant so far that the shortest nick keeps clear of the centre. */
  #inward([dx, dy]: readonly [number, number], x: number, y: number, shortestMm: number): readonly [number, number] {
    const straight = [this.#sign * dy, -this.#sign * dx] as const;
    if (x < this.#throatX || this.#sign * (y + shortestMm * straight[1]) >= centreClearMm || this.#sign * y <= centreClearMm) return straight;
    const across = (this.#sign * leantClearMm - y) / shortestMm;
    return [-Math.sqrt(1 - across * across), across];
  }

  #clear(x: number, y: number, others: readonly NickPlace[]): boolean {
    if (x > this.#throatX - nickShortOfMm && this.#sign * y < centreClearMm) return false;
    if (this.#keepOff.some((line) => nearestOn(line, line.arc, x, y).distance < nickShortOfMm)) return false;
    return others.every(({ inner }) => {
      for (let i = 0; i < inner.length; i += 2) if ((inner[i]! - x) ** 2 + (inner[i + 1]! - y) ** 2 < lineClearMm * lineClearMm) return false;
      return true;
    });
  }
}
