import { sentence } from "../sentence.ts";

const mm = (v: number): string => `${v.toFixed(0)} mm`;
const mm1 = (v: number): string => `${v.toFixed(1)} mm`;
const drawnRound = (which: string): string => (which === "bottom" ? "The outline drawn round the bottom" : "The outline drawn from the side");
const ofMeasure: Readonly<Record<string, string>> = {
  stickLength: "stick length",
  jointGirth: "joint girth",
  waistGirth: "waist girth",
  instepGirth: "instep girth",
  heelGirth: "heel girth",
  ballWidth: "ball width",
  seatWidth: "seat width",
  heelHeight: "heel height",
  toeSpring: "toe spring",
};
const measureName = (m: string): string => ofMeasure[m] ?? m;

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
  "outline-width": sentence(
    "look",
    (d: { measure: string; askedMm: number; outlineMm: number }) =>
      d.outlineMm < d.askedMm
        ? `The outline of the bottom is ${mm1(d.outlineMm)} wide where the ${measureName(d.measure)} is given as ${mm1(d.askedMm)}: a last is nowhere narrower from above than its bottom. Measure the ${measureName(d.measure)} from feather edge to feather edge once more.`
        : `The outline of the bottom is ${mm1(d.outlineMm)} wide where the ${measureName(d.measure)} is given as ${mm1(d.askedMm)}: walls seldom stand out that far. Was the pencil held upright, and the width taken across the widest place?`,
  ),
  "outline-spring": sentence(
    "look",
    (d: { askedMm: number; outlineMm: number }) =>
      `From the side the toe lies about ${mm1(d.outlineMm)} over the ground, the toe spring is given as ${mm1(d.askedMm)}. The number was kept. Stand the last on its heel block and measure under the toe once more, and under the seat.`,
  ),
  "outline-side-doubtful": sentence("look", () => "Inside and outside of the drawn bottom differ little, so which is which is not sure. Look whether the hollow of the waist is on the right side."),
  "outline-side-unlike": sentence(
    "look",
    (d: { offMm: number }) => `The outline from the side lies ${mm1(d.offMm)} on average from a last of these measures. Look whether it was drawn with the last flat on its side, and whether it lies the right way up here.`,
  ),
  "outline-followed": sentence(
    "note",
    (d: { which: string; rmsMm: number; worstMm: number; where: string }) => `${drawnRound(d.which)} is followed within ${d.rmsMm.toFixed(2)} mm (root mean square), ${mm1(d.worstMm)} at most, at the ${d.where}.`,
  ),
  "outline-left": sentence(
    "look",
    (d: { which: string; rmsMm: number; worstMm: number; where: string }) =>
      `${drawnRound(d.which)} could not be followed: ${d.rmsMm.toFixed(2)} mm are left (root mean square), ${mm1(d.worstMm)} at the ${d.where}. It does not go with the measures there: look for a slip of the pencil, and measure widths and girths near it once more.`,
  ),
  "shape-from-outlines": sentence(
    "note",
    (d: { outlines: string; typicalMm: number; worstMm: number }) =>
      `This last is built from numbers and ${d.outlines}. Away from the drawn lines its surface may lie ${mm1(d.typicalMm)} off on average and ${mm(d.worstMm)} in places, most at waist and instep. Hold a card of the pattern to your own last before you cut leather.`,
  ),
  "girth-against-outlines": sentence(
    "stop",
    (d: { measure: string; askedMm: number; nearestMm: number; outlines: string }) =>
      `The ${measureName(d.measure)} asked for (${mm1(d.askedMm)}) does not go with ${d.outlines}: the nearest that fits is about ${mm(d.nearestMm)}. Measure the girth once more, look at the outlines, or leave one of them out.`,
  ),
};
