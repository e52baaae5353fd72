import { capital } from "../listed.ts";
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

interface Ends {
  readonly throatDepthMm: number;
  readonly backHeightMm: number;
  readonly innerHeightMm: number;
  readonly outerHeightMm: number;
}
const ways = (rows: readonly (readonly [string, number])[], still: string): string => rows.map(([what, byMm]) => `${nameOf(what)} ${level(byMm) ? still : `${mm(byMm)} ${wayOf(what, byMm)}`}`).join(", ");
const moved = (d: Ends, still: string): string => ways([["throatDepthMm", d.throatDepthMm], ["backHeightMm", d.backHeightMm], ["innerHeightMm", d.innerHeightMm], ["outerHeightMm", d.outerHeightMm]], still);

interface Strains {
  readonly missMm: number;
  readonly bandMm: number;
  readonly stretch: number;
  readonly standOffMm: number;
}
const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
const remedyWords: Readonly<Record<string, string>> = {
  tape: "a tape in the topline, or one twice as firm",
  direction: "the upper turned by a quarter, or back to least stretch lengthwise where it lies turned",
  lining: "a lining that gives half as much",
  leather: "an upper that gives a third less",
};
const limitSaid = (kind: string, by: number, limit: number): string => {
  if (kind === "short") return "The corrected pattern does not end where it is asked.";
  if (kind === "band") return `Leathers like this one differ so much that the throat may end ${mm(by)} to either side; ${mm(limit)} is what a pair may be apart. Test strips of your own skin narrow that.`;
  if (kind === "grain") return `The upper is stretched by ${percent(by)} at the worst place, more than its grain bears.`;
  if (kind === "stands off") return `A flank stands ${mm(by)} off the last; ${mm(limit)} is what passes.`;
  if (kind === "strong") return `A draft is pulled with ${newton(by)}: above ${newton(limit)} a pull is strong, and the leather near its end.`;
  return `At one draft only ${by > 0 ? mm(by) : "nothing"} of margin is left; ${mm(limit)} are needed to cement it (common practice). Cut more margin there.`;
};
const helpSaid = (kind: string, now: Strains, after: Strains): string => {
  if (kind === "band") return `the throat may then end ${mm(after.bandMm)} to either side instead of ${mm(now.bandMm)}`;
  if (kind === "grain") return `nearly all of the upper is then stretched by less than ${percent(after.stretch)} instead of ${percent(now.stretch)}`;
  if (kind === "stands off") return `the topline then stands off by ${mm(after.standOffMm)} instead of ${mm(now.standOffMm)}`;
  return `the worst end then misses by ${mm(after.missMm)} instead of ${mm(now.missMm)}`;
};

const upAgain = (where: string, then: string): string => `warm the cement, take the margin up ${where}, ${then}, and cement it again before the sole is on`;
/** What lies too near to the edge is let back; only what lies too far from it is drawn again. */
const cementedHelp: Readonly<Record<string, readonly [tooNear: string, tooFar: string]>> = {
  throatDepthMm: [upAgain("from joint to joint", "let the throat back with a lighter pull at the toe"), upAgain("from joint to joint", "draw the toe again")],
  backHeightMm: [upAgain("round the seat", "let the back up to its mark"), upAgain("round the seat", "draw the back down to its mark")],
  innerHeightMm: [upAgain("along the inner waist", "let the side up"), upAgain("along the inner waist", "draw the side down")],
  outerHeightMm: [upAgain("along the outer waist", "let the side up"), upAgain("along the outer waist", "draw the side down")],
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
    `${capital(d.side)} shoe, ${fieldWords[d.what] ?? d.what}: ${mm(d.value)} was measured, ${mm(d.askedMm)} was asked. Measure it once more, along the upper.`,
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
  "log-draft": sentence("look", (d: { side: Side; draft: number; name: string; byN: number; toN: number; word: string; edgeMm: number; moves: readonly { what: string; byMm: number }[]; reckoned: boolean }) => {
    const how = d.byN < 0 ? "ease it" : "pull it more";
    const edge = Math.abs(d.edgeMm) < 0.05 ? "" : `; its edge ${d.edgeMm < 0 ? "goes back" : "comes on"} by about ${mm(d.edgeMm)}`;
    const then = d.moves.map(({ what, byMm }) => `the ${nameOf(what)} comes ${mm(byMm)} ${wayOf(what, byMm)}`).join(", ");
    return `${capital(d.side)} shoe, draft ${d.draft} (${d.name}): ${how} by about ${newton(d.byN)}, to ${d.word} (${newton(d.toN)})${edge}.${then && ` ${capital(then)}.`} ${d.reckoned ? "Reckoned for this pair." : "Rule of thumb."}`;
  }),
  "log-margin-thin": sentence("look", (d: { side: Side; draft: number; marginMm: number; leastMm: number }) =>
    `${capital(d.side)} shoe: with that only ${mm(Math.max(0, d.marginMm), 0)} of margin is left at draft ${d.draft}; ${mm(d.leastMm, 0)} are needed to cement it (common practice). Ease it less, and cut the next pair with more margin there.`,
  ),
  "log-not-by-drafts": sentence("look", (d: { side: Side; what: string; byMm: number }) =>
    `${capital(d.side)} shoe: drafts alone do not bring the ${nameOf(d.what)} the last ${mm(d.byMm)} ${wayOf(d.what, d.byMm)}. Correct the pattern for the next pair.`,
  ),
  "log-cemented": sentence("look", (d: { side: Side; what: string; byMm: number }) =>
    `${capital(d.side)} shoe: the ${nameOf(d.what)} should come ${mm(d.byMm)} ${wayOf(d.what, d.byMm)}, and the margin is cemented. What can still be done: ${cementedHelp[d.what]?.[d.byMm > 0 ? 0 : 1] ?? "warm the cement and draft again"} (common practice; try the heat on a scrap first). After that only the next pair can be right.`,
  ),
  "log-bottom-apart": sentence("look", (d: { what: string; side: Side; byMm: number }) =>
    `The ${nameOf(d.what)} of the ${d.side} shoe is ${mm(d.byMm)} ${d.what === "soleMarginMm" ? "wider" : "higher"}: ${bottomHelp[d.what] ?? "make both alike"}.`,
  ),
  "log-your-hand": sentence("note", () => "These pulls are reckoned, not felt. Move a draft by half first, look, measure again; your hand and eye decide."),
  "log-teaches-not": sentence("note", (d: { pair: number; why: "no throat" | "not foretold" | "hardly moves" | "other leather"; leather: string; perTenthMm?: number }) =>
    ({
      "no throat": `Pair ${d.pair} does not teach yet how much ${d.leather} gives: type the throat of either shoe.`,
      "not foretold": `Pair ${d.pair} does not teach how much ${d.leather} gives, since nothing that was foretold stands with it.`,
      "hardly moves": `Pair ${d.pair} cannot teach how much ${d.leather} gives: the throat of this upper moves by only ${mm(d.perTenthMm ?? 0, 2)} for leather that gives a tenth more.`,
      "other leather": `Pair ${d.pair} was made of ${d.leather}: it teaches about that leather, not about the one that is cut now.`,
    })[d.why],
  ),
  "log-leather-untold": sentence("note", (d: { leather: string; others: number; shoes: number }) =>
    `No shoe tells yet how much more or less ${d.leather} gives than its strips say: ${d.shoes > 0 ? "its shoes lack a measured throat, or nothing had been foretold of them" : "none is written down"}${d.others > 0 ? "; shoes of other leathers do not count" : ""}.`,
  ),
  "log-pair-says": sentence("note", (d: { pair: number; missMm: number; factor: number; weight: number; otherLast: boolean }) =>
    `Pair ${d.pair}: the throat came ${level(d.missMm) ? "where it was foretold" : `${mm(d.missMm)} ${wayOf("throatDepthMm", d.missMm)} than foretold`}, as if the leather gave ${times(d.factor)} as much as its strips say. ${capital(d.otherLast ? "it was made on another last and counts less than its own" : "against the strips it counts")} ${Math.round(100 * d.weight)} in 100.`,
  ),
  "log-leather-gives": sentence("note", (d: { leather: string; factor: number; low: number; high: number; pairs: number; handMm: number }) =>
    `${capital(d.leather)} is now taken to give ${times(d.factor)} as much as its strips say, with a band from ${d.low.toFixed(2)} to ${d.high.toFixed(2)}. Your hand's own scatter is taken to be ${mm(d.handMm)} at the throat of one shoe.`,
  ),
  compensated: sentence("note", (d: { rounds: number; withinMm: number; betweenMm: number } & Ends) =>
    `Pulled over, the corrected pattern ends within ${mm(d.withinMm)} of what is asked, after ${d.rounds === 1 ? "one trial" : `${d.rounds} trials`}: ${moved(d, "as asked")}.${d.betweenMm > 0.5 ? ` Between these places a side is off by up to ${mm(d.betweenMm)}.` : ""}`,
  ),
  "compensation-short": sentence("look", (d: { rounds: number; withinMm: number } & Ends) =>
    `The pattern alone does not bring this leather to where it is asked. After ${d.rounds} trials: ${moved(d, "as asked")}; ${mm(d.withinMm)} was aimed at. Look at what helps, and cut one shoe for trial first.`,
  ),
  turned: sentence("note", (d: { layer: string; byDeg: number } & Ends) => `The ${d.layer} turned ${Math.abs(d.byDeg)} degrees ${d.byDeg > 0 ? "counter-clockwise" : "clockwise"}: ${moved(d, "as now")}.`),
  "lay-upper": sentence("note", () =>
    "Upper, vamp and quarters: least stretch from heel to toe, along the topline. It keeps the topline from growing and the quarters from gaping; what gives across is pulled round the forepart. (Common practice for pumps; vamps of laced shoes are often cut the other way. In firm leather or the best part of a skin it may be taken less strictly, in soft leather never.)",
  ),
  "lay-vamp-lining": sentence("note", () => "Vamp lining: least stretch lengthwise, as the upper over it, so that both give alike at the throat (common practice)."),
  "lay-quarter-lining": sentence("note", () => "Quarter linings: least stretch lengthwise at the topline, so that the edge holds; they may give up and down (common practice)."),
  "lay-heel-pocket": sentence("note", () => "Heel pocket: what gives goes round the heel, where it must lie without folds (common practice)."),
  "lay-mated": sentence("note", () => "Lay left and right as mirror images on like places of one skin, so that corresponding sides of both shoes stretch alike (an old rule of the trade)."),
  swapped: sentence("look", (d: { from: string; to: string; fromMm: number; toMm: number; lowMm: number; highMm: number }) =>
    `The same pattern in ${d.to} instead of ${d.from}: the throat ends at ${mm(d.toMm)} instead of ${mm(d.fromMm)}${level(d.toMm - d.fromMm) ? "" : `, ${mm(d.toMm - d.fromMm)} ${wayOf("throatDepthMm", d.toMm - d.fromMm)}`}; between ${mm(d.lowMm)} and ${mm(d.highMm)} in 80 of 100 such leathers.`,
  ),
  "band-restless": sentence("look", (d: { unsettled: number; draws: number; rough: boolean }) =>
    d.rough
      ? `${d.unsettled} of the ${d.draws} leathers that were tried did not come to rest on the last, so where the ends lie between is told only roughly. Pulls nearer to the usual ones may help.`
      : `${d.unsettled} of the ${d.draws} leathers that were tried did not come to rest on the last and ${d.unsettled === 1 ? "is" : "are"} left out.`,
  ),
  "pattern-limit": sentence("look", (d: { kind: string; by: number; limit: number }) => limitSaid(d.kind, d.by, d.limit)),
  "remedy-helps": sentence("look", (d: { remedy: string; helps: string[]; now: Strains; after: Strains; throatByMm: number }) =>
    `What helps: ${remedyWords[d.remedy] ?? d.remedy}. ${capital(d.helps.map((kind) => helpSaid(kind, d.now, d.after)).join("; "))}.${level(d.throatByMm) ? "" : ` The throat then comes ${mm(d.throatByMm)} ${wayOf("throatDepthMm", d.throatByMm)}: correct the pattern again.`} (Tried on a coarse sheet.)`,
  ),
  "no-remedy": sentence("look", () => "Tape, direction, lining and a firmer leather were tried, and none helps much here. Ease what is asked: another throat, less topline taken up, lighter pulls; and make one shoe for trial."),
};
