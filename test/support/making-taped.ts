import type { MakingInput } from "#making/input.ts";
import { cutTapedPieces } from "#pieces/cut.ts";
import { pieceRulesForTape, pieceSettingsFrom } from "#pieces/rules.ts";
import { tapedPartsFrom } from "#pieces/tape-lacks.ts";
import { tapedShell } from "#tape/from-traced.ts";
import { demoTape } from "./demo-tape.ts";
import { laid } from "./taped-outlines.ts";
import { tracedPicture } from "./traced.ts";

/** What making asks of the example pair's flat pattern (invented), traced as a maker's tape, with its bottom or without. Leathers and stiffening as given. */
export function tapedInput(withBottom: boolean, { stiff, leathers, said }: Pick<MakingInput, "stiff" | "leathers" | "said">): MakingInput {
  const { medial, lateral, bottom } = demoTape();
  const outlines = [laid(medial, 37, [100, 420]), laid(lateral, -120, [-50, 20]), ...(withBottom ? [laid(bottom.outline, 11, [400, 0])] : [])];
  const tape = tapedShell([tracedPicture("tape.jpg", outlines)], { photos: ["tape.jpg"], side: "right" });
  const settings = pieceSettingsFrom(pieceRulesForTape(tape));
  const { pieces, strips, stitching, made } = cutTapedPieces(tape, { settings, labels: { title: "Taped", size: "38" } });
  const mean = (of: "centre" | "back"): number => (tape.medial.lengths[of] + tape.lateral.lengths[of]) / 2;
  return {
    from: "tape", pieces, strips, stitching, parts: tapedPartsFrom(), edge: "taped", settings, stiff, ...(made && { made }), leathers, corrected: false,
    ends: { throatDepthMm: mean("centre"), backHeightMm: mean("back") }, said,
  };
}
