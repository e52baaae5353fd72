import { goodIds, type GoodId } from "../goods.ts";
import { nearestWords } from "./nearest.ts";
import { plainName } from "./plain-name.ts";

const glues: readonly GoodId[] = ["contact cement", "water-based cement", "latex", "paste"];

/** What a maker may call a thing that stands on the list by another name, or is cut from what does. */
const countedAs: Readonly<Record<string, readonly GoodId[]>> = {
  upper: ["upper leather"], binding: ["upper leather"], strap: ["upper leather"], bow: ["upper leather"], "toe cap": ["upper leather"], "back strip": ["upper leather"],
  lining: ["lining leather"], sock: ["sock leather"], leather: ["upper leather", "lining leather", "sole leather"],
  "heel leather": ["lift leather", "top piece leather"], heel: ["lift leather", "top piece leather"], lift: ["lift leather"], "split lift": ["lift leather"], "top piece": ["top piece leather"],
  sole: ["sole leather"], outsole: ["sole leather"], insole: ["insole board"], board: ["insole board", "second board"], cork: ["filler"], felt: ["filler"],
  counter: ["stiffener"], puff: ["toe puff"], gore: ["elastic"], tape: ["fold tape", "seam tape", "flank tape"],
  cement: ["contact cement", "water-based cement"], glue: glues, adhesive: glues,
  tack: ["insole tacks", "lasting tacks"], nail: ["lasting nails", "heel nails"],
  buckle: ["fastenings"], button: ["fastenings"], dye: ["edge finish"], ink: ["edge finish"], wax: ["edge finish"], card: ["pattern card"],
};

/** What may be meant by a name that is no good: what it is counted as, or else names most like it. */
export function goodMeant(written: string): { readonly nearest: readonly string[]; readonly as?: readonly string[] } {
  const name = plainName(written), as = [name, name.replace(/s$/u, "")].find((one) => Object.hasOwn(countedAs, one));
  return as === undefined ? { nearest: nearestWords(written, goodIds) } : { nearest: [], as: countedAs[as]! };
}
