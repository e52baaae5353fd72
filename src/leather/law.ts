/**
 * How a sheet resists being stretched in its own plane: energy per area of the flat sheet, N·mm/mm², as a function of Green's strain
 * E = (FᵀF − 1)/2 in the law's own axes, 1 along the direction of least stretch and 2 across it; g = 2 E₁₂. Convex in (e1, e2, g).
 */
export interface Law {
  energy(e1: number, e2: number, g: number): number;
  /**
   * Writes stress and stiffness into nine places: S₁₁ S₂₂ S₁₂ (second Piola–Kirchhoff, N per mm of flat width), then D₁₁ D₂₂ D₃₃ D₁₂ D₁₃
   * D₂₃, the second derivatives in (e1, e2, g).
   */
  into(out: Float64Array, e1: number, e2: number, g: number): void;
}
