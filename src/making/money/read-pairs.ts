import { finding, type Finding } from "#base/findings.ts";
import { readFigure } from "../amounts/read-figure.ts";
import type { Written } from "../said.ts";

/** Above `plenty` what holds at a bench holds no more; above `most` nothing is reckoned. */
export const pairsLimits = { plenty: 50, most: 10_000 } as const;

/** How many pairs are made together: one where nothing is said, or nothing that can be read. */
export function readPairs(written: Written | undefined, findings: Finding[]): number {
  if (written === undefined || (typeof written === "string" && written.trim() === "")) return 1;
  const got = String(written);
  const read = readFigure(typeof written === "number" ? written : written.trim().replace(/\s*pairs?$/i, ""), "whole");
  const pairs = read.wrong === undefined ? read.value : undefined;
  if (read.wrong === "huge" || (pairs !== undefined && pairs > pairsLimits.most)) {
    findings.push(finding("money-pairs-most", { got, most: pairsLimits.most }));
    return pairsLimits.most;
  }
  if (pairs === undefined || pairs < 1 || !Number.isInteger(pairs)) {
    findings.push(finding("money-pairs", { got, most: pairsLimits.most }));
    return 1;
  }
  // "1,000" and "1.000" were read as a thousand; who meant one has to hear it.
  if (typeof written === "string" && /\d[.,]\d/.test(written)) findings.push(finding("money-pairs-read", { got, pairs }));
  if (pairs > pairsLimits.plenty) findings.push(finding("money-pairs-many", { pairs }));
  return pairs;
}
