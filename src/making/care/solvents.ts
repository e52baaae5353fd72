// Solvents that are usual in contact cement, with what the law and the choice of a filter ask of them.

/** Names as data sheets have them; MEK is butanone. */
export const solventIds = ["toluene", "n-hexane", "MEK", "acetone", "n-heptane", "cyclohexane", "ethyl acetate"] as const;
export type SolventId = (typeof solventIds)[number];

export interface Solvent {
  /** Number under which a data sheet lists it. */
  readonly cas: string;
  /** g/mol. */
  readonly molarMass: number;
  /** Boiling point, °C, and where it comes from. */
  readonly boilsC: number;
  readonly source: string;
}

const memory = "from memory";

/** Molar masses are sums of the standard atomic weights, rounded (C 12.011, H 1.008, O 15.999; IUPAC). */
export const solvents: Readonly<Record<SolventId, Solvent>> = {
  toluene: { cas: "108-88-3", molarMass: 92.14, boilsC: 111, source: memory },
  "n-hexane": { cas: "110-54-3", molarMass: 86.18, boilsC: 68.7, source: "USA, NIOSH: page on n-hexane, 156 °F; as looked up in November 2026" },
  MEK: { cas: "78-93-3", molarMass: 72.11, boilsC: 80, source: memory },
  acetone: { cas: "67-64-1", molarMass: 58.08, boilsC: 56, source: memory },
  "n-heptane": { cas: "142-82-5", molarMass: 100.21, boilsC: 98, source: memory },
  cyclohexane: { cas: "110-82-7", molarMass: 84.16, boilsC: 81, source: memory },
  "ethyl acetate": { cas: "141-78-6", molarMass: 88.11, boilsC: 77, source: memory },
};
