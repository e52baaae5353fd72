import type { ToolWords } from "./tool-need.ts";

/** What stands between you and harm. Nothing stands in for it. */
export const protectingTools = {
  "half mask with organic-vapour filters": { use: "To keep solvent vapour out of your lungs: brown filters, type A, or AX for acetone. It comes after moving air, not in its place.", noStandIn: "Nothing stands in for it at solvent cement, a dust mask least of all. Without it, work with paste, latex or water-based cement.", must: true, buy: "first" },
  goggles: { use: "To keep cement, latex, tacks, needle pieces and bits of blade out of your eyes; they close all round.", noStandIn: "Nothing stands in for them: reading glasses let splashes in at the sides.", must: true, buy: "first" },
  gloves: { use: "Nitrile, 0.2 mm or more, to keep cement, latex, ink and solvent off your skin.", noStandIn: "Nothing stands in for them: cotton and latex gloves let solvent through, latex can itself bring out an allergy, and a cream is no glove.", must: true, buy: "first" },
  "metal bin": { use: "With a lid, for brushes, card and rags with solvent cement, spirit or oil on them.", standIn: "A biscuit tin whose lid closes. What is in it goes where your town takes solvent waste.", must: true, buy: "first" },
  "fire extinguisher": { use: "Foam or CO₂, within reach when a tin of solvent cement is open.", noStandIn: "Nothing stands in for it: water spreads burning cement.", must: true, buy: "first" },
  "first aid box": { use: "Plasters, dressing and bandage within reach of the knife.", noStandIn: "Nothing stands in for it.", must: true, buy: "first" },
  "dust mask": { use: "P2 or FFP2, against dust of leather, board and cork. It stops no vapour.", noStandIn: "Nothing stands in for it where dust flies: a cloth lets fine dust through.", must: true, buy: "first" },
  "cut-resistant glove": { use: "On the hand that holds the work, not on the one that holds the knife; never near a machine that turns.", standIn: "A board with a stop, so that the holding hand stays behind the blade.", must: false, buy: "later" },
  "vacuum cleaner": { use: "With a fine filter, to draw dust off where it is made and from the bench; never with a brush into the air.", standIn: "A damp cloth, and sanding outdoors.", must: false, buy: "later" },
  apron: { use: "Of leather or thick canvas, over the thighs, against knife and cement.", standIn: "Old jeans and a folded piece of sole leather on your lap.", must: false, buy: "first" },
} as const satisfies Readonly<Record<string, ToolWords>>;
