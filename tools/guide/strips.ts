import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fitStrips } from "#leather/fit-strips.ts";
import { readStripCsv } from "#leather/strip-csv.ts";
import { stripDrawing } from "#leather/strip-drawing.ts";
import { stripPlotSvg } from "#leather/strip-plot-svg.ts";
import { sketchSvg } from "#leather/strip-sketch.ts";
import type { Made } from "./make.ts";

export const stripPicturesFolder = join("docs", "guide", "strips");

/** The drawings of the strip test, and the plot of the example's invented readings. */
export function stripPictures(): readonly Made[] {
  const fit = fitStrips({ known: "goat", strips: readStripCsv(readFileSync(join("examples", "strips-goat.csv"), "utf8")).strips });
  const plot = { key: "plot", text: stripPlotSvg(fit, "Stretch over load of the example's invented readings, with the fitted curves and their bands") };
  return [...stripDrawing().map((sketch) => ({ key: sketch.key, text: sketchSvg(sketch) })), plot].map(({ key, text }) => ({ path: join(stripPicturesFolder, `${key}.svg`), text }));
}
