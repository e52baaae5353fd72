import type { ShellSettings } from "#shell/settings.ts";
import type { PartChoices } from "../choices.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";
import type { NetBottom } from "./net-bottom.ts";

/** What the bottom needs of the shell's settings: how far stiffener and puff reach. */
export type StiffReach = Pick<ShellSettings, "counterMm" | "counterInnerMm" | "counterOuterMm" | "puffReachMm">;

/** What else may be lasted under with upper and lining. */
export type LastedExtras = Pick<PartChoices, "toeCap" | "backStrip" | "sideLining">;

/** The lasting margin as it lies on the insole once it is trimmed, mm. */
export interface MarginUnder {
  /** How far it reaches in from the feather line. */
  readonly reachMm: number;
  /** How thick it is at a distance inside the feather line, at a place along the flat bottom and across it from its middle, above 0 on the inner side. */
  readonly thicknessMm: (insideMm: number, x: number, y: number) => number;
}

/**
 * Upper and lining, what skiving left of stiffener and puff where they are, side linings between the two, and the upper's leather once more
 * under a toe cap and a back strip. A margin cut narrower than it is trimmed to reaches only so far.
 */
export function marginUnder(net: NetBottom, settings: PieceSettings, reach: StiffReach, extras: LastedExtras): MarginUnder {
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
  const side = extras.sideLining ? settings.sideLiningMm : 0;
  const capX = extras.toeCap ? capFromX(net, settings) : Infinity;
  const stripY = extras.backStrip ? settings.backStripFeatherMm / 2 : 0;
  const heelX = net.breastX / 2;
  return {
    reachMm,
    thicknessMm: (insideMm, x, y) =>
      settings.upperThicknessMm * (x > capX || (x < heelX && Math.abs(y) < stripY) ? 2 : 1)
      + (insideMm <= liningMm ? settings.liningThicknessMm : 0)
      + (x < (y >= 0 ? ends.inner : ends.outer) ? counter : x > ends.toe ? puff : side),
  };
}

/** Where a cap's edge meets the feather line: its ends lie nearer to the toe than its middle by its bow. */
export const capFromX = (net: NetBottom, { toeCapMm, toeCapBowMm }: Pick<PieceSettings, "toeCapMm" | "toeCapBowMm">): number => net.toePoint[0] - toeCapMm + toeCapBowMm;
