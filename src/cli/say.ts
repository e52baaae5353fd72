// What the maker reads in the terminal: short sentences and measures in millimetres.
import { explain, type Finding, severityOf } from "#base/findings.ts";
import type { LastPair, Pair, TapedPair } from "#job/pair.ts";
import { mm, percent } from "./say-numbers.ts";

/** What was drawn and how it lies flat, in a few sentences. */
export function sayPair(pair: Pair): string {
  const names = [...new Set(pair.pieces.map((piece) => piece.name))];
  return [...(pair.from === "last" ? sayLastPair(pair) : sayTapedPair(pair)), `Pieces for left and right: ${names.join("; ")}.`].join("\n");
}

function sayTapedPair({ tape: { side, medial, lateral, length } }: TapedPair): readonly string[] {
  const both = (of: "centre" | "back" | "topline"): string => `outer half ${mm(lateral.lengths[of])}, inner half ${mm(medial.lengths[of])}`;
  return [
    `The taped pattern of a ${side} last, ${length.how === "traced" ? "" : "about "}${mm(length.mm)} long along the bottom${length.how === "traced" ? "" : " (estimated: no bottom was traced)"}.`,
    `From toe to throat: ${both("centre")}. Height of the back: ${both("back")}. Topline: ${both("topline")}.`,
  ];
}

function sayLastPair({ last, lines, flat }: LastPair): readonly string[] {
  const { medial, lateral } = flat.tension;
  const { throatDepthMm, backHeightMm, sideHeightMedialMm, sideHeightLateralMm } = lines.settings;
  return [
    `${last.name}: a ${last.side} last, joint girth ${mm(last.measures.jointGirth)}, last length ${mm(last.measures.lastLength)}.`,
    `The throat lies ${mm(throatDepthMm)} behind the toe point, the back stands ${mm(backHeightMm)} high, the sides ${mm(sideHeightLateralMm)} outside and ${mm(sideHeightMedialMm)} inside at their lowest.`,
    `Topline cut shorter than on the last: inner half ${mm(medial.onLastMm - medial.flatMm)}, outer half ${mm(lateral.onLastMm - lateral.flatMm)}; at most ${percent(Math.max(medial.mostStretch, lateral.mostStretch))} of stretch there. Lining, stiffener and puff are taken into account.`,
    `Spring ${mm(flat.springMm)}; from flat to last half of the upper changes by less than ${percent(flat.strain.p50)}. It must stretch by ${percent(flat.strain.give)} at most, and gather by ${percent(flat.strain.gather)} at most, where it is pleated under.`,
  ];
}

/** All findings, the grave ones first; empty when there are none. */
export function sayFindings(findings: readonly Finding[]): string {
  const part = (title: string, severity: "look" | "note") => {
    const told = findings.filter((f) => severityOf(f) === severity).map((f) => `  - ${explain(f)}`);
    return told.length > 0 ? [title, ...told] : [];
  };
  return [...part("To look at before cutting:", "look"), ...part("Good to know:", "note")].join("\n");
}
