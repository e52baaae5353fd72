import { knownLeathers, type KnownLeather, type StripWay } from "./leather.ts";
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

/** The kinds as they are named on the command line, each with its words where these are others. */
export const knownList = knownLeathers.map((known) => (known === knownWords[known] ? known : `${known} (${knownWords[known]})`)).join(", ");

/** What a leather is like among those that are known. */
export function likenessWords(said: KnownLeather, { nearest, along, across }: Likeness): string {
  const like = `It gives most like ${knownWords[nearest]}`;
  const even = (times: number): boolean => times.toFixed(1) === "1.0";
  if (even(along) && even(across)) return `${like}; under a firm pull as much as ${knownWords[said]} usually does, both along and across.`;
  const much = (times: number): string => (even(times) ? "as much" : `${times.toFixed(1)} times as much`);
  return `${like}; under a firm pull ${much(along)} along and ${much(across)} across as ${knownWords[said]} usually does.`;
}
