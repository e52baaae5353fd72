// What was foretold of lasting, in the terminal.
import { readMm, shownBand, type Foretold } from "#lasting/foretold.ts";
import type { Banded } from "#lasting/lasted.ts";
import { mm } from "./say-numbers.ts";

const ends = { throatDepthMm: "throat", backHeightMm: "back", innerHeightMm: "inner side", outerHeightMm: "outer side" } as const;

/** Where the topline ends once the upper is pulled over, draft by draft, in a few sentences. */
export function sayForetold({ lasted: { drafts }, banded }: Required<Foretold>): string {
  const end = ([key, name]: [string, string]): string => {
    const { target, predicted, low, high } = shownBand<Banded>(banded[key as keyof typeof ends]);
    return `${name} ${mm(predicted)} (${mm(low)} to ${mm(high)}; asked ${mm(target)})`;
  };
  return [
    `Pulled over the last, it ends so: ${Object.entries(ends).map(end).join(", ")}. In brackets where 80 of 100 leathers of this kind end, never closer than ${readMm} mm either way, since no tape reads closer.`,
    `Drafts and the margin that they leave: ${drafts.map(({ number, name, word, pullN, marginMm }) => `${number} ${name} ${word} (${pullN.toFixed(0)} N), ${mm(marginMm)}`).join("; ")}.`,
    "Nothing here replaces your own eye: stop at the marks, whatever the pull.",
  ].join("\n");
}
