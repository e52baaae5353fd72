import { cutTapedPieces } from "#pieces/cut.ts";
import { pieceRulesForTape, pieceSettingsFrom } from "#pieces/rules.ts";
import { tapedPartsFrom } from "#pieces/tape-lacks.ts";
import { usualSheets } from "#sheets/choices.ts";
import type { TapeInput } from "#sheets/input.ts";
import { tapedShell } from "#tape/from-traced.ts";
import { demoTape } from "./demo-tape.ts";
import { sampleMaking } from "./sample-making.ts";
import { laid } from "./taped-outlines.ts";
import { tracedPicture } from "./traced.ts";

const { medial, lateral, bottom } = demoTape();

/** The sheets' input of a taped pattern: both halves in one picture, with or without its bottom. */
export function tapedInput(side: "left" | "right", withBottom: boolean): TapeInput {
  const left = side === "left";
  const picture = tracedPicture("tape.jpg", [laid(medial, 37, [100, 420], left), laid(lateral, -120, [-50, 20], left), ...(withBottom ? [laid(bottom.outline, 11, [400, 0], left)] : [])]);
  const tape = tapedShell([picture], { photos: ["tape.jpg"], side });
  const settings = pieceSettingsFrom(pieceRulesForTape(tape));
  const parts = tapedPartsFrom();
  const { pieces, strips, stitching, findings, made } = cutTapedPieces(tape, { settings, labels: { title: "Taped", size: "" }, parts });
  const making = sampleMaking({ from: "tape", pieces, strips, stitching, settings, parts, ...(made && { made }) });
  return { from: "tape", title: "Taped", size: "", choices: usualSheets, strips, stitching, making, parts, edge: "taped", ...(made && { made }), tape, traced: [picture], pieces, pieceSettings: settings, findings: [...tape.findings, ...findings], timesMs: {} };
}
