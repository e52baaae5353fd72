import type { KnownLeather, StripWay } from "./leather.ts";

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
