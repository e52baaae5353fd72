import { sentence } from "../sentence.ts";

const mm = (value: number, digits = 1): string => `${Math.abs(value).toFixed(digits)} mm`;
const newton = (value: number): string => `${Math.abs(value).toFixed(0)} N`;
const times = (value: number): string => `${value.toFixed(2)} times`;

/** What is measured, as the subject of a sentence, and its two ways of being off. */
const dimensionWords: Readonly<Record<string, readonly [name: string, more: string, less: string]>> = {
  throatDepthMm: ["throat", "farther from the toe", "nearer to the toe"],
  backHeightMm: ["back", "higher", "lower"],
  innerHeightMm: ["inner side", "higher", "lower"],
  outerHeightMm: ["outer side", "higher", "lower"],
  soleMarginMm: ["sole", "standing out more", "standing out less"],
  heelHeightMm: ["heel", "higher", "lower"],
  marginMm: ["margin", "wider", "narrower"],
};
const fieldWords: Readonly<Record<string, string>> = {
  throatDepthMm: "throat depth", backHeightMm: "back height", innerHeightMm: "inner side height", outerHeightMm: "outer side height",
  soleMarginMm: "sole margin", heelHeightMm: "heel height", marginMm: "margin",
};
const nameOf = (what: string): string => dimensionWords[what]?.[0] ?? what;
const wayOf = (what: string, byMm: number): string => dimensionWords[what]?.[byMm > 0 ? 1 : 2] ?? "off";
const subject = (what: string, draft: number | undefined): string => (draft === undefined ? `the ${nameOf(what)} is` : `the margin at draft ${draft} is`);
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
/** The pull in a word of the bench; newtons stand behind it. */
const pulled = (n: number): string => (n <= 12 ? "light" : n <= 30 ? "firm" : "strong");

interface Row {
  readonly what: string;
  readonly draft?: number;
  readonly offMm: number;
  readonly toleranceMm: number;
  readonly verdict: string;
  readonly beyondMm: number;
}
type Side = "left" | "right";
const level = (offMm: number): boolean => Math.abs(offMm) < 0.05;
const verdict = ({ toleranceMm, verdict: word, beyondMm }: Row): string => `${capital(word)}${beyondMm > 0 ? ` by ${mm(beyondMm)}` : ""}: ${mm(toleranceMm)} at most.`;
const asked = (d: Row & { side: Side }): string => `${capital(d.side)} shoe: ${subject(d.what, d.draft)} ${level(d.offMm) ? "where it was asked" : `${mm(d.offMm)} ${wayOf(d.what, d.offMm)} than asked`}. ${verdict(d)}`;
const alike = (d: Row): string => `${capital(subject(d.what, d.draft))} ${level(d.offMm) ? "alike on both shoes" : `${mm(d.offMm)} ${wayOf(d.what, d.offMm)} on the left shoe`}. ${verdict(d)}`;

const cementedHelp: Readonly<Record<string, string>> = {
  throatDepthMm: "warm the cement, take the margin up from joint to joint and draw the toe again before the sole is on",
  backHeightMm: "warm the cement, take the margin up round the seat and set the back at its mark again before the sole is on",
  innerHeightMm: "warm the cement, take the margin up along the inner waist and draft it again before the sole is on",
  outerHeightMm: "warm the cement, take the margin up along the outer waist and draft it again before the sole is on",
};
const bottomHelp: Readonly<Record<string, string>> = {
  soleMarginMm: "trim its sole edge by half of that at a time until both are alike",
  heelHeightMm: "take that much off its lifts, or add a layer of that thickness under the other shoe's",
};

export const loopSentences = {
  "log-measure-impossible": sentence("look", (d: { side: Side; field: string; what: string; value: number; least: number; most: number }) =>
    `${capital(d.side)} shoe, ${fieldWords[d.what] ?? d.what}${d.what === "marginMm" ? ` at draft ${d.field.split(".")[1]}` : ""}: ${Number.isFinite(d.value) ? mm(d.value, Number.isInteger(d.value) ? 0 : 1).replace(/^/, d.value < 0 ? "−" : "") : "what was typed"} cannot be; on this last it lies between ${d.least} and ${Math.floor(d.most)} mm. Read the tape again, in mm.`,
  ),
  "log-measure-far": sentence("look", (d: { side: Side; field: string; what: string; value: number; askedMm: number }) =>
    `${capital(d.side)} shoe, ${fieldWords[d.what] ?? d.what}: ${mm(d.value)} was measured, ${mm(d.askedMm)} was asked. Measure it once more from the feather edge, along the surface.`,
  ),
  "log-shoe-twice": sentence("look", (d: { pair: number; side: Side }) => `The ${d.side} shoe of pair ${d.pair} is written down twice. The later one counts; take the other one out, or give it its own pair.`),
  "log-shoe-inside": sentence("note", asked),
  "log-shoe-outside": sentence("look", asked),
  "log-pair-inside": sentence("note", alike),
  "log-pair-outside": sentence("look", alike),
  "log-change-which": sentence("look", (d: { what: string; apartMm: number; side: Side; offMm?: number; otherMm?: number }) =>
    d.offMm === undefined || d.otherMm === undefined
      ? `The shoes are ${mm(d.apartMm)} apart at the ${nameOf(d.what)}. Nothing was asked there, so either may be changed; here it is the ${d.side} one.`
      : `The shoes are ${mm(d.apartMm)} apart at the ${nameOf(d.what)}. The ${d.side} one is farther from what was asked (${mm(d.offMm)} against ${mm(d.otherMm)}): change that one.`,
  ),
  "log-draft": sentence("look", (d: { side: Side; draft: number; name: string; byN: number; toN: number; edgeMm: number; moves: readonly { what: string; byMm: number }[]; reckoned: boolean }) => {
    const how = d.byN < 0 ? "ease it" : "pull it more";
    const edge = Math.abs(d.edgeMm) < 0.05 ? "" : `; its edge ${d.edgeMm < 0 ? "goes back" : "comes on"} by about ${mm(d.edgeMm)}`;
    const then = d.moves.map(({ what, byMm }) => `the ${nameOf(what)} comes ${mm(byMm)} ${wayOf(what, byMm)}`).join(", ");
    return `${capital(d.side)} shoe, draft ${d.draft} (${d.name}): ${how} by about ${newton(d.byN)}, to ${pulled(d.toN)} (${newton(d.toN)})${edge}.${then && ` ${capital(then)}.`} ${d.reckoned ? "Reckoned for this pair." : "Rule of thumb."}`;
  }),
  "log-margin-thin": sentence("look", (d: { side: Side; draft: number; marginMm: number; leastMm: number }) =>
    `${capital(d.side)} shoe: with that only ${mm(Math.max(0, d.marginMm), 0)} of margin is left at draft ${d.draft}; ${mm(d.leastMm, 0)} are needed to cement it (common practice). Ease it less, and cut the next pair with more margin there.`,
  ),
  "log-not-by-drafts": sentence("look", (d: { side: Side; what: string; byMm: number }) =>
    `${capital(d.side)} shoe: drafts alone do not bring the ${nameOf(d.what)} the last ${mm(d.byMm)} ${wayOf(d.what, d.byMm)}. Correct the pattern for the next pair.`,
  ),
  "log-cemented": sentence("look", (d: { side: Side; what: string; byMm: number }) =>
    `${capital(d.side)} shoe: the ${nameOf(d.what)} should come ${mm(d.byMm)} ${wayOf(d.what, d.byMm)}, and the margin is cemented. What can still be done: ${cementedHelp[d.what] ?? "warm the cement and draft again"} (common practice; try the heat on a scrap first). After that only the next pair can be right.`,
  ),
  "log-bottom-apart": sentence("look", (d: { what: string; side: Side; byMm: number }) =>
    `The ${nameOf(d.what)} of the ${d.side} shoe is ${mm(d.byMm)} ${d.what === "soleMarginMm" ? "wider" : "higher"}: ${bottomHelp[d.what] ?? "make both alike"}.`,
  ),
  "log-your-hand": sentence("note", () => "These pulls are reckoned, not felt. Move a draft by half first, look, measure again; your hand and eye decide."),
  "log-leather-untold": sentence("note", (d: { leather: string; others: number; shoes: number }) =>
    `No shoe tells yet how much more or less ${d.leather} gives than its strips say: ${d.shoes > 0 ? "its shoes lack a measured throat, or nothing had been foretold of them" : "none is written down"}${d.others > 0 ? "; shoes of other leathers do not count" : ""}.`,
  ),
  "log-pair-says": sentence("note", (d: { pair: number; missMm: number; factor: number; weight: number; otherLast: boolean }) =>
    `Pair ${d.pair}: the throat came ${level(d.missMm) ? "where it was foretold" : `${mm(d.missMm)} ${wayOf("throatDepthMm", d.missMm)} than foretold`}, as if the leather gave ${times(d.factor)} as much as its strips say. ${capital(d.otherLast ? "it was made on another last and counts less than its own" : "against the strips it counts")} ${Math.round(100 * d.weight)} in 100.`,
  ),
  "log-leather-gives": sentence("note", (d: { leather: string; factor: number; low: number; high: number; pairs: number; handMm: number }) =>
    `${capital(d.leather)} is now taken to give ${times(d.factor)} as much as its strips say, with a band from ${d.low.toFixed(2)} to ${d.high.toFixed(2)}. Your hand's own scatter is taken to be ${mm(d.handMm)} at the throat of one shoe.`,
  ),
};
