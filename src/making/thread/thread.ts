import type { Stitched } from "#pieces/stitching.ts";
import { needleForTicket } from "./needle-sizes.ts";
import { handRatio, lockstitchRatio, stitchMm, zigzagRatio } from "./stitch-thread.ts";
import { threadDiameter, ticketToTex } from "./thread-numbers.ts";
import type { ThreadNeed, ThreadOfSeam } from "./thread-need.ts";

/** How the thread is reckoned. */
export interface ThreadSettings {
  /** Metric ticket number. */
  readonly ticket: number;
  readonly stitchesPerCm: Readonly<Record<Stitched["use"], number>>;
  /** How far a zigzag goes across at each stitch, mm. */
  readonly zigzagMm: number;
  /** Left hanging at each end of a row, each thread, mm. */
  readonly endMm: number;
  readonly wasteShare: number;
}

/**
 * Polyester number 60; 5 to 6 stitches to the cm along the topline, 4 to 5 in seams, 3.5 to 4 in what is sewn on to be seen (common practice, no
 * source). Ends long enough to knot or to pull through (our own). Waste 10 to 15 % by a page on the science of apparel; the upper figure, since
 * one pair has more beginnings to the metre than a factory.
 */
export const usualThread: ThreadSettings = {
  ticket: 60,
  stitchesPerCm: { topline: 5.5, closing: 4.5, lapped: 4.5, lining: 4.5, trimming: 4 },
  zigzagMm: 3,
  endMm: 60,
  wasteShare: 0.15,
};

const shoes = 2;
/** Needle and bobbin thread share a seam alike where the stitch is well set, and a row has two ends. */
const threads = 2, rowEnds = 2;

/** Thread and needle for all seams of one pair. Method: docs/method/thread.md. */
export function threadFor(stitching: readonly Stitched[], own: Partial<ThreadSettings> = {}): ThreadNeed {
  const settings = { ...usualThread, ...own };
  const { ticket, endMm, wasteShare } = settings;
  const seams = stitching.map((line) => ofSeam(line, settings));
  const tex = ticketToTex(ticket), needle = needleForTicket(ticket);
  const seamMm = sum(seams.map((seam) => seam.seamMm));
  const endsMm = sum(stitching.map(({ rows }) => shoes * rows * rowEnds * threads * endMm));
  const totalMm = (sum(seams.map(({ threadMm }) => threadMm)) + endsMm) * (1 + wasteShare);
  return {
    ticket, tex, diameterMm: threadDiameter(tex), needle, seams, seamMm, endsMm, wasteShare,
    topMm: totalMm / 2, bobbinMm: totalMm / 2, totalMm,
    reason: reasonFor(ticket, seams),
    byHand: `Sewn by hand with two needles a seam takes about ${handRatio} times its length: some ${metres(handRatio * seamMm)} for all ${metres(seamMm)} of stitching, cut in lengths no longer than your arms reach.`,
    source: "Thread of a lockstitch by C = 2 + 2TS (textile handbooks); waste 10 to 15 % (a page on apparel science); four times the seam by hand (sewers' rule). Thread number and stitches to the cm: common practice, no source.",
  };
}

function ofSeam({ name, lengthMm, rows, stackMm, stitch, use }: Stitched, { stitchesPerCm, zigzagMm }: ThreadSettings): ThreadOfSeam {
  const perCm = stitchesPerCm[use], seamMm = shoes * rows * lengthMm;
  const ratio = stitch === "zigzag" ? zigzagRatio(stitchMm(perCm), zigzagMm, stackMm) : lockstitchRatio(stitchMm(perCm), stackMm);
  return { name, seamMm, stitch, stitchesPerCm: perCm, stackMm, ratio, threadMm: seamMm * ratio };
}

/** Up to here a fine thread still closes light leather, and from here it is as coarse as ornament asks for; metric tickets. */
const fineFrom = 80, coarseTo = 40;

function reasonFor(ticket: number, seams: readonly ThreadOfSeam[]): string {
  const thickest = seams.reduce((most, { stackMm }) => Math.max(most, stackMm), 0);
  const stack = thickest > 0 ? ` At the thickest place ${thickest.toFixed(1)} mm lie under the needle.` : "";
  if (ticket >= fineFrom) return `A fine thread that shows little; for light kid, where little pulls on the seams.${stack}`;
  if (ticket <= coarseTo) return `A coarse thread that is meant to be seen; set the stitches wider, or the holes tear into each other.${stack}`;
  return `Polyester holds, hardly stretches and does not rot. This number is strong enough for the seams of a light pump and still lies fine along the topline.${stack}`;
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const metres = (mm: number): string => `${(mm / 1000).toFixed(1)} m`;
