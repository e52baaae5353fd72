// Solvents that are usual in contact cement, with what the law and the choice of a filter ask of them.

/** Names as data sheets have them; MEK is butanone. */
export const solventIds = ["toluene", "n-hexane", "MEK", "acetone", "n-heptane", "cyclohexane", "ethyl acetate"] as const;
export type SolventId = (typeof solventIds)[number];

export interface Solvent {
  /** Number under which a data sheet lists it. */
  readonly cas: string;
  /** Atoms in one molecule. */
  readonly atoms: { readonly C: number; readonly H: number; readonly O: number };
  /** g/mol. */
  readonly molarMass: number;
  /** Boiling point, °C, and where it comes from. */
  readonly boilsC: number;
  readonly source: string;
  /** Hazard statements that a label with much of it carries, and where they come from. */
  readonly statements: readonly string[];
  readonly statementsFrom: string;
}

const memory = "from memory";
const labelMemory = "from memory of the harmonised classification (EU, CLP Regulation 1272/2008)";

/** Molar masses are sums of the standard atomic weights, rounded (C 12.011, H 1.008, O 15.999; IUPAC). */
export const solvents: Readonly<Record<SolventId, Solvent>> = {
  toluene: {
    cas: "108-88-3", atoms: { C: 7, H: 8, O: 0 }, molarMass: 92.14, boilsC: 111, source: memory,
    statements: ["H225", "H304", "H315", "H336", "H361d", "H373"], statementsFrom: "a British supplier's safety data sheet of 2015",
  },
  "n-hexane": {
    cas: "110-54-3", atoms: { C: 6, H: 14, O: 0 }, molarMass: 86.18, boilsC: 68.7, source: "USA, NIOSH: page on n-hexane, 156 °F; as looked up in November 2026",
    statements: ["H225", "H304", "H315", "H336", "H361f", "H373", "H411"], statementsFrom: labelMemory,
  },
  MEK: {
    cas: "78-93-3", atoms: { C: 4, H: 8, O: 1 }, molarMass: 72.11, boilsC: 80, source: memory,
    statements: ["H225", "H319", "H336", "EUH066"], statementsFrom: labelMemory,
  },
  acetone: {
    cas: "67-64-1", atoms: { C: 3, H: 6, O: 1 }, molarMass: 58.08, boilsC: 56, source: memory,
    statements: ["H225", "H319", "H336", "EUH066"], statementsFrom: labelMemory,
  },
  "n-heptane": {
    cas: "142-82-5", atoms: { C: 7, H: 16, O: 0 }, molarMass: 100.21, boilsC: 98, source: memory,
    statements: ["H225", "H304", "H315", "H336", "H410"], statementsFrom: labelMemory,
  },
  cyclohexane: {
    cas: "110-82-7", atoms: { C: 6, H: 12, O: 0 }, molarMass: 84.16, boilsC: 81, source: memory,
    statements: ["H225", "H304", "H315", "H336", "H410"], statementsFrom: labelMemory,
  },
  "ethyl acetate": {
    cas: "141-78-6", atoms: { C: 4, H: 8, O: 2 }, molarMass: 88.11, boilsC: 77, source: memory,
    statements: ["H225", "H319", "H336", "EUH066"], statementsFrom: labelMemory,
  },
};

/** What the statements on a label mean, in a maker's words (wording of the regulation shortened). */
export const statementWords: Readonly<Record<string, string>> = {
  H225: "liquid and vapour catch fire very easily",
  H304: "may kill if swallowed and drawn into the lungs",
  H315: "irritates the skin",
  H319: "irritates the eyes badly",
  H336: "may make you drowsy or dizzy",
  H361d: "is suspected of harming the unborn child",
  H361f: "is suspected of harming fertility",
  H373: "may harm organs (nerves, brain) when breathed often or long",
  H410: "very poisonous to life in water, for long",
  H411: "poisonous to life in water, for long",
  EUH066: "dries and cracks the skin with repeated contact",
};
