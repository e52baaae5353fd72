import { sentence } from "../sentence.ts";
import { halfName } from "./names.ts";

const mm = (n: number): string => `${Math.abs(n).toFixed(1)} mm`;
const percent = (n: number): string => `${n.toFixed(0)} %`;

/** When something happened, as part of a sentence. */
const when = (stage: string): string => (stage === "laid on" ? "while it is laid on" : stage === "at rest" ? "once it is tacked" : `at ${stage}`);

const throat = ({ byMm, taped }: { byMm: number; taped: boolean }): string =>
  byMm < 0
    ? `Pulled over, the throat ends ${mm(byMm)} nearer to the toe than asked. Ease draft 1, ${taped ? "take a firmer tape for the topline" : "tape the topline"}, turn the upper so that it gives least lengthwise, or cut from the corrected pattern.`
    : `Pulled over, the throat ends ${mm(byMm)} farther from the toe than asked: the topline holds it back. Pull draft 1 harder, shorten the topline less, or cut from the corrected pattern.`;

export const lastingSentences = {
  "lasting-hole": sentence("stop", (d: { where: string }) => `The last has a hole beneath the upper, ${d.where}: nothing can be pulled over it there. Close it in the scan, or scan the last anew.`),
  "lasting-throat": sentence("look", throat),
  "lasting-back": sentence("look", (d: { byMm: number; tight: boolean }) =>
    d.byMm < 0
      ? `Pulled over, the back stands ${mm(d.byMm)} lower than asked and will not grip. ${d.tight ? "Draft 4 is pulled no farther than just tight already: cut the back higher, or cut from the corrected pattern." : "Ease draft 4 and the seat's sides, and stop when the back stands at its mark."}`
      : `Pulled over, the back stands ${mm(d.byMm)} higher than asked and will cut in. Pull draft 4 until the back stands at its mark.`,
  ),
  "lasting-side": sentence("look", (d: { half: string; byMm: number; tight: boolean }) =>
    d.byMm < 0
      ? `Pulled over, the ${halfName(d.half)} side stands ${mm(d.byMm)} lower than asked. ${d.tight ? "Seat side and waist are pulled no farther than just tight already: cut from the corrected pattern, which is higher there, or ease the joint." : `Ease the drafts at seat side, joint and waist on that side, or cut from the corrected pattern.`}`
      : `Pulled over, the ${halfName(d.half)} side stands ${mm(d.byMm)} higher than asked. Pull the drafts at seat side, joint and waist on that side a little more, or cut from the corrected pattern.`,
  ),
  "lasting-aside": sentence("look", (d: { byMm: number; half: string }) => `Pulled over, the throat stands ${mm(d.byMm)} off the centre line toward the ${halfName(d.half)} side. Pull the toe corner and the joint a little more on the other side, and ease them on this one, before you tack them.`),
  "lasting-uneven": sentence("note", (d: { numbers: string; name: string; innerN: number; outerN: number }) =>
    `Drafts ${d.numbers}, ${d.name}, are out of balance at the end: ${Math.max(0, d.innerN).toFixed(0)} N hold on the inner side, ${Math.max(0, d.outerN).toFixed(0)} N on the outer one. Look again whether the throat stands on the centre line before you go on.`,
  ),
  "lasting-flank": sentence("look", (d: { half: string; byMm: number; fromBackMm: number }) =>
    `Pulled over, the topline stands ${mm(d.byMm)} off the last on the ${halfName(d.half)} half, ${d.fromBackMm.toFixed(0)} mm along it from the back seam. Close the waist there with a row of light pulls, or shorten the topline less where it spans a hollow.`,
  ),
  "lasting-spans": sentence("note", (d: { half: string; byMm: number; fromBackMm: number }) =>
    `Pulled over, the taut topline spans the hollow of the waist on the ${halfName(d.half)} half, as card does: it stands ${mm(d.byMm)} off the last, ${d.fromBackMm.toFixed(0)} mm along it from the back seam. A foot fills it out. If you want it to lie on the last, shorten the topline less.`,
  ),
  "lasting-short": sentence("look", (d: { number: number; name: string; byN: number; byMm: number }) =>
    `Draft ${d.number}, ${d.name}, keeps short of its mark: pulled with ${d.byN.toFixed(0)} N, the topline still stands ${mm(d.byMm)} above it. Cut the upper lower there, cut from the corrected pattern, or pull harder if the leather bears it.`,
  ),
  "lasting-grain": sentence("look", (d: { percent: number; limitPercent: number; where: string }) =>
    `Pulled over, the upper is stretched by ${percent(d.percent)} ${d.where}; above ${percent(d.limitPercent)} the grain of this leather may crack. Case it well, ease the draft nearest to it, or take a leather that gives more.`,
  ),
  "lasting-tears": sentence("look", (d: { stage: string; percent: number; breakPercent: number; where: string }) =>
    `The upper tears ${when(d.stage)}, ${d.where}: it is stretched by ${percent(d.percent)} there, and this leather bears ${percent(d.breakPercent)}. What is shown is as far as it came. Pull less there, take a leather that gives more, or give the pattern a seam.`,
  ),
  "lasting-pleats": sentence("note", (d: { where: string; takenMm: number; percent: number; usualMm: number }) =>
    `Round the ${d.where} pleats take up ${d.takenMm.toFixed(0)} mm of the feather edge, ${percent(d.percent)} at the worst place; up to ${d.usualMm} mm is usual. Make many fine ones, skive the margin there, and case the leather well.`,
  ),
  "lasting-margin": sentence("look", (d: { number: number; name: string; marginMm: number; leastMm: number }) =>
    `At draft ${d.number}, ${d.name}, ${d.marginMm > 0 ? `only ${mm(d.marginMm)} of margin are` : "no margin is"} left inside the feather line; pincers need ${d.leastMm} mm. Cut the lasting margin wider there.`,
  ),
  "lasting-astray": sentence("look", (d: { stage: string }) => `The upper slides off the last ${when(d.stage)}; what is shown is as it was before. Look whether the pulls are in balance, and whether there is friction on the last to hold it.`),
  "lasting-restless": sentence("look", (d: { stage: string; moveMm: number; residualN: number }) =>
    `The upper did not quite come to rest ${when(d.stage)}${Number.isFinite(d.moveMm) ? `: it still moves by ${d.moveMm.toFixed(2)} mm, and ${d.residualN.toFixed(1)} N are left over` : ""}. Take what is shown only roughly; pulls nearer to the usual ones may help.`,
  ),
};
