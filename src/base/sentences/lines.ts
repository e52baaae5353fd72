import { sentence } from "../sentence.ts";

const mm = (n: number) => n.toFixed(1);

/** A value of a rule as it is said: shares of the length in per cent. */
const figure = (value: number, unit: string): number => Math.round(unit === "of length" ? 1000 * value : 10 * value) / 10;
const amount = (value: number, unit: string): string => `${figure(value, unit)} ${unit === "of length" ? "% of the length" : unit}`;

export const lineSentences = {
  "throat-behind-vamp-point": sentence(
    "look",
    (d: { throatMm: number; vampPointMm: number }) =>
      `The throat lies ${mm(d.throatMm)} mm from the toe, behind the vamp point at ${mm(d.vampPointMm)} mm: it will cut into the instep. Shorten the throat depth.`,
  ),
  "throat-close-to-vamp-point": sentence(
    "note",
    (d: { aheadMm: number }) => `The throat lies only ${mm(d.aheadMm)} mm in front of the vamp point; 5 to 20 mm is usual for a pump without strap.`,
  ),
  "line-out-of-range": sentence(
    "look",
    (d: { what: string; value: number; min: number; max: number; unit: string; whyItMatters: string }) =>
      `The ${d.what} is ${amount(d.value, d.unit)}; ${figure(d.min, d.unit)} to ${amount(d.max, d.unit)} is usual. ${d.whyItMatters}`,
  ),
  "line-beyond-last": sentence(
    "stop",
    (d: { what: string; value: number; most: number; unit: string }) =>
      `The ${d.what} of ${amount(d.value, d.unit)} does not fit on this last, which allows ${amount(d.most, d.unit)} at most. Enter a smaller value.`,
  ),
  "line-too-small": sentence(
    "stop",
    (d: { what: string; value: number; least: number; unit: string }) =>
      `The ${d.what} of ${amount(d.value, d.unit)} is too small to draw; at least ${amount(d.least, d.unit)} is needed. Enter a larger value.`,
  ),
  "back-near-comb": sentence(
    "look",
    (d: { backMm: number; combMm: number }) =>
      `The back stands ${mm(d.backMm)} mm high and the comb of this last begins near ${mm(d.combMm)} mm: a topline so close to the edge cannot be lasted cleanly. Lower the back.`,
  ),
  "line-not-a-number": sentence("stop", (d: { what: string }) => `The ${d.what} must be a number greater than zero.`),
  "topline-crosses-joint": sentence(
    "look",
    (d: { half: string; belowMm: number }) =>
      `On the ${d.half} side the topline comes within ${mm(d.belowMm)} mm of the feather line at the joint: it must pass well above and behind it, or it rubs and splits there. Raise the side or move its lowest place toward the heel.`,
  ),
  "lowest-elsewhere": sentence(
    "look",
    (d: { half: string; askedMm: number; lowestMm: number; alongFeatherMm: number }) =>
      `On the ${d.half} side you asked for ${mm(d.askedMm)} mm at the lowest place, but the line falls to ${mm(d.lowestMm)} mm, ${d.alongFeatherMm.toFixed(0)} mm along the feather line from the seat point. Move the lowest place there, or raise the side.`,
  ),
  "topline-rises-to-hump": sentence(
    "look",
    (d: { half: string }) => `On the ${d.half} side the back is lower than the flank, so the topline makes a hump there. Raise the back or lower the side.`,
  ),
  "surface-open": sentence(
    "stop",
    (d: { xMm: number; heightMm: number }) =>
      `The surface of the last ends ${mm(d.heightMm)} mm above the feather line, ${mm(d.xMm)} mm from the seat point: there is a hole, a gap (as between toes), an edge or too low a comb where the upper must lie. Scan the last again with that place covered.`,
  ),
};
