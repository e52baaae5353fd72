/** What can hurt at a step. */
export const hazardIds = ["solvent cement", "water-based glue", "ink and dye", "knife", "sewing machine", "hammer and nails", "lasting pincers", "heat", "dust", "grinding", "feet"] as const;
export type HazardId = (typeof hazardIds)[number];
