import type { Caution } from "./caution.ts";

/** What is said of a hazard, whatever the pair. */
export type CautionWords = Omit<Caution, "hazard" | "steps" | "room">;

export const practice = "Common practice, no source";

/** Whose word comes before ours; ends every caution. */
export function comesFirst(what: string): string {
  return `${what}, your local rules and licensed practice come before anything said here.`;
}

/** The same where a tool is in hand rather than a product. */
export const toolComesFirst = comesFirst("The instructions of the tool and the safety data sheet of any product in your hand");
