import type { Stitched } from "#pieces/stitching.ts";
import { needleForTicket } from "../thread/needle-sizes.ts";
import { perInch, stitchMm } from "../thread/stitch-thread.ts";
import { usualThread } from "../thread/thread.ts";
import { digits, mm } from "./words.ts";

/** "4.5 stitches to the centimetre (2.2 mm each, 11 to the inch)". */
export function stitchesWords(use: Stitched["use"]): string {
  const perCm = usualThread.stitchesPerCm[use];
  return `${digits(perCm)} stitches to the centimetre (${stitchMm(perCm).toFixed(1)} mm each, ${perInch(stitchMm(perCm)).toFixed(0)} to the inch)`;
}

/** "Thread 60, needle 90 (14)". */
export function threadWords(): string {
  const { nm, us } = needleForTicket(usualThread.ticket);
  return `thread ${usualThread.ticket}, needle ${nm} (${us})`;
}

/** "1.5 mm from the edge". */
export const insideEdge = (stitchInMm: number): string => `${mm(stitchInMm)} from the edge`;
