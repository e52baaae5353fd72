import type { HazardId } from "./hazards.ts";
import type { SolventId } from "./solvents.ts";

/** A limit for what is breathed at work. It orders nothing at home and promises nothing. */
export interface Limit {
  readonly substance: SolventId;
  /** Who set it: "European Union", "USA, OSHA". */
  readonly jurisdiction: string;
  /** The law with its date, or when it was looked up: "Directive 2006/15/EC of 7 February 2006". */
  readonly date: string;
  /** mg/m³ and ppm, mean over a working day: eight hours, with NIOSH up to ten. */
  readonly mgPerM3: number;
  readonly ppm: number;
  /** °C at which its mg/m³ and ppm belong together. */
  readonly atC: 20 | 25;
  /** Mean over fifteen minutes, and what must never be passed. */
  readonly short?: { readonly ppm: number; readonly mgPerM3?: number };
  readonly ceilingPpm?: number;
  /** "law", or a body's advice that binds nobody. */
  readonly kind: "law" | "indicative value in law" | "recommendation";
  /** Passes through the skin as well. */
  readonly skin?: true;
  readonly source: string;
  /** Not opened while writing: known from memory. */
  readonly fromMemory: boolean;
}

/** What can hurt, and the usual care. */
export interface Caution {
  readonly hazard: HazardId;
  readonly title: string;
  /** The least to think of, in one line beside the step; the rest stands in `care`. */
  readonly short: string;
  /** What can happen. */
  readonly what: string;
  /** What to do, most effective first. */
  readonly care: readonly string[];
  /** What the law says of it, each with jurisdiction and date; of solvent cement. */
  readonly law?: readonly string[];
  readonly limits?: readonly Limit[];
  /** What this pair's cement could make of a closed room, where its grams are known (`roomWords`). */
  readonly room?: readonly string[];
  /** Whose word comes first: data sheet, local rules, licensed practice. */
  readonly first: string;
  /** Where it comes from. */
  readonly source: string;
  /** Ids of the steps it belongs to. */
  readonly steps: readonly string[];
}
