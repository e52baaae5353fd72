import { capital, listed } from "#base/listed.ts";
import type { Facts } from "./facts.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import { mm, those } from "./words.ts";

/** Edges of the upper thinned and, where they stay in sight, coloured. */
export const prepareSteps = (facts: Facts): readonly MayStep[] => [
  must("skive-upper", "closing", ["cut-upper"], () => skive(facts)),
  may("ink-edges", "closing", ["skive-upper"], rawEdges(facts).length > 0, () => ink(facts)),
];

/** Edges of the upper that are seen as they were cut. */
function rawEdges({ rawTopline, has, sideSeam, parts, settings }: Facts): readonly string[] {
  return those(
    rawTopline && "the topline",
    sideSeam && parts.seam === "lapped" && settings.lapFoldMm === 0 && (parts.cut === "quarters" ? "the vamp's wings" : "the upper edge of the lap"),
    has("toe cap") && settings.toeCapFoldMm === 0 && "the toe cap's edge",
    has("back strip") && settings.backStripFoldMm === 0 && "the back strip",
    has("instep strap") && settings.strapFoldMm === 0 && "the instep strap",
  );
}

function skive(facts: Facts): Said {
  const { settings: s, folds, backClosed, sideSeam, parts, has, strip } = facts;
  const closed = (backClosed || (sideSeam && parts.seam === "closed")) && s.skiveSeamMm > 0;
  const lapped = sideSeam && parts.seam === "lapped";
  const others = [has("toe cap") && "toe cap", has("back strip") && "back strip", has("instep strap") && "instep strap", has("bow knot") && "the knot of the bow"].filter((name): name is string => name !== false);
  const smallWords = those(
    strip("topline binding") && "Binding strip: both edges over 3 to 4 mm, to 0.5 mm.",
    others.length > 0 && `${capital(listed(others))}: an edge that is turned over twice its fold, a raw one over ${mm(s.skiveRawMm)}.`,
  );
  return {
    title: "Skive the upper's edges",
    todo: those(
      "Skive scrap of the same skin first, until knife and hand agree; measure it.",
      folds && `Topline: over ${mm(2 * s.toplineFoldMm + s.skiveFoldMoreMm)} from the edge, evenly, to 0.4 to 0.6 mm: twice the fold of ${mm(s.toplineFoldMm)} and a little more.`,
      closed && `Closed seams: over ${mm(s.skiveSeamMm)}, to 0.7 to 0.8 mm.`,
      lapped && `What lies under the lap: over ${mm(s.skiveLapMm)}, feathered to 0.6 to 0.7 mm; the edge over it: ${s.lapFoldMm > 0 ? `over ${mm(2 * s.lapFoldMm + s.skiveFoldMoreMm)} for its fold` : `over ${mm(s.skiveRawMm)}, to 0.8 mm`}.`,
      smallWords.length > 0 && smallWords.join(" "),
      s.skiveToeMm > 0 && `Lasting edge about the toe: ${mm(s.skiveToeMm)} wide, to 0.8 mm, and no farther in.`,
    ),
    needs: { goods: ["upper leather"], tools: ["skiving knife", "paring stone", "strop", "thickness gauge"] },
    right: ["Bent between the fingers, the edge turns in one even curve.", "No step where the skive begins."],
    fails: ["A skive that is thick here and thin there: the first cause of cracked folds.", "A forepart thinned too far in: it wrinkles in lasting.", "Thinned to nothing: what is left has to hold the stitch."],
    minutes: 25,
    shoes: "together",
    hazards: ["knife"],
  };
}

function ink(facts: Facts): Said {
  return {
    title: "Colour the raw edges",
    todo: [
      `These edges stay in sight: ${listed(rawEdges(facts))}.`,
      "Rub them smooth with fine abrasive paper and brush the dust off.",
      "Colour or seal them at once, thinly, with the edge of a sponge or a felt; let it dry for as long as its label says while you do something else, and burnish with a bone. A second coat if the fibre still shows.",
    ],
    needs: { goods: ["upper leather", "edge finish"], tools: ["abrasive paper", "burnishing bone", "gloves"] },
    right: ["Colour on the edge alone, none on the grain.", "A dry finger comes away clean."],
    fails: ["Left for later: a bare edge drinks cement and dirt and never takes the colour evenly."],
    minutes: 10,
    shoes: "together",
    hazards: ["dust"],
  };
}
