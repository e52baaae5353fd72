// The lines of stitches of a taped pattern, which is the example's own cut apart and traced, against those of its last.
import { expect, test } from "vitest";
import { Pipeline } from "#job/pipeline.ts";
import { cutPieces, cutTapedPieces } from "#pieces/cut.ts";
import { pieceRulesFor, pieceRulesForTape, pieceSettingsFrom } from "#pieces/rules.ts";
import { tapedPartsFrom } from "#pieces/tape-lacks.ts";
import { tapedShell } from "#tape/from-traced.ts";
import { toplineEdges } from "#shell/settings.ts";
import { bareJob, demoTape } from "../support/demo-tape.ts";
import { onLast } from "../support/on-last.ts";
import { drawnMm, lineOfStitches, pieceOf } from "../support/sewn.ts";
import { laid } from "../support/taped-outlines.ts";
import { tracedPicture } from "../support/traced.ts";

const { medial, lateral } = demoTape();
const labels = { title: "Taped", size: "38" };
const tape = tapedShell([tracedPicture("tape.jpg", [laid(medial, 37, [100, 420]), laid(lateral, -120, [-50, 20])])], { photos: ["tape.jpg"], side: "right" });
const pair = onLast(new Pipeline().run(bareJob(), new Map(), { triangles: 4000, withoutPieces: true }));

test.each(toplineEdges)("%s: the same lines as on the last, each within a hundredth of its length there", (edge) => {
  const parts = tapedPartsFrom({ toeCap: true, backStrip: true, gore: true, bow: true, backTop: "dog-tail" });
  const taped = cutTapedPieces(tape, { settings: pieceSettingsFrom(pieceRulesForTape(tape, edge)), labels, edge, parts });
  const from = cutPieces({ ...pair, settings: pieceSettingsFrom(pieceRulesFor(pair.last, edge)), labels, edge, parts });
  expect(taped.stitching.map(({ name }) => name)).toEqual(from.stitching.map(({ name }) => name));
  for (const [k, { name, lengthMm }] of taped.stitching.entries()) expect(Math.abs(lengthMm / from.stitching[k]!.lengthMm - 1), `${name}: ${lengthMm}`).toBeLessThan(0.01);
  for (const side of ["left", "right"] as const) {
    const banks = drawnMm(pieceOf(taped, "lining", side), "back seam, inside");
    expect(Math.abs(lineOfStitches(taped, "lining back seam").lengthMm - banks[0]!)).toBeLessThan(0.2);
  }
});

test("other cuts are asked of it in vain: the back seam is the one that holds it", () => {
  const cut = cutTapedPieces(tape, { settings: pieceSettingsFrom(pieceRulesForTape(tape)), labels, parts: tapedPartsFrom({ cut: "quarters", seam: "lapped", strap: true }) });
  expect(cut.stitching.map(({ name }) => name)).toEqual(["back seam", "lining back seam", "topline"]);
});
