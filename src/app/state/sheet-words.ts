import { trueBarMm, type SheetChoices, type SheetSet } from "#sheets/choices.ts";
import type { PaperName } from "#sheets/paper.ts";
import type { Layer } from "#sheets/pen.ts";
import { listed } from "#base/listed.ts";
import { mm, say } from "./numbers.ts";

export const paperWords = (paper: PaperName): string => (paper === "roll" ? "paper from a roll" : paper);

export const setWords: Readonly<Record<SheetSet, string>> = {
  both: "the net cards and the cutting patterns",
  net: "the net cards alone",
  cutting: "the cutting patterns alone",
};

export const layerWords: Readonly<Record<Layer, string>> = { cut: "cutting lines", mark: "marks", fold: "fold lines", text: "words" };

/** What the maker wants otherwise than usual on her sheets. */
export function sheetWords({ paper, rollWidthMm, sets, onePage, barAcrossMm, barUpMm, layers }: Partial<SheetChoices>): readonly string[] {
  return [
    paper && paperWords(paper),
    rollWidthMm !== undefined && paper === "roll" && `roll ${mm(rollWidthMm, 0)} wide`,
    sets && setWords[sets],
    onePage && "each piece on a page of its own",
    layers && `drawings with ${listed(layers.map((l) => layerWords[l]))}`,
    (barAcrossMm ?? trueBarMm) !== trueBarMm || (barUpMm ?? trueBarMm) !== trueBarMm ? `bars ${say(barAcrossMm ?? trueBarMm, 2)} across and ${say(barUpMm ?? trueBarMm, 2)} up` : undefined,
  ].filter((w) => typeof w === "string" && w !== "") as readonly string[];
}
