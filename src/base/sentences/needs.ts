import { sentence } from "../sentence.ts";

const dm2 = (mm2: number): string => `${(mm2 / 10_000).toFixed(1)} dm²`;

export const needsSentences = {
  "skin-of-unknown": sentence("look", (d: { good: string }) => `A size is said for "${d.good}", and nothing on the list is called so. Write it at the upper leather, the lining leather or another line of the list.`),
  "skin-unread": sentence("look", (d: { good: string; wrong: string }) => `The size of one piece of ${d.good} as it is bought cannot be read: ${d.wrong}. Until then the usual size is taken. Write it like 6 ft2 or 55 dm2.`),
  "skin-too-small": sentence("look", (d: { good: string; part: string; partMm2: number; skinMm2: number }) =>
    `One piece of ${d.good} as it is bought is said to have ${dm2(d.skinMm2)}, and that does not hold the ${d.part}, which takes ${dm2(d.partMm2)} alone. Look at the unit, 1 ft² is 9.3 dm², or buy a larger one.`,
  ),
};
