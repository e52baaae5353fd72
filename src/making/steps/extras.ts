import type { Facts } from "./facts.ts";
import { may, type MayStep, type Said } from "./plan.ts";
import { insideEdge, stitchesWords } from "./stitches.ts";
import { mm, those } from "./words.ts";

/** Strap and bow, made by themselves while something else dries. */
export const extraSteps = (facts: Facts): readonly MayStep[] => [
  may("make-strap", "closing", ["skive-upper", "ink-edges", "cut-lining"], facts.has("instep strap"), () => strap(facts)),
  may("make-bow", "closing", ["skive-upper", "cut-lining"], facts.has("bow"), () => bow(facts)),
];

function strap({ settings: s }: Facts): Said {
  return {
    title: "Make the instep straps",
    todo: those(
      s.strapFoldMm > 0 && `Turn ${mm(s.strapFoldMm)} over on latex, on both edges and round the free end; ${mm(s.strapWidthMm)} are left. Hammer flat.`,
      "Stick the lining beneath with latex; it is a little narrower, so that it does not show.",
      `Stitch round ${insideEdge(s.stitchInMm)}, ${stitchesWords("trimming")}.`,
      `Leave the root of ${mm(s.strapUnderMm)} flat and open: it goes between upper and lining.`,
      "Button or buckle are set last, with the shoe on the foot.",
    ),
    needs: { goods: ["upper leather", "lining leather", "latex", "thread", "needles"], tools: ["sewing machine", "paste brush", "bone folder", "closing hammer", "thread snips"] },
    right: ["Both straps are equally long, within 1 mm, and do not curl."],
    fails: ["Cut across the tight way: it grows with every step."],
    minutes: 25,
    shoes: "together",
    hazards: ["sewing machine"],
  };
}

function bow({ settings: s }: Facts): Said {
  return {
    title: "Make the bows",
    todo: [
      `Fold both ends of the band to its middle over the stay: ${mm(s.bowLongMm)} long and ${mm(s.bowWideMm)} high.`,
      `Turn the knot's edges in on latex, so that it is ${mm(s.knotWideMm)} wide; sew the band's lapped ends across, gather its middle, bring the knot round and sew it behind by hand.`,
      "Keep them in the box until the lasts are out: they are sewn on then.",
    ],
    needs: { goods: ["upper leather", "lining leather", "latex", "thread", "needles"], tools: ["sewing machine", "hand needles", "paste brush", "bone folder", "thread snips"] },
    right: ["Laid side by side they are each other's mirror."],
    fails: ["Sewn on before lasting: it moves with the vamp."],
    minutes: 25,
    shoes: "together",
    hazards: ["sewing machine"],
  };
}
