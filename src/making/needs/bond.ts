import type { Bond, Glue } from "../need.ts";

/**
 * Wet weight of one coat on one face, g/m². Contact cement: a trade guide on contact adhesives gives about 150, 150 to 250 is usual on leather
 * (common practice, no source). Water-based cement is about half water and is spread as thin,
 * latex too, paste lies thicker: from memory.
 */
export const coatGPerM2: Readonly<Record<Glue, number>> = { "contact cement": 150, "water-based cement": 150, latex: 150, paste: 250 };

/** Leather and board drink the first coat, so they take two; steel, cork and rubber one (a trade's overview of gluing for repairs, a note on adhesives for leather). */
export const coatsOf = { leather: 2, board: 2, steel: 1, cork: 1, rubber: 1 } as const;

const mm2PerM2 = 1_000_000;

/** Two faces stuck together; `areaMm2` of one face, both shoes. */
export function bondOf(name: string, glue: Glue, areaMm2: number, coats: readonly [number, number], from: string): Bond {
  const gPerM2 = coatGPerM2[glue];
  return { name, glue, areaMm2, coats, gPerM2, g: (areaMm2 / mm2PerM2) * (coats[0] + coats[1]) * gPerM2, from };
}
