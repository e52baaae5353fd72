/** How far from a curve the chords may lie by which a file is measured, mm. */
export const flatMm = 0.0005;
