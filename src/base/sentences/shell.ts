import { sentence } from "../sentence.ts";
import { halfName } from "./names.ts";

export const shellSentences = {
  "stretch-high": sentence(
    "look",
    (d: { percent: number }) => `Between the flat pattern and the last the leather must stretch by ${d.percent.toFixed(0)} % at the marked place; more than 15 % may tear or stay thin. Try a softer line there, a smaller spring, or a cut with more seams.`,
  ),
  "surface-empty": sentence("stop", (_: object) => "There is no surface between the feather line and the topline to lay flat. Check the two lines."),
  "surface-in-parts": sentence("stop", (d: { parts: number }) => `The surface to be laid flat falls into ${d.parts} parts; one piece lies in one. Check that the lines do not cut it through.`),
  "surface-closed": sentence("stop", (_: object) => "The surface to be laid flat has no edge at all: it is closed like a ball or a ring. It must be cut open first."),
  "surface-with-holes": sentence("stop", (d: { rims: number }) => `The surface to be laid flat has ${d.rims} separate edges where one is possible: close its holes or cut through to them.`),
  "surface-with-handle": sentence("stop", (_: { handles: number }) => "The surface to be laid flat runs round like a handle or a ring and cannot lie flat in one piece. Cut it open or repair the scan there."),
  "surface-branches": sentence("stop", (d: { triangle: number }) => `At triangle ${d.triangle} more than two sheets of surface meet in one edge, or its neighbours face opposite ways. Repair the scan there.`),
  "surface-pinched": sentence("stop", (d: { vertex: number }) => `At point ${d.vertex} the surface hangs together by a single point. Widen it or cut it off there.`),
  "surface-point-twice": sentence("stop", (d: { triangle: number }) => `Triangle ${d.triangle} has two corners in one place, or a corner that is no number. Clean the scan and try again.`),
  "surface-too-crumpled": sentence("stop", (_: object) => "The surface is too deep or too crumpled to be laid flat in one piece. Smooth the scan, or give the piece another seam."),
  "surface-does-not-settle": sentence("stop", (d: { moveMm: number; steps: number }) => `The flat pattern does not come to rest: after ${d.steps} steps it still moves${Number.isFinite(d.moveMm) ? ` ${d.moveMm.toFixed(2)} mm` : ""}. Smooth the scan, or give the piece another seam.`),
  "flat-pattern-folds": sentence(
    "look",
    (d: { triangles: number }) => `The flat pattern folds over in ${d.triangles} small places; it cannot be trusted there. Check the last's surface or choose a smaller spring.`,
  ),
  "flat-kept-apart": sentence("look", (_: object) => "Laid flat, the piece would lie over itself; its edges were pushed apart, and the leather pays for it with more stretch there. Choose a smaller spring, or give the piece another seam."),
  "spring-too-wide": sentence("stop", (d: { springMm: number; leastMm: number; mostMm: number }) => {
    const why = d.springMm > 0 ? "the heel ends of the upper and the lining laid flat would not leave room for a seam between them" : "it would swing the heel ends of the flat pattern farther apart than any pump asks for";
    return `A spring of ${d.springMm.toFixed(1)} mm cannot be laid: ${why}. Choose one from ${d.leastMm} (apart) to ${d.mostMm} mm (together); a few millimetres are usual.`;
  }),
  "heel-ends-near": sentence("look", (d: { gapMm: number; leastMm: number; springMm?: number }) => {
    const spring = d.springMm === undefined ? "" : `, or set the spring to ${d.springMm} mm${d.springMm < 0 ? ", which swings them apart" : ""}`;
    return `The heel ends of the flat pattern come within ${d.gapMm.toFixed(0)} mm of each other; seam and fold need ${d.leastMm} mm. Shorten the topline less${spring}.`;
  }),
  "shell-setting-unusual": sentence("note", (d: { name: string; value: number; min: number; max: number; unit: "mm" | "share" }) => {
    const say = (n: number): string => (d.unit === "share" ? `${(100 * n).toFixed(2).replace(/\.?0+$/, "")} %` : `${n.toFixed(1)} mm`);
    return `The ${d.name} is ${say(d.value)}; usual is ${say(d.min)} to ${say(d.max)}. Sew a trial in scrap before you cut.`;
  }),
  "shell-setting-impossible": sentence("stop", (d: { name: string; value: number; least: number; most: number }) => `The ${d.name} cannot be ${String(d.value)}. Give a number of millimetres from ${d.least} to ${d.most}.`),
  "topline-shorter-impossible": sentence("stop", (d: { percent: number; mostPercent: number }) => `The topline cannot be cut ${d.percent.toFixed(1)} % shorter than on the last. Choose 0 to ${d.mostPercent} %; 2 to 3 % are usual for kid and calf.`),
  "topline-cannot-be-drawn": sentence("stop", (d: { byMm: number }) => `The topline cannot be drawn together by ${d.byMm.toFixed(0)} mm along where it lies: the heel ends of the flat pattern would run into each other. Shorten the topline less, or make what lies beneath the upper thinner.`),
  "topline-not-reached": sentence("look", (d: { half: "medial" | "lateral"; askedMm: number; gotMm: number }) => `The ${halfName(d.half)} half of the topline should be ${d.askedMm.toFixed(1)} mm shorter than on the last and comes out ${d.gotMm.toFixed(1)} mm shorter. Ask for less, or cut it by hand.`),
  "topline-stretches-far": sentence("look", (d: { percent: number; mostPercent: number }) => `From the card to the shoe the topline must stretch by ${d.percent.toFixed(1)} % where it stretches most; such leather gives about ${d.mostPercent.toFixed(0)} % along its tight way under a firm pull by hand. Shorten the topline less, or test a strip of your leather.`),
  "spring-alone": sentence("note", (d: { springMm: number }) => `A spring of ${d.springMm.toFixed(1)} mm turns the flanks inward but leaves the topline as long as on the last, so it will not grip by itself. For that, let it be cut shorter.`),
  "puff-near-throat": sentence("note", (d: { askedMm: number; reachMm: number; leaveMm: number }) => `The toe puff should reach back ${d.askedMm.toFixed(0)} mm but must end ${d.leaveMm} mm before the throat; it was taken ${d.reachMm.toFixed(0)} mm long.`),
  "beneath-folds": sentence("look", (d: { triangles: number }) => `At the marked place the last is hollowed more tightly than lining, stiffener and puff are thick (${d.triangles} small places); the upper's size is not certain there. Choose thinner ones, or smooth the last's surface.`),
  "topline-crosses-feather": sentence("stop", (_: object) => "The topline leaves the upper's surface: a side is too low or the throat too near the toe. Raise the side heights or lengthen the throat depth."),
  "bottom-open": sentence("stop", (d: { xMm: number }) => `The bottom of the last has a hole ${d.xMm.toFixed(0)} mm from the seat point. Scan the last again with its bottom covered.`),
};
