import { sentence } from "../sentence.ts";

type Half = "medial" | "lateral";

const mm = (value: number, digits = 1): string => `${value.toFixed(digits)} mm`;
const side = (half: Half): string => (half === "medial" ? "inside" : "outside");

export const liningSentences = {
  "lining-in-one": sentence("note", () => "A taped pattern gives no surface of the heel to lay a pocket without a seam on, so the lining is cut in one piece with a back seam. From a last it can be cut in pieces."),
  "lining-longer": sentence(
    "look",
    (d: { where: string; longerMm: number }) => `The lining is ${mm(d.longerMm)} longer than the upper along the ${d.where}. It must be smaller there, or it makes folds: check the thicknesses of lining, stiffener and puff.`,
  ),
  "lining-joint-near": sentence(
    "look",
    (d: { half: Half; near: string; awayMm: number; neededMm: number; atMm: number }) =>
      `On the ${side(d.half)} the vamp lining's joint cannot be kept ${mm(d.neededMm, 0)} clear of the ${d.near === "ball" ? "ball" : `upper's seam, ${d.near}`}: the most it gets is ${mm(d.awayMm)}, at ${mm(d.atMm)} behind the throat, where it was put. ${d.near === "ball" ? "Shorten the heel pocket's wings, or set the joint farther back at the feather line." : "Move the upper's seam, or shorten the heel pocket's wings."}`,
  ),
  "lining-quarter-short": sentence(
    "look",
    (d: { half: Half; atMm: number }) =>
      d.atMm >= 8
        ? `On the ${side(d.half)} too little is left of the quarter lining between the vamp lining's joint and the heel pocket, so the joint was put ${mm(d.atMm)} behind the throat. Set it there or nearer, or shorten the pocket's wings.`
        : `On the ${side(d.half)} no quarter lining is left between vamp lining and heel pocket, so the lining was cut in one piece. Shorten the pocket's wings, or set the vamp lining's joint nearer to the ball.`,
  ),
  "lining-joints-differ": sentence(
    "look",
    (d: { half: Half; differenceMm: number; allowedMm: number }) =>
      `On the ${side(d.half)} the edges of the joint between quarter lining and heel pocket differ by ${mm(Math.abs(d.differenceMm))} (at most ${mm(d.allowedMm)} are lasted away). They were made equal at the feather line: lay the pocket to the last there before you cut.`,
  ),
  "pocket-near-seam": sentence(
    "look",
    (d: { half: Half; seam: string; awayMm: number; neededMm: number; topMm: number; wingMm: number }) =>
      `On the ${side(d.half)} the heel pocket's front edge lies ${mm(d.awayMm)} from the upper's seam, ${d.seam}; ${mm(d.neededMm, 0)} are wanted. Set the heel pocket to ${mm(d.topMm)} along the topline and ${mm(d.wingMm)} along the feather line, or move the seam forward.`,
  ),
  "pocket-height": sentence("note", (d: { heightMm: number; least: number; most: number }) => `The heel pocket is ${mm(d.heightMm, 0)} high at the back; usual are ${mm(d.least, 0)} to ${mm(d.most, 0)} on EU 37. It follows the height of the back.`),
  "pocket-short": sentence(
    "look",
    (d: { half: Half; pocketMm: number; stiffenerMm: number }) =>
      `On the ${side(d.half)} the stiffener reaches ${mm(d.stiffenerMm)} from the seat, the heel pocket only ${mm(d.pocketMm)}, so the foot feels the stiffener's end. Set the heel pocket along the feather line to ${mm(d.stiffenerMm)} or more, or shorten the stiffener's wing.`,
  ),
  "stiffener-height": sentence(
    "note",
    (d: { heightMm: number; least: number; most: number }) =>
      `The stiffener is ${mm(d.heightMm)} high at the back; for this size ${mm(d.least, 0)} to ${mm(d.most, 0)} are usual. ${d.heightMm > d.most ? "A higher one bites the heel: set it lower below the topline, or lower the back." : "A lower one lets the back of the heel collapse: set it nearer to the topline, or raise the back."}`,
  ),
  "stiffener-beyond-sheet": sentence(
    "look",
    (d: { half: Half; wingMm: number; mostMm: number }) => `The stiffener's wing on the ${side(d.half)} is asked to reach ${mm(d.wingMm)} from the seat; there is room for ${mm(d.mostMm)}. It was cut so long.`,
  ),
  "stiffener-crosses": sentence("look", (d: { heightMm: number }) => `The back is ${mm(d.heightMm)} high, too low for a stiffener with its upper edge so far below the topline. None was drawn: set it nearer to the topline.`),
  "puff-doubles": sentence(
    "look",
    (d: { widthMm: number; lastingMm: number; trimMm: number }) =>
      `The toe is ${mm(d.widthMm, 0)} wide at ${mm(d.lastingMm, 0)} behind its point, so the puff's ${mm(d.lastingMm)} under the feather line would lie double from both sides. Snip a wedge out of it at the toe centre, or trim it to ${mm(d.trimMm)} over the point.`,
  ),
  "puff-thin": sentence(
    "look",
    (d: { widthMm: number; reachMm: number }) =>
      `On a toe so narrow the puff is skived from both sides until ${d.widthMm > 0 ? `only ${mm(d.widthMm, 0)} of` : "nothing of"} its full thickness is left. Skive it narrower along the feather line and at the back edge, or let it reach farther than ${mm(d.reachMm)}.`,
  ),
  "puff-at-bend": sentence(
    "look",
    (d: { awayMm: number; neededMm: number; reachMm: number }) =>
      `The toe puff ends ${mm(d.awayMm)} before the line of the joint; the shoe bends there, so ${mm(d.neededMm, 0)} are wanted. Set its reach to ${mm(d.reachMm)} or less.`,
  ),
  "side-lining-short": sentence(
    "look",
    (d: { half: Half; lengthMm: number; neededMm: number }) =>
      `On the ${side(d.half)} stiffener and toe puff come so near to each other that ${mm(Math.max(0, d.lengthMm), 0)} are left for a side lining (${mm(d.neededMm, 0)} at least). None was drawn: shorten the stiffener's wing or the puff, or leave the side lining out.`,
  ),
  "puff-none": sentence("look", (d: { reachMm: number }) => `A toe puff that reaches ${mm(d.reachMm)} is no longer than its skive. None was drawn: let it reach farther, or move the throat back.`),
};
