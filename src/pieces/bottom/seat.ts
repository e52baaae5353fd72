import { heelBreastX } from "#last/heel-breast.ts";
import { medialSign, type Last } from "#last/last.ts";
import type { FlatBottom } from "#shell/shell.ts";
import type { PieceSettings } from "../settings.ts";
import type { BottomSurface } from "./bottom-surface.ts";
import { hullHeight, hullSlope, lowerHull } from "./lower-hull.ts";
import type { MarginUnder } from "./margin-under.ts";
import type { LastedSection } from "./sections.ts";

/** How far the sole's edge stands off the levelled seat at a place of its edge. */
export interface SeatEdge {
  /** Along the feather line from the seat point, mm: above 0 on the inner side, below 0 on the outer one. */
  readonly alongMm: number;
  readonly offMm: number;
}

/** The plane on which the heel is built, and the round of the seat over it. */
export interface LevelSeat {
  /** Height from the plane down to the ground at the seat point and at the heel's breast, mm. */
  readonly backMm: number;
  readonly breastMm: number;
  /** How far the plane falls from the back to the breast; below 0 where it rises. */
  readonly pitchDeg: number;
  /** From the outer breast over the seat to the inner breast. */
  readonly edge: readonly SeatEdge[];
  /** How far the sole stands off the plane in the middle of the breast. */
  readonly breastOffMm: number;
}

/** The tread is sought where it is on a last: shares of the length. */
const treadFrom = 0.5, treadTo = 0.93;

/**
 * The heel's plane touches the sole from below, level across, and leans along as asks least of the split lift: of all such planes the one
 * that carries the sole under the middle of the heel. The ground touches the sole under the tread, as the last stands. Sole and insole count.
 */
export function levelSeat(last: Pick<Last, "side" | "landmarks">, flat: FlatBottom, surface: BottomSurface, sections: readonly LastedSection[], margin: MarginUnder, settings: PieceSettings): LevelSeat | undefined {
  const back = last.landmarks.seatPoint[0], length = last.landmarks.toePoint[0] - back;
  const breast = heelBreastX(last);
  const whole = settings.firstBoardMm + settings.secondBoardMm + settings.soleMm;
  const tread = sections.filter(({ x }) => x - back > treadFrom * length && x - back < treadTo * length);
  const seat = sections.filter(({ x }) => x <= breast);
  if (tread.length === 0 || seat.length < 2) return undefined;
  const ground = tread.reduce((least, { lowest }) => Math.min(least, lowest.z), Infinity) - settings.firstBoardMm - settings.soleMm;
  const under = lowerHull(seat.map(({ x }) => x), seat.map(({ lowest }) => lowest.z - whole / lowest.level));
  const middle = (back + breast) / 2;
  const slope = hullSlope(under, middle), at = hullHeight(under, middle);
  const plane = (x: number): number => at + slope * (x - middle);
  const lastSeat = seat[seat.length - 1]!;
  return {
    backMm: plane(back) - ground,
    breastMm: plane(breast) - ground,
    pitchDeg: (-Math.atan(slope) * 180) / Math.PI,
    edge: edgeOff(last, flat, surface, breast, (x, z, level, y) => z - (whole + margin.thicknessMm(0, x, y)) / level - plane(x)),
    breastOffMm: lastSeat.lowest.z - whole / lastSeat.lowest.level - plane(lastSeat.x),
  };
}

/** The edge of the seat from the outer to the inner breast, with how far the sole stands off the plane there. */
function edgeOff(last: Pick<Last, "side">, { bottom: { loop, mesh: { positions: p } } }: FlatBottom, { level }: BottomSurface, breast: number, off: (x: number, z: number, level: number, y: number) => number): readonly SeatEdge[] {
  const sign = medialSign(last.side);
  // The loop runs over the medial side first.
  const walk = (inner: boolean): SeatEdge[] => {
    const out: SeatEdge[] = [];
    let along = 0;
    for (let i = 0; i < loop.length; i++) {
      const v = loop[inner ? i : (loop.length - i) % loop.length]!, before = loop[inner ? Math.max(0, i - 1) : (loop.length - Math.max(0, i - 1)) % loop.length]!;
      if (p[3 * v]! > breast) break;
      along += Math.sqrt((p[3 * v]! - p[3 * before]!) ** 2 + (p[3 * v + 1]! - p[3 * before + 1]!) ** 2 + (p[3 * v + 2]! - p[3 * before + 2]!) ** 2);
      out.push({ alongMm: inner ? along : -along, offMm: off(p[3 * v]!, p[3 * v + 2]!, level[v]!, sign * p[3 * v + 1]!) });
    }
    return out;
  };
  return [...walk(false).slice(1).reverse(), ...walk(true)];
}
