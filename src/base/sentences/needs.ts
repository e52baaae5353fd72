import { sentence } from "../sentence.ts";

export const needsSentences = {
  "skin-of-unknown": sentence("note", (d: { name: string; nearest: readonly string[]; as?: readonly string[] }) =>
    `“${d.name}” among the sizes of skins is nothing that is bought here, and is kept without being counted. ${d.as ? `Write it as ${d.as.join(" or ")}.` : d.nearest.length === 0 ? "Look at the list of what this pair takes for its names." : `Did you mean ${d.nearest.join(" or ")}?`}`,
  ),
  "skin-unread": sentence("look", (d: { good: string; wrong: string }) => `The size in which the ${d.good} is bought cannot be read: ${d.wrong}. Until then a usual size is taken.`),
  "skin-odd": sentence("look", (d: { good: string; got: string; ft2: number; usualFt2: number; many: boolean }) =>
    `The size in which the ${d.good} is bought is said to be ${d.got}, that is ${d.ft2 < 0.1 ? d.ft2.toFixed(3) : d.ft2.toFixed(1)} ft², and one is usually about ${d.usualFt2.toFixed(0)} ft². ${d.many ? "Write the size of one, not of all." : "Look at its unit: 1 ft² is 9.3 dm²."} The waste is estimated with it all the same.`,
  ),
  "cement-unread": sentence("look", (d: { got: string }) => `The cement of soles and margins: “${d.got}” is none of the two that are reckoned with. Write contact or water-based; until then contact cement is taken.`),
  "heel-nails-none": sentence("note", (d: { lift: string; roomMm: number }) => `Heel nails: from the ${d.lift} up only ${d.roomMm.toFixed(1)} mm of lifts, sole and boards lie one over the other. No nail that ends well below the foot goes deep enough beyond the ${d.lift} to hold it, so none is counted: cement it alone.`),
};
