import { sentence } from "../sentence.ts";
import { measureName } from "./names.ts";

const mm = (v: number): string => `${v.toFixed(0)} mm`;
const mm1 = (v: number): string => `${v.toFixed(1)} mm`;
const drawnRound = (which: string): string => (which === "bottom" ? "The outline drawn round the bottom" : "The outline drawn from the side");

/** What a form leaves of an outline, mm: root mean square of all and by region, and the worst place. */
interface LeftOfOutline {
  readonly which: string;
  readonly rmsMm: number;
  readonly worstMm: number;
  readonly where: string;
  readonly byRegion: Readonly<Record<string, number>>;
}
const byRegion = (d: LeftOfOutline): string =>
  Object.entries(d.byRegion)
    .map(([name, v]) => `${name} ${v.toFixed(2)}`)
    .join(", ");

/** A last made from measures and drawn outlines. */
export const madeSentences = {
  "outline-broken": sentence(
    "stop",
    (d: { which: string }) => `${drawnRound(d.which)} is not one closed line round a last. Draw it once more in one go, with a thin dark line, and photograph it with the card beside it.`,
  ),
  "outline-other-last": sentence(
    "stop",
    (d: { which: string; lengthMm: number; stickMm: number; pencilMm: number }) =>
      `${drawnRound(d.which)} makes the last ${mm1(d.lengthMm)} long; the stick length is ${mm1(d.stickMm)}. That is another last, or a wrong scale: measure the card's bar and the last once more.`,
  ),
  "outline-length": sentence(
    "look",
    (d: { which: string; lengthMm: number; stickMm: number; pencilMm: number }) =>
      `${drawnRound(d.which)} makes the last ${mm1(d.lengthMm)} long (pencil of ${mm1(d.pencilMm)} taken off), the stick length is ${mm1(d.stickMm)}. The stick length was kept and the outline scaled to it. Measure the last once more; check that the paper lay flat and the last stood on its heel block.`,
  ),
  "outline-pencil": sentence(
    "note",
    (d: { pencilMm: number }) => `The outline is longer than the last; ${mm1(d.pencilMm)} of that was taken for the pencil, half on each side. Measure your pencil: if it is thinner, the last or the scale differs.`,
  ),
  "outline-narrower": sentence(
    "stop",
    (d: { measure: string; askedMm: number; outlineMm: number }) =>
      `The outline of the bottom is ${mm1(d.outlineMm)} wide where the ${measureName(d.measure)} is given as ${mm1(d.askedMm)}. From above a last is nowhere narrower than its bottom: measure the ${measureName(d.measure)} from feather edge to feather edge once more, or draw the outline anew with the pencil upright.`,
  ),
  "outline-width": sentence(
    "look",
    (d: { measure: string; askedMm: number; outlineMm: number }) =>
      `The outline of the bottom is ${mm1(d.outlineMm)} wide where the ${measureName(d.measure)} is given as ${mm1(d.askedMm)}: ${d.outlineMm < d.askedMm ? "a last is nowhere narrower from above than its bottom" : "walls seldom stand out that far"}. Look whether the pencil was held upright and the width taken from feather edge to feather edge at the widest place.`,
  ),
  "outline-spring": sentence(
    "look",
    (d: { askedMm: number; outlineMm: number }) =>
      `From the side the toe lies about ${mm1(d.outlineMm)} over the ground, the toe spring is given as ${mm1(d.askedMm)}. The number was kept. Stand the last on its heel block and measure under the toe once more, and under the seat.`,
  ),
  "outline-side-doubtful": sentence("look", () => "Inside and outside of the drawn bottom differ little, so which is which is not sure. Look whether the hollow of the waist is on the right side."),
  "outline-unlike": sentence(
    "stop",
    (d: { which: string; offMm: number }) =>
      `${drawnRound(d.which)} lies ${mm1(d.offMm)} on average from a last of these measures, so it is not its ${d.which === "bottom" ? "bottom" : "side"}. Look whether the two outlines were swapped, and whether the last lay flat when it was drawn.`,
  ),
  "outline-followed": sentence(
    "note",
    (d: LeftOfOutline) => `${drawnRound(d.which)} is followed within ${d.rmsMm.toFixed(2)} mm (root mean square; ${byRegion(d)}), ${mm1(d.worstMm)} at most, at the ${d.where}.`,
  ),
  "outline-left": sentence(
    "look",
    (d: LeftOfOutline) =>
      `${drawnRound(d.which)} could not be followed: ${d.rmsMm.toFixed(2)} mm are left (root mean square; ${byRegion(d)}), ${mm1(d.worstMm)} at the ${d.where}. It does not go with the measures there: look for a slip of the pencil, and measure widths and girths near it once more.`,
  ),
  "shape-from-outlines": sentence(
    "note",
    (d: { outlines: string; typicalMm: number; worstMm: number }) =>
      `This last is built from numbers and ${d.outlines}. Away from the drawn lines its surface may lie ${mm1(d.typicalMm)} off on average and ${mm(d.worstMm)} in places, most at waist and instep. Hold a card of the pattern to your own last before you cut leather.`,
  ),
  "measure-not-met": sentence(
    "stop",
    (d: { measure: string; askedMm: number; reachedMm: number }) =>
      `With these numbers the ${measureName(d.measure)} comes to ${mm1(d.reachedMm)} instead of ${mm1(d.askedMm)}: together they make no last of this form. Measure it once more, and the girths near it.`,
  ),
  "girth-against-outlines": sentence(
    "stop",
    (d: { measure: string; askedMm: number; nearestMm: number; outlines: string }) =>
      `The ${measureName(d.measure)} asked for (${mm1(d.askedMm)}) does not go with ${d.outlines}: the nearest that fits is about ${mm(d.nearestMm)}. Measure the girth once more, look at the outlines, or leave one of them out.`,
  ),
  "measures-need-size": sentence("stop", () => "Enter a size or a stick length: everything else can be taken from it."),
  "size-out-of-range": sentence("stop", (d: { sizeEu: number }) => `Size ${Number.isFinite(d.sizeEu) ? String(Number(d.sizeEu.toFixed(1))) : "?"} is not a woman's EU size (28 to 48). Enter an EU size, or the stick length in millimetres.`),
  "fitting-out-of-range": sentence("stop", (d: { fitting: number }) => `Fitting ${d.fitting} is not known; fittings run from 2 (narrow) to 11 (wide), 6 is medium. Or leave it out and enter the joint girth.`),
  "measures-do-not-match": sentence(
    "look",
    (d: { measure: string; askedMm: number; against: string; againstMm: number; fromMm: number; toMm: number; offMm: number; slip: string }) =>
      `The ${measureName(d.measure)} (${mm1(d.askedMm)}) and the ${measureName(d.against)} (${mm1(d.againstMm)}) hardly belong to one last: beside that ${measureName(d.against)}, ${mm(d.fromMm)} to ${mm(d.toMm)} is usual, so it is ${mm1(d.offMm)} off. A slip would be: ${d.slip}. Both were kept; measure them once more.`,
  ),
  "measure-against-size": sentence(
    "look",
    (d: { measure: string; askedMm: number; sizeEu: number; fromMm: number; toMm: number; offMm: number; slip: string }) =>
      `The ${measureName(d.measure)} (${mm1(d.askedMm)}) does not fit size ${Number(d.sizeEu.toFixed(1))}: ${mm(d.fromMm)} to ${mm(d.toMm)} is usual, so it is ${mm1(d.offMm)} off. Perhaps ${d.slip}. The measured number was kept.`,
  ),
  "measures-impossible": sentence(
    "stop",
    (d: { measure: string; askedMm: number; against: string; againstMm: number; leastMm: number; why: string }) =>
      `The ${measureName(d.measure)} (${mm1(d.askedMm)}) cannot belong to the ${measureName(d.against)} (${mm1(d.againstMm)}): ${d.why}, so it is at least ${mm(d.leastMm)}. One of the two was misread or entered in the wrong place.`,
  ),
};
