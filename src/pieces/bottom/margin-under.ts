import type { ShellSettings } from "#shell/settings.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";
import type { NetBottom } from "./net-bottom.ts";

/** What the bottom needs of the shell's settings: how far stiffener and puff reach. */
export type StiffReach = Pick<ShellSettings, "counterMm" | "counterInnerMm" | "counterOuterMm" | "puffReachMm">;

/** The lasting margin as it lies on the insole once it is trimmed, mm. */
export interface MarginUnder {
  /** How far it reaches in from the feather line. */
  readonly reachMm: number;
  /** How thick it is at a distance inside the feather line, at a place along the flat bottom and on the inner or outer side. */
  readonly thicknessMm: (insideMm: number, x: number, inner: boolean) => number;
}

/** Upper and lining, and what skiving left of stiffener and puff where they are. A margin cut narrower than it is trimmed to reaches only so far. */
export function marginUnder(net: NetBottom, settings: PieceSettings, reach: StiffReach): MarginUnder {
  const { lastingToeMm, lastingToeSidesMm, lastingForepartMm, lastingOuterWaistMm, lastingInnerWaistMm, lastingHeelMm } = settings;
  const cut = Math.min(lastingToeMm, lastingToeSidesMm, lastingForepartMm, lastingOuterWaistMm, lastingInnerWaistMm, lastingHeelMm);
  const reachMm = Math.max(0, Math.min(settings.marginLeftMm, cut));
  const liningMm = Math.min(reachMm, cut - settings.liningLastingShorterMm);
  const ends = {
    inner: edgePoint(net.ring, edgeLength(net.ring) - reach.counterInnerMm)[0],
    outer: edgePoint(net.ring, reach.counterOuterMm)[0],
    toe: net.toePoint[0] - reach.puffReachMm,
  };
  const counter = Math.min(settings.stiffLeftMm, reach.counterMm), puff = Math.min(settings.stiffLeftMm, settings.toePuffMm);
  return {
    reachMm,
    thicknessMm: (insideMm, x, inner) =>
      settings.upperThicknessMm
      + (insideMm <= liningMm ? settings.liningThicknessMm : 0)
      + (x < (inner ? ends.inner : ends.outer) ? counter : x > ends.toe ? puff : 0),
  };
}
