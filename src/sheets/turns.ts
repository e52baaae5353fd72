import type { Piece } from "#pieces/piece.ts";
import { bounds, type Bounds } from "#plane/measure.ts";
import { pagesAlong, type Grid } from "./paper.ts";

/** A piece turned about its own origin, counter-clockwise, by whole degrees. */
export interface Turned {
  readonly rotationDeg: number;
  /** How far it is turned from the nearest quarter, degrees. */
  readonly awayDeg: number;
  readonly box: Bounds;
  /** Its cutting line in coarse steps, first point repeated, for asking which pages it lies on. */
  readonly coarse: Float64Array;
  /** Places of notches, pricks and words, x0 y0 …: no joint should run through them. */
  readonly marks: Float64Array;
}

/** Cosine and sine of an angle in degrees, exact for quarter turns. */
export function unitOf(deg: number): readonly [number, number] {
  const quarter = [[1, 0], [0, 1], [-1, 0], [0, -1]] as const;
  if (deg % 90 === 0) return quarter[(((deg / 90) % 4) + 4) % 4]!;
  const turn = (deg * Math.PI) / 180;
  return [Math.cos(turn), Math.sin(turn)];
}

/** Turns points x0 y0 … about the origin. */
export function turnedXy(xy: Float64Array, deg: number): Float64Array {
  const [c, s] = unitOf(deg);
  const out = new Float64Array(xy.length);
  for (let i = 0; i < xy.length; i += 2) {
    out[i] = c * xy[i]! - s * xy[i + 1]!;
    out[i + 1] = s * xy[i]! + c * xy[i + 1]!;
  }
  return out;
}

/** Steps of the coarse cutting line, mm. */
const coarseMm = 4;

/**
 * The turns worth trying: 0 and 90, and where another needs fewer pages the ones nearest to a quarter turn on either side, and
 * those with the least box. `gap` is free paper on every side, mm.
 */
export function turnsOf(piece: Piece, grid: Grid, gap: number): readonly Turned[] {
  const hull = thinned(piece.outline.xy, 1);
  const tries = Array.from({ length: 180 }, (_, deg) => {
    const b = bounds({ xy: turnedXy(hull, deg) });
    const width = b.maxX - b.minX + 2 * gap, height = b.maxY - b.minY + 2 * gap;
    // A hair is kept in hand for the points that the coarse outline has left out.
    const pages = pagesAlong(width + 0.2, grid.windowWidthMm, grid.overlapMm) * pagesAlong(height + 0.2, grid.windowHeightMm, grid.overlapMm);
    return { deg, away: away(deg), pages, area: width * height };
  });
  const fewest = Math.min(...tries.map((t) => t.pages));
  const chosen = new Set([0, 90]);
  if (fewest < Math.min(tries[0]!.pages, tries[90]!.pages)) {
    const good = tries.filter((t) => t.pages === fewest);
    const least = (of: (t: (typeof good)[number]) => number, among: (deg: number) => boolean) =>
      good.filter((t) => among(t.deg)).sort((a, b) => of(a) - of(b) || a.deg - b.deg)[0];
    // Each eighth has its own best: to the left and to the right of each quarter.
    for (const from of [0, 45, 90, 135]) {
      const within = (deg: number) => deg >= from && deg < from + 45;
      for (const best of [least((t) => t.away, within), least((t) => t.area, within)]) if (best) chosen.add(best.deg);
    }
  }
  return [...chosen].map((deg) => turned(piece, deg));
}

const away = (deg: number): number => Math.min(deg % 90, 90 - (deg % 90));

function turned(piece: Piece, rotationDeg: number): Turned {
  const places = piece.marks.flatMap((m) => (m.kind === "notch" ? [...m.toward] : m.kind === "prick" || m.kind === "text" ? [...m.at] : []));
  const ring = thinned(piece.outline.xy, coarseMm);
  return {
    rotationDeg,
    awayDeg: away(rotationDeg),
    box: bounds({ xy: turnedXy(piece.outline.xy, rotationDeg) }),
    coarse: turnedXy(Float64Array.from([...ring, ring[0]!, ring[1]!]), rotationDeg),
    marks: turnedXy(Float64Array.from(places), rotationDeg),
  };
}

/** The points of a closed line that lie at least `mm` from the last one kept. */
function thinned(xy: Float64Array, mm: number): Float64Array {
  const out: number[] = [xy[0]!, xy[1]!];
  for (let i = 2; i < xy.length; i += 2) {
    const dx = xy[i]! - out[out.length - 2]!, dy = xy[i + 1]! - out[out.length - 1]!;
    if (dx * dx + dy * dy >= mm * mm) out.push(xy[i]!, xy[i + 1]!);
  }
  return Float64Array.from(out);
}
