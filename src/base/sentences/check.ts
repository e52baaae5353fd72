import { sentence } from "../sentence.ts";
import { halfName } from "./names.ts";

const mm = (n: number, digits = 1): string => `${Math.abs(n).toFixed(digits)} mm`;

/** What each check is called, and where to look when it does not hold. */
const checks: Readonly<Record<string, readonly [string, string]>> = {
  "topline-free": ["topline before it is shortened", "Scan the last more evenly along the topline, or draw the topline smoother."],
  "topline-drawn": ["topline", "Shorten it less, or give it another leather or edge."],
  back: ["back curve", "Check the scan at the heel, and the back seam's card by hand."],
  "throat-depth": ["throat depth", "Check the scan along the centre of the vamp, and the card's fold line by hand."],
  feather: ["feather edge between heel breast and joint", "Check the feather line there, and hold the card against the last at the waist."],
  "joint-girth": ["way round the joint", "Hold the card against the last at the joint before you cut leather."],
  area: ["area", "The last is too domed for a card in one piece to be trusted: give the pattern a seam, or trial it in scrap first."],
};

/** Why a card stands off, as a maker would say it. */
const reasons: Readonly<Record<string, string>> = {
  "topline-slack": "Its topline is longer there than its way round the last and lies slack.",
  "heel-slack": "Its topline lies slack there, though it is cut as short as is usual.",
  "waist-hollow": "Its topline is drawn tight there and spans the hollow of the waist.",
};

/** A change of one number, where there is still room for one within what is usual. */
interface Change {
  readonly setting?: string;
  readonly by?: number;
}

const change = (setting: string, by: number): string => {
  const more = by > 0;
  switch (setting) {
    case "toplineShorter":
      return `${more ? "Shorten the topline by another" : "Shorten the topline less, by"} ${(100 * Math.abs(by)).toFixed(1)} % of its length`;
    case "springMm":
      return `Add ${mm(by)} of spring`;
    case "throatDepthMm":
      return `Move the throat ${mm(by)} ${more ? "farther from" : "nearer to"} the toe`;
    default:
      return `${more ? "Raise" : "Lower"} the ${setting === "sideHeightMedialMm" ? "inner" : "outer"} side by ${mm(by)}`;
  }
};

/** How far it stands off under the usual hand, a firm one and a light one. */
interface Hands {
  readonly standOffMm: number;
  readonly firmMm: number;
  readonly lightMm: number;
}
const byHand = ({ standOffMm, firmMm, lightMm }: Hands): string => `${mm(standOffMm)} (${mm(firmMm)} under a firm hand, ${mm(lightMm)} under a light one)`;

interface Gaping extends Hands, Change {
  readonly half: string;
  readonly fromBackMm: number;
  readonly why: string;
}

/** What to do where no number has room left. */
const nothingLeft: Readonly<Record<string, string>> = {
  "heel-slack": "Within what is usual for this leather and edge no number is left to change: take a leather that is cut shorter, or another last, and sew a trial in scrap before you cut.",
  "waist-hollow": "Within what is usual no number is left to change: take a leather that gives more, or another last, and sew a trial in scrap before you cut.",
};

function gapes({ half, fromBackMm, why, setting, by, ...hands }: Gaping): string {
  const what = setting === undefined || by === undefined ? (nothingLeft[why] ?? "") : `${change(setting, by)} and look again.`;
  return `Laid back on the last, the card stands off on the ${halfName(half)} half, ${mm(fromBackMm, 0)} along the topline from the back seam, by ${byHand(hands)}. ${reasons[why] ?? ""} ${what}`;
}

export const checkSentences = {
  "card-gapes": sentence("look", gapes),
  "card-gapes-lightly": sentence("note", (d: Gaping) => gapes(d)),
  "card-spans-instep": sentence("note", ({ setting, by, ...hands }: Hands & Change) => {
    const what = setting === undefined || by === undefined ? "The throat already lies as far from the toe as it should." : `${change(setting, by)} to have less to draw.`;
    return `Laid back on the last, the card stands off at the throat by ${byHand(hands)}: its fold spans the hollow where the vamp rises to the instep. Card does so on every last; leather is drawn down there when it is lasted. ${what}`;
  }),
  "card-off": sentence(
    "look",
    (d: { key: string; half?: string; onLastMm: number; onCardMm: number; leastMm: number; mostMm: number }) => {
      const [name, what] = checks[d.key] ?? [d.key, ""];
      const off = d.onCardMm - d.onLastMm;
      const of = d.half ? `${name}, ${halfName(d.half)} half,` : name;
      if (d.key === "area") return `The card's ${name} is ${((100 * Math.abs(off)) / d.onLastMm).toFixed(1)} % ${off > 0 ? "larger" : "smaller"} than the surface it is for; 2 % is the most. ${what}`;
      const near = (n: number): string => `${n < 0 ? "−" : "+"}${mm(n)}`;
      return `The ${of} is ${mm(off)} ${off > 0 ? "longer" : "shorter"} on the card than on the last; ${near(d.leastMm)} to ${near(d.mostMm)} is right. ${what}`;
    },
  ),
  "not-tried": sentence("look", (d: { why: string }) => `The pattern could not be tried on the last. ${d.why} Cut the net piece from card and hold it on the last before you cut leather.`),
  "card-does-not-rest": sentence(
    "note",
    (d: { moveMm: number }) => `The card laid back on the last did not quite come to rest${Number.isFinite(d.moveMm) ? `: it still moves ${mm(d.moveMm, 2)}` : ""}. Trust the check only roughly, and drape a card by hand.`,
  ),
};
