import { reversed } from "#plane/along.ts";
import { cutAtCrossing, extendEnd, extendStart } from "#plane/join.ts";
import { lengthOf } from "#plane/measure.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Xy } from "../piece.ts";
import type { Finish } from "./allowance.ts";

/** One edge on its way to be cut. */
export interface Bank {
  readonly finish: Finish;
  /** Cutting line as far as its corners are made. */
  readonly cut: Polyline;
  /** Line that is sewn, folded, laid or trimmed by, likewise. */
  readonly line: Polyline;
  /** Cutting line and line as they were before any corner. */
  readonly rawCut: Polyline;
  readonly rawLine: Polyline;
  readonly widestMm: number;
}

/** Two edges brought to their common corner, and where their lines meet. */
export interface Corner {
  readonly before: Bank;
  readonly after: Bank;
  readonly at: Xy;
  /** A cut from the cutting line inward that the corner needs to be turned. */
  readonly snip?: readonly [Xy, Xy];
}

export const lastOf = ({ xy }: Polyline): Xy => [xy[xy.length - 2]!, xy[xy.length - 1]!];
export const firstOf = ({ xy }: Polyline): Xy => [xy[0]!, xy[1]!];

/** The bank walked the other way. */
export const turned = (bank: Bank): Bank => ({
  ...bank,
  cut: reversed(bank.cut),
  line: reversed(bank.line),
  rawCut: reversed(bank.rawCut),
  rawLine: reversed(bank.rawLine),
});

/** Far enough to run on to a corner, mm. */
export const reachOf = (a: Bank, b: Bank): number => 3 * Math.max(a.widestMm, b.widestMm) + 12;

/** Both lines run on straight until they meet. Where they never do, they stay as they are. */
export function runOn(before: Polyline, after: Polyline, reachMm: number): { readonly before: Polyline; readonly after: Polyline } {
  // What another corner has left nothing of has no direction to run on in.
  if (touch(lastOf(before), firstOf(after)) || lengthOf(before) < leastMm || lengthOf(after) < leastMm) return { before, after };
  return cutAtCrossing(extendEnd(before, reachMm), extendStart(after, reachMm)) ?? { before, after };
}

const leastMm = 1e-6;
const touch = (a: Xy, b: Xy): boolean => Math.abs(a[0] - b[0]) < 1e-9 && Math.abs(a[1] - b[1]) < 1e-9;

/** Where two lines meet once they run on. */
export function meetingOf(before: Polyline, after: Polyline, reachMm: number): Xy {
  return firstOf(runOn(before, after, reachMm).after);
}
