import type { Sheet } from "./sheet.ts";

/**
 * Bending of a sheet that was flat and hardly stretches: B/2 ∫ |Δx|² by hinges, quadratic in the positions (Bergou, Wardetzky, Harmon,
 * Zorin and Grinspun 2006, A quadratic bending model for inextensible surfaces, Eurographics SGP; from memory), each hinge weighed so that
 * a sheet of even triangles rolled to radius R stores B/(2R²) per area. B in N·mm.
 */
export function bendingEnergy({ hinges, folds }: Sheet, x: Float64Array): number {
  let sum = 0;
  for (let h = 0; h < hinges.length; h += 4)
    for (let d = 0; d < 3; d++) {
      let fold = 0;
      for (let i = 0; i < 4; i++) fold += folds[h + i]! * x[3 * hinges[h + i]! + d]!;
      sum += fold * fold;
    }
  return 0.5 * sum;
}

/** Adds the gradient of B times {@link bendingEnergy}. */
export function addBendingInto(gradient: Float64Array, { hinges, folds, unknown }: Sheet, x: Float64Array, bending: number): void {
  for (let h = 0; h < hinges.length; h += 4)
    for (let d = 0; d < 3; d++) {
      let fold = 0;
      for (let i = 0; i < 4; i++) fold += folds[h + i]! * x[3 * hinges[h + i]! + d]!;
      for (let i = 0; i < 4; i++) {
        const at = unknown[hinges[h + i]!]!;
        if (at >= 0) gradient[at + d]! += bending * fold * folds[h + i]!;
      }
    }
}
