import type { HazardId } from "./hazards.ts";

/** A limit for what is breathed at work. Never a safe value. */
export interface Limit {
  readonly substance: string;
  /** "EU", "USA, OSHA": who set it. */
  readonly jurisdiction: string;
  /** When it was looked up, or the law it stands in: "Directive 2006/15/EC, as looked up in 2026". */
  readonly date: string;
  /** mg/m³ and ppm over eight hours. */
  readonly mgPerM3: number;
  readonly ppm: number;
  readonly source: string;
}

/** What can hurt, and the usual care. */
export interface Caution {
  readonly hazard: HazardId;
  readonly title: string;
  /** What can happen. */
  readonly what: string;
  /** What to do, most effective first. */
  readonly care: readonly string[];
  readonly limits?: readonly Limit[];
  /** Whose word comes first: data sheet, local rules, licensed practice. */
  readonly first: string;
  /** Ids of the steps it belongs to. */
  readonly steps: readonly string[];
}
