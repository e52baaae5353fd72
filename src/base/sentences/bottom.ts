import { sentence } from "../sentence.ts";

const mm = (value: number, digits = 1): string => `${value.toFixed(digits)} mm`;

/** What the bottom of a shoe is built of. */
export const bottomSentences = {
  "margins-meet": sentence(
    "look",
    (d: { marginMm: number; halfMm: number }) =>
      `Lasting margins trimmed to ${mm(d.marginMm)} meet in the middle of the bottom (half of it is ${mm(d.halfMm)} at its narrowest). There is no room for a filler: trim them narrower.`,
  ),
  "filler-nothing": sentence("note", (d: { mostMm: number }) => `The hollow between the margins is ${mm(d.mostMm)} deep at most: nothing is to be filled. Even it out with cement, or leave it.`),
  "filler-deep": sentence(
    "note",
    (d: { mostMm: number; usualMm: number; fromSeatMm: number }) =>
      `The hollow between the margins is ${mm(d.mostMm)} deep, ${mm(d.fromSeatMm, 0)} from the seat (usual are up to ${mm(d.usualMm, 0)}). Fill it in two layers, or with leather under the cork: thick cork gives under the foot.`,
  ),
  "insole-proud": sentence(
    "look",
    (d: { proudMm: number; fromSeatMm: number }) =>
      `The insole stands ${mm(d.proudMm)} out between the margins, ${mm(d.fromSeatMm, 0)} from the seat: the last's bottom is rounder there than the margins are thick. Lay no filler there, and hammer the sole on wet so that it follows the round.`,
  ),
  "heel-none": sentence(
    "note",
    (d: { heightMm: number }) => `Under the seat ${mm(Math.max(0, d.heightMm))} are left to the ground once insole and sole are on: too little for a top piece. Let the sole run through, without a heel.`,
  ),
  "heel-top-piece-only": sentence("note", (d: { backMm: number; breastMm: number }) => `The heel is ${mm(d.backMm)} high at the back and ${mm(d.breastMm)} at the breast: a top piece alone, without lifts. Cut it from leather as thick as its thicker end.`),
  "heel-below-ground": sentence(
    "look",
    (d: { belowMm: number; heelMm: number }) =>
      `With these boards and this sole the seat would lie ${mm(d.belowMm)} below the tread (the last's heel is ${mm(d.heelMm)} high). Take a thinner second board, or look whether the last stands at its own heel height.`,
  ),
  "heel-wedge": sentence(
    "look",
    (d: { backMm: number; breastMm: number; degrees: number }) =>
      `The seat leans ${Math.abs(d.degrees).toFixed(1)}° to the ${d.degrees > 0 ? "front" : "back"}, so the heel is ${mm(d.backMm)} high at the back and ${mm(d.breastMm)} at the breast. A seat is nearly level: look whether the last stands at its own heel height.`,
  ),
  "heel-high": sentence(
    "note",
    (d: { backMm: number; usualMm: number }) => `The heel comes to ${mm(d.backMm)}; stacked lifts with nails by these rules are for up to ${mm(d.usualMm, 0)}. Look at shank and breast before you build it.`,
  ),
  "split-lift-thin": sentence(
    "look",
    (d: { offMm: number; leatherMm: number }) => `The round of the seat stands up to ${mm(d.offMm)} off the heel at its edge; the split lift's leather is ${mm(d.leatherMm)}. Take it thicker, or lay two.`,
  ),
  "heel-breast-open": sentence(
    "note",
    (d: { offMm: number }) => `Under the heel's breast the sole rises ${mm(d.offMm)} off the heel. Let the first lift stand that much thicker there and pare it to the sole, or rasp the sole flat.`,
  ),
  "shank-near-joint": sentence(
    "look",
    (d: { lengthMm: number; shortMm: number; neededMm: number }) =>
      `A shank of ${mm(d.lengthMm)} ends ${d.shortMm < 0 ? `${mm(-d.shortMm)} beyond` : `${mm(d.shortMm)} behind`} the joint line; it must stay ${mm(d.neededMm)} behind it. Take a shorter one.`,
  ),
  "shank-beyond-board": sentence(
    "look",
    (d: { lengthMm: number; byMm: number; longestMm: number }) =>
      `A shank of ${mm(d.lengthMm)} sticks ${mm(d.byMm)} out in front of the second board, where it works through the insole. Take one of ${mm(d.longestMm)} at most, or let the board end nearer to the joint.`,
  ),
  "bottom-line-misses": sentence("look", (d: { piece: string }) => `The ${d.piece} is left out: the line at which it ends does not meet both edges of the bottom. Look at joints, seat and heel breast of the bottom.`),
  "bottom-without-heights": sentence("note", () => "A taped pattern says nothing of the bottom's heights: depth of the filler, bend of the shank and the heel are left out. Take them from the lasted shoe."),
};
