/** How an amount of something is counted. Inside: area mm², length mm, volume mm³, mass g, count pieces. */
export const measures = ["area", "length", "volume", "mass", "count"] as const;
export type Measure = (typeof measures)[number];

/** What is bought; where a piece is cut from it, the same word as the piece's material. */
export const goodIds = [
  "upper leather", "lining leather", "sock leather", "stiffener", "toe puff", "side lining", "elastic",
  "fold tape", "seam tape", "flank tape",
  "insole board", "second board", "shanks", "filler", "sole leather", "lift leather", "top piece leather",
  "thread", "needles",
  "contact cement", "water-based cement", "latex", "paste",
  "insole tacks", "lasting tacks", "lasting nails", "heel nails",
  "fastenings", "pattern card", "edge finish",
] as const;
export type GoodId = (typeof goodIds)[number];
