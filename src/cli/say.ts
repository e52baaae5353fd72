// What the maker reads in the terminal: short sentences and measures in millimetres.
import { explain, type Finding, severityOf } from "#base/findings.ts";
import type { LastPair, Pair, TapedPair } from "#job/pair.ts";
import type { Proof } from "#job/proof.ts";
import type { UpperCut } from "#pieces/choices.ts";
import { halves } from "#lines/feather.ts";
import { correctedWords } from "#sheets/corrected.ts";
import { mm, percent } from "./say-numbers.ts";

const cutWords: Readonly<Record<UpperCut, string>> = { "back-seam": "whole with a back seam", "inner-seam": "whole with a seam at the inner waist", quarters: "as vamp and two quarters" };

/** What was drawn and how it lies flat, in a few sentences. */
export function sayPair(pair: Pair): string {
  const names = [...new Set(pair.pieces.map((piece) => piece.name))];
  return [...(pair.from === "last" ? sayLastPair(pair) : sayTapedPair(pair)), `The upper is cut ${cutWords[pair.parts.cut]}, lined in ${pair.parts.lining}. Pieces for left and right: ${names.join("; ")}.`].join("\n");
}

function sayTapedPair({ tape: { side, medial, lateral, length } }: TapedPair): readonly string[] {
  const both = (of: "centre" | "back" | "topline"): string => `outer half ${mm(lateral.lengths[of])}, inner half ${mm(medial.lengths[of])}`;
  return [
    `The taped pattern of a ${side} last, ${length.how === "traced" ? "" : "about "}${mm(length.mm)} long along the bottom${length.how === "traced" ? "" : " (estimated: no bottom was traced)"}.`,
    `From toe to throat: ${both("centre")}. Height of the back: ${both("back")}. Topline: ${both("topline")}.`,
  ];
}

function sayLastPair({ last, lines, flat, corrected, leathers, lasting }: LastPair): readonly string[] {
  const { medial, lateral } = flat.tension;
  const { throatDepthMm, backHeightMm, sideHeightMedialMm, sideHeightLateralMm } = lines.settings;
  return [
    `${last.name}: a ${last.side} last, joint girth ${mm(last.measures.jointGirth)}, last length ${mm(last.measures.lastLength)}.`,
    `The throat lies ${mm(throatDepthMm)} behind the toe point, the back stands ${mm(backHeightMm)} high, the sides ${mm(sideHeightLateralMm)} outside and ${mm(sideHeightMedialMm)} inside at their lowest.`,
    `Topline cut shorter than on the last: inner half ${mm(medial.onLastMm - medial.flatMm)}, outer half ${mm(lateral.onLastMm - lateral.flatMm)}; at most ${percent(Math.max(medial.mostStretch, lateral.mostStretch))} of stretch there. Lining, stiffener and puff are taken into account.`,
    `Spring ${mm(flat.springMm)}; from flat to last half of the upper changes by less than ${percent(flat.strain.p50)}. It must stretch by ${percent(flat.strain.give)} at most, and gather by ${percent(flat.strain.gather)} at most, where it is pleated under.`,
    ...(corrected ? [`${correctedWords({ ...leathers, lasting, difference: corrected.difference })} Cards are cut as they lie on the last.`] : []),
  ];
}

/** How the pattern did when it was tried out, in a few sentences. */
export function sayProof({ check: { rows }, relief: { feather, nicks }, halves: { mostDifferent } }: Proof): string {
  const off = rows.filter(({ holds }) => !holds).length;
  const flank = (half: string): string => mm(rows.find((r) => r.key === "flank" && r.half === half)!.onCardMm);
  const over = (of: "withNicksMm" | "withoutNicksMm"): string => halves.map((half) => signed(feather[half][of] - feather[half].overMm)).join(" and ");
  const nicked = nicks.length === 0 ? "no nick" : nicks.length === 1 ? "one nick" : `${nicks.length} nicks`;
  return [
    `Laid back on the last, the card is true in ${off === 0 ? `all ${rows.length}` : `${rows.length - off} of ${rows.length}`} checks; at the flanks it stands off by ${flank("medial")} inside and ${flank("lateral")} outside at most.`,
    `Its feather edge differs from where it lies by ${over("withoutNicksMm")} mm as it is, by ${over("withNicksMm")} mm with ${nicked}, inner and outer half.`,
    `The halves differ most ${mm(mostDifferent.toEndMm)} behind the throat along the topline: there the ${mostDifferent.differenceMm > 0 ? "inner" : "outer"} one lies ${mm(Math.abs(mostDifferent.differenceMm))} farther in.`,
  ].join("\n");
}

const signed = (value: number): string => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(1)}`;

/** All findings, the grave ones first; empty when there are none. What other seams would do is good to know but long, so it stands last by itself. */
export function sayFindings(findings: readonly Finding[]): string {
  const kindOf = (f: Finding): string => (f.code === "seam-worth" ? "seams" : severityOf(f));
  const part = (title: string, kind: "look" | "note" | "seams") => {
    const told = findings.filter((f) => kindOf(f) === kind).map((f) => `  - ${explain(f)}`);
    return told.length > 0 ? [title, ...told] : [];
  };
  return [...part("To look at before cutting:", "look"), ...part("Good to know:", "note"), ...part("Ways of seams, the best first:", "seams")].join("\n");
}
