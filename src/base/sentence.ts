import type { Severity } from "./severity.ts";

/** One entry of the catalogue of findings: how grave it is and how it is said, made from its data. */
export interface Sentence<D> {
  readonly severity: Severity;
  readonly say: (data: D) => string;
}

/** Keeps the type of the data while checking the shape of an entry. */
export function sentence<D>(severity: Severity, say: (data: D) => string): Sentence<D> {
  return { severity, say };
}
