import { sentence } from "../sentence.ts";

export const leatherSentences = {
  "leather-law-impossible": sentence("stop", (d: { along: number; across: number; bias: number; poisson: number }) =>
    `No leather answers like this: ${d.along.toFixed(2)} N/mm along, ${d.across.toFixed(2)} across, ${d.bias.toFixed(2)} at 45 degrees, ${d.poisson.toFixed(2)} times as narrow as long. Read the strips again, above all the one at 45 degrees.`,
  ),
  "leather-distension": sentence("stop", (d: { mm: number }) =>
    `A distension of ${d.mm} mm cannot be read in the ball test: its ring is 25 mm wide. Give the height in mm at which the grain cracked, 1 to 25.`,
  ),
};
