import type { KnownLeather, StripWay } from "./leather.ts";
import type { Likeness } from "./likeness.ts";

export const wayWords: Readonly<Record<StripWay, string>> = { along: "along", across: "across", bias: "at 45 degrees" };

/** How a leather is called in a sentence. */
export const knownWords: Readonly<Record<KnownLeather, string>> = {
  goat: "goat or kid",
  calf: "calf",
  nappa: "sheep nappa",
  cow: "cow side",
  pig: "pig",
  "lining goat": "goat for linings",
};

/** What a leather is like among those that are known. */
export function likenessWords(said: KnownLeather, { nearest, along, across }: Likeness): string {
  const like = `It gives most like ${knownWords[nearest]}`;
  return `${like}; under a firm pull ${along.toFixed(1)} times as much along and ${across.toFixed(1)} times as much across as ${knownWords[said]} usually does.`;
}
