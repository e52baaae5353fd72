import { sentence } from "../sentence.ts";

/** As it was typed: whole millimetres without a point. */
const mm = (value: number): string => value.toFixed(1).replace(/\.0$/, "");

export const panelSentences = {
  "seam-through-joint": sentence("stop", (d: { what: string; askedMm: number; from: string; limitMm?: number; way?: "at most" }) => {
    const room = d.limitMm !== undefined && d.limitMm > 0 ? `Set it ${d.way ?? "at least"} ${d.limitMm} mm ${d.from}` : "Draw the throat farther back, let the seam come nearer to the joint";
    return `With the ${d.what} ${d.askedMm.toFixed(1)} mm ${d.from} the seam runs through the joint, where the shoe bends and the foot rubs it. ${room}, or choose another cut.`;
  }),
  "side-seam-no-room": sentence("stop", (d: { askedMm: number; mostMm: number }) => `The side seams cannot stand ${d.askedMm.toFixed(1)} mm behind the throat: in front of it there is no topline, and more than ${d.mostMm} mm behind it no quarter is left. 25 to 38 mm are usual.`),
  "side-seam-moved": sentence("note", (d: { askedMm: number; setMm: number; clearMm: number }) => `Set ${d.askedMm.toFixed(1)} mm behind the throat, the side seams would come to the joint, where the shoe bends. They were set ${d.setMm.toFixed(1)} mm behind it, ${d.clearMm.toFixed(0)} mm clear of the joint line. A longer vamp leaves them more room.`),
  "side-seam-near-throat": sentence("look", (d: { setMm: number; leastMm: number }) => `The side seams stand ${d.setMm.toFixed(1)} mm behind the throat; nearer than ${d.leastMm} mm they tear at their upper end. Set them farther back, or tape the corner well.`),
  "seam-leaves-upper": sentence("stop", (d: { what: string }) => `The ${d.what} does not run from the topline to the feather line without leaving the upper on its way. Move it, or raise the topline there.`),
  "seam-spring-too-wide": sentence("stop", (d: { springMm: number; leastMm: number; mostMm: number }) => `A spring of ${d.springMm.toFixed(1)} mm cannot be laid: the two edges of the inner seam would run into each other, or farther apart than any pump asks for. Choose one from ${d.leastMm} (apart) to ${d.mostMm} mm (together); with this cut 0 is usual.`),
  "heel-part-impossible": sentence("stop", (d: { half: "medial" | "lateral"; reachMm: number }) => `Stiffener or heel pocket cannot reach ${mm(d.reachMm)} mm from the heel on the ${d.half === "medial" ? "inner" : "outer"} side: there is no upper above the feather line. Choose a shorter one.`),
  "panel-eased": sentence("note", (d: { panel: string; givePercent: number; gatherPercent: number; usualPercent: number; nickShortMm?: number }) => {
    const give = d.givePercent > d.usualPercent ? [`stretched by up to ${d.givePercent.toFixed(0)} %`] : [], gather = d.gatherPercent > d.usualPercent ? [`gathered by up to ${d.gatherPercent.toFixed(0)} %`] : [];
    return `The ${d.panel} must be ${[...give, ...gather].join(" and ")} to lie on the last, most of all at the marked place; up to ${d.usualPercent} % goes by itself in lasting. ${d.nickShortMm === undefined ? "Work it there by small pulls before you cement." : `So much is not taken up by pulls alone: spread it over the lasting margin there in small even pleats and nick each out as a wedge, not closer than ${d.nickShortMm} mm to the feather line, before you cement.`}`;
  }),
  "seam-banks-differ": sentence("note", (d: { seam: string; differenceMm: number }) => `Laid flat, the two edges of the ${d.seam} seam differ by ${Math.abs(d.differenceMm).toFixed(1)} mm; both were brought to their mean at the feather line, where the margin takes it up.`),
  "mean-halves-whole-only": sentence("note", (_: object) => "With this cut inner and outer half keep shapes of their own: the mean form is for the upper in one piece with a back seam."),
};
