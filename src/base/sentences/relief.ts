import { sentence } from "../sentence.ts";
import { halfName } from "./names.ts";

const range = (a: number, b: number, digits: number): string => (a.toFixed(digits) === b.toFixed(digits) ? a.toFixed(digits) : `${a.toFixed(digits)} to ${b.toFixed(digits)}`);

const zoneName: Readonly<Record<string, string>> = { toe: "round the toe", waist: "at joint and waist", heel: "beside the heel line" };

const openness = (least: number, most: number): string => {
  if (most <= 0) return `their edges lap by ${range(-most, -least, 1)} mm on the flat card`;
  if (least < 0) return `on the flat card they stand between ${(-least).toFixed(1)} mm lapped and ${most.toFixed(1)} mm open`;
  return `they stand open by ${range(least, most, 1)} mm on the flat card`;
};

const seamWords: Readonly<Record<string, { readonly name: string; readonly hand: string }>> = {
  "back": { name: "Back seam alone", hand: "One piece that is easy to close and to true at the heel; the toe is pleated under as on any whole cut." },
  "inner-waist": { name: "Seam at the inner waist, back closed", hand: "A clean heel, but its bulge has to come out of the leather: draw it over the heel damp, and choose a leather that gives." },
  "sides": { name: "Two side seams, back closed", hand: "Vamp and back part nest well in the skin and the heel is clean, but the back part has to be drawn over the heel's bulge." },
  "back-and-inner-waist": { name: "Back seam and one at the inner waist", hand: "Two pieces; the second seam serves the skin, hardly the fit." },
  "back-and-sides": { name: "Back seam and two side seams", hand: "Vamp and two quarters; the side seams serve the skin, hardly the fit, and there is most to stitch." },
};

const worth = (percent: number): string => {
  if (Math.abs(percent) < 0.5) return "as much pulling and gathering as with the back seam alone";
  return `${Math.abs(percent).toFixed(Math.abs(percent) < 10 ? 1 : 0)} % ${percent > 0 ? "less" : "more"} pulling and gathering than with the back seam alone`;
};

export const reliefSentences = {
  "nicks-none": sentence("note", (_: object) => "The card needs no nicks: it lies down as it is."),
  "nicks-cut": sentence(
    "note",
    (d: { zone: string; count: number; shortestMm: number; longestMm: number; leastOpenMm: number; mostOpenMm: number; percent: number }) =>
      `Nick the card ${zoneName[d.zone] ?? ""} in ${d.count} ${d.count === 1 ? "place" : "places"}, ${range(d.shortestMm, d.longestMm, 0)} mm in from the feather edge; ${openness(d.leastOpenMm, d.mostOpenMm)}. That takes away ${d.percent.toFixed(0)} % of the pulling and gathering.`,
  ),
  "feather-not-true": sentence(
    "look",
    (d: { half: string; longerMm: number; leastMm: number; mostMm: number; drawnMm: number }) =>
      `Even with its nicks the card's feather edge is ${Math.abs(d.longerMm).toFixed(1)} mm ${d.longerMm > 0 ? "longer" : "shorter"} on the ${halfName(d.half)} half than where it lies, over lining, stiffener and puff; ${d.leastMm} to +${d.mostMm.toFixed(1)} mm is usual${d.drawnMm < 0.05 ? "" : `, ${d.drawnMm.toFixed(1)} mm of that from the shorter topline`}. ${d.longerMm > 0 ? "More nicks would hardly change that: expect more fine pleats in lasting, most of them here." : "Leave more lasting allowance there."}`,
  ),
  "no-slit-topline": sentence("note", (_: object) => "Never slit the topline: its length decides whether the shoe holds the foot, and every cut there shows."),
  "no-slit-back": sentence("note", (_: object) => "Never slit into the back curve: its shape and length make the heel's grip and the back height. Nick the feather edge 10 to 15 mm beside it instead."),
  "no-slit-centre": sentence("note", (_: object) => "Never slit the front centre between throat and toe: it is the fold and the line both halves are laid on. Push what is left over out to the feather edge."),
  "seam-worth": sentence("note", (d: { seam: string; percent: number; seamMm: number; givePercent: number; gatherPercent: number }) => {
    const { name, hand } = seamWords[d.seam] ?? { name: "This seam", hand: "" };
    const what = d.seam === "back" ? "what the others are measured by" : worth(d.percent);
    return `${name} (${d.seamMm.toFixed(0)} mm of seam): ${what}; at most the leather stretches by ${d.givePercent.toFixed(0)} % and is gathered by ${d.gatherPercent.toFixed(0)} %. ${hand}`;
  }),
  "tried-on-own-halves": sentence(
    "note",
    (d: { offMeanMm: number }) =>
      `Trying the pattern out, nicks, lengths and gaping are found on the card with each half's own shape; the mean form that the pieces are cut to lies up to ${d.offMeanMm.toFixed(1)} mm off it.`,
  ),
  "halves-differ": sentence(
    "look",
    (d: { fromThroatMm: number; offMeanMm: number; limitMm: number; inward: string }) =>
      `Inside and outside lie ${d.offMeanMm.toFixed(1)} mm off their mean ${d.fromThroatMm.toFixed(0)} mm behind the throat along the topline, the ${halfName(d.inward)} one farther in; more than ${d.limitMm} mm shows on the foot. Keep the two halves separate.`,
  ),
  "halves-alike": sentence("note", (d: { offMeanMm: number; fromThroatMm: number }) => `Inside and outside lie within ${d.offMeanMm.toFixed(1)} mm of their mean along the topline (most ${d.fromThroatMm.toFixed(0)} mm behind the throat): one mean form can serve both. For pumps most makers still keep them separate.`),
};
