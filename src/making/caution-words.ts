import type { Caution } from "./caution.ts";

/** What is said of a hazard, whatever the pair. */
export type CautionWords = Omit<Caution, "hazard" | "steps" | "room">;

export const practice = "Common practice, no source";

/** The end of every caution. */
export function comesFirst(what: string): string {
  return `${what}, your local rules and licensed practice come before anything said here.`;
}
