import type { CostPart } from "./cost.ts";
import type { GoodId } from "../goods.ts";

/** The part of the shoe that money for a good goes into. Tapes and elastic are sewn in, so they stand with the closing; the card stands with the upper it is the pattern of. */
export const partOfGood: Readonly<Record<GoodId, Exclude<CostPart, "work" | "overhead">>> = {
  "upper leather": "upper", "pattern card": "upper",
  "lining leather": "lining",
  stiffener: "stiffening", "toe puff": "stiffening", "side lining": "stiffening",
  "sock leather": "insole", "insole board": "insole", "second board": "insole", shanks: "insole", filler: "insole",
  "sole leather": "sole and heel", "lift leather": "sole and heel", "top piece leather": "sole and heel", "edge finish": "sole and heel",
  thread: "closing", fastenings: "closing", needles: "closing", elastic: "closing", "fold tape": "closing", "seam tape": "closing", "flank tape": "closing",
  "contact cement": "cement and nails", latex: "cement and nails", paste: "cement and nails",
  "insole tacks": "cement and nails", "lasting tacks": "cement and nails", "lasting nails": "cement and nails", "heel nails": "cement and nails", "water-based cement": "cement and nails",
};

/** What is meant by skins where they cost more: leather bought by the skin. Sole and heel leather come from bends and shoulders. */
export const skinGoods: readonly GoodId[] = ["upper leather", "lining leather", "sock leather"];
