import { finding, type Finding } from "#base/findings.ts";
import type { GoodId } from "../goods.ts";
import type { Need } from "../need.ts";
import type { Price } from "./read-prices.ts";
import type { SaidAmount } from "./said-amount.ts";

/** What one of it is called in the shop, and several. */
type PackName = readonly [one: string, several: string];
const skin: PackName = ["skin", "skins"], sheet: PackName = ["sheet", "sheets"], piece: PackName = ["piece", "pieces"], roll: PackName = ["roll", "rolls"], tin: PackName = ["tin", "tins"], pack: PackName = ["pack", "packs"];
const packNames: Readonly<Record<GoodId, PackName>> = {
  "upper leather": skin, "lining leather": skin, "sock leather": skin,
  stiffener: sheet, "toe puff": sheet, "side lining": sheet, "insole board": sheet, "second board": sheet, filler: sheet, "pattern card": sheet,
  "sole leather": piece, "lift leather": piece, "top piece leather": piece,
  elastic: roll, "fold tape": roll, "seam tape": roll, "flank tape": roll,
  thread: ["spool", "spools"],
  "contact cement": tin, "water-based cement": tin, latex: tin, paste: tin, "edge finish": ["bottle", "bottles"],
  fastenings: pack, shanks: pack, needles: pack, "insole tacks": pack, "lasting tacks": pack, "lasting nails": pack, "heel nails": pack,
};

/** How a good is bought whole: the size of one. Nothing where as much is cut off or weighed out as is asked for. */
export function packOf({ measure }: Need, price: Price | undefined, size: SaidAmount | undefined): SaidAmount | undefined {
  if (size) return size;
  if (measure === "count") return price?.per ?? { amount: 1, words: "" };
  // A price for a square foot or a metre says nothing of the size of the skin or roll; one for 50 m, for 250 g is that of a roll, a tin.
  const whole = measure === "mass" || measure === "volume" || (measure === "length" && price !== undefined && price.per.amount > 1000);
  return whole ? price?.per : undefined;
}

/** "3 skins of 6 ft2", "1 spool of 1000 m", "2 pairs", "44 pieces"; "nothing" where none has to be bought. */
export function packWords(need: Pick<Need, "good" | "ofLeather">, count: number, { amount, words }: SaidAmount): string {
  if (count === 0) return "nothing";
  // What is sold singly needs no word for its pack.
  const single = /^1\s*(pair|dozen|piece)$/i.exec(words)?.[1]?.toLowerCase() ?? (amount === 1 ? "piece" : undefined);
  if (single !== undefined) return `${count} ${single}${count === 1 || single === "dozen" ? "" : "s"}`;
  return `${count} ${packName(need)[count === 1 ? 0 : 1]} of ${words}`;
}

const packName = ({ good, ofLeather }: Pick<Need, "good" | "ofLeather">): PackName => (ofLeather ? piece : packNames[good]);

/** Tells where a skin, sheet or piece is smaller than the largest part that has to come out of it. */
export function checkSizes(needs: readonly Need[], sizes: ReadonlyMap<GoodId, SaidAmount>, findings: Finding[]): void {
  for (const need of needs) {
    const { good, measure, holds } = need;
    const size = sizes.get(good);
    if (measure === "area" && size && holds && size.amount < holds.longMm * holds.wideMm) findings.push(finding("money-size-small", { good, name: packName(need)[0], got: size.words, longMm: holds.longMm, wideMm: holds.wideMm }));
  }
}
