import type { GoodId, Measure } from "../goods.ts";

/** How the amount of each good is counted. */
export const measureOf: Readonly<Record<GoodId, Measure>> = {
  "upper leather": "area", "lining leather": "area", "sock leather": "area", stiffener: "area", "toe puff": "area", "side lining": "area", elastic: "length",
  "fold tape": "length", "seam tape": "length", "flank tape": "length",
  "insole board": "area", "second board": "area", shanks: "count", filler: "area", "sole leather": "area", "lift leather": "area", "top piece leather": "area",
  thread: "length", needles: "count",
  "contact cement": "mass", "water-based cement": "mass", latex: "mass", paste: "mass",
  "insole tacks": "count", "lasting tacks": "count", "lasting nails": "count", "heel nails": "count",
  fastenings: "count", "pattern card": "area", "edge finish": "volume",
};
