import { describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { medialSign, type Last } from "#last/last.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { netBottom } from "#pieces/bottom/net-bottom.ts";
import { cutPieces } from "#pieces/cut.ts";
import { bendsOf } from "#pieces/even.ts";
import { edgeLength, netUpper } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { nearestOn } from "#plane/along.ts";
import { bendChanges } from "#plane/curvature.ts";
import { cutBottom, layBottomFlat } from "#shell/bottom.ts";
import { cutShell } from "#shell/cut.ts";
import { flatLength } from "#shell/edge-length.ts";
import { beneathFrom, heelLonger, layBeneath } from "#shell/beneath.ts";
import { layFlat, layFree, layLining } from "#shell/lay-flat.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { toplineAsked } from "#shell/tension.ts";
import { scanOf } from "../support/against-truth.ts";
import { foundLast } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";
import { lastNames, truthLast, truthOf } from "../support/truth-last.ts";

/** Everything up to the pieces, with all settings at their rules. */
function piecesOf(last: Last) {
  const rules = lineRulesFor(last);
  const board = drawingBoard(last);
  const drawn = drawLines(board, rules, settle(rules, {}));
  const onLast = cutShell(board, drawn, 4000);
  const shellSettings = shellSettingsFrom(shellRulesFor(last));
  const beneath = layBeneath(onLast, last, beneathFrom(pieceSettingsFrom(pieceRulesFor(last)), shellSettings));
  const free = layFree(beneath.over);
  const flat = layFlat(beneath.over, 0, { onLast, free, toplineMm: toplineAsked(onLast, shellSettings.toplineShorter) });
  const lining = { flat: layLining(onLast, flat, free), heelLongerMm: heelLonger(beneath.rows) };
  const bottom = layBottomFlat(cutBottom(last));
  const settings = pieceSettingsFrom(pieceRulesFor(last));
  return { drawn, flat, bottom, ...cutPieces({ last, lines: drawn.lines, flat, lining, bottom, settings, labels: { title: last.name, size: "" } }) };
}

// Synthetic lasts with truth beside them; without the shared data there is nothing to hold the pieces to.
if (!hasShared) console.log("test/pieces/real-last: skipped, the shared lasts are not beside the project");

describe.skipIf(!hasShared)("pieces of synthetic lasts whose truth is known", () => {
  test.each(["last_eu36_round", "last_eu41_pointed"])("%s", (name) => {
    const last = truthLast(name);
    const { drawn, flat, bottom, pieces, findings } = piecesOf(last);
    const net = netUpper(last, drawn.lines, flat);
    const truth = truthOf(name);

    // The card's area is the sum of the flat triangles, taken another way than by the outline.
    let sum = 0;
    const { uv } = flat;
    const t = flat.shell.mesh.triangles;
    for (let i = 0; i < t.length; i += 3) {
      const [a, b, c] = [2 * t[i]!, 2 * t[i + 1]!, 2 * t[i + 2]!];
      sum += ((uv[b]! - uv[a]!) * (uv[c + 1]! - uv[a + 1]!) - (uv[c]! - uv[a]!) * (uv[b + 1]! - uv[a + 1]!)) / 2;
    }
    expect(Math.abs(pieces[0]!.areaMm2 / sum - 1)).toBeLessThan(0.003);

    // The two edges of the back seam, and fair lines that are as long as the flat shell's own edges.
    expect(Math.abs(net.backDifferenceMm)).toBeLessThan(0.1);
    const { edges } = flat.shell;
    expect(Math.abs(edgeLength(net.feather) - flatLength(flat, edges.featherMedial) - flatLength(flat, edges.featherLateral))).toBeLessThan(0.3);
    expect(Math.abs(edgeLength(net.topline) - flatLength(flat, edges.toplineMedial) - flatLength(flat, edges.toplineLateral))).toBeLessThan(0.3);

    // A topline bends one way round the throat and may swing at either flank; more would be bumps.
    expect(bendChanges(net.topline.line)).toBeLessThanOrEqual(6);

    // The bottom laid flat is as long as the tape along the last's bottom.
    const seatToToe = netBottom(last, bottom).toePoint[0];
    expect(Math.abs(seatToToe - truth.values.lastLength)).toBeLessThan(1.5);
    expect(findings.filter((f) => severityOf(f) !== "note")).toEqual([]);
  });

  // An edge that wavers cannot be cut with a knife. On a clean last the bottom bends four times; a square toe may add two.
  const files = lastNames.flatMap((name) => [`${name}.stl`, scanOf(name).file]);
  test.each(files)("edges from %s run even, and lie where the last's own feather lies", (file) => {
    const last = foundLast(file);
    const { drawn, flat, bottom, pieces, findings } = piecesOf(last);
    for (const p of pieces) expect(bendsOf(p.outline), p.name).toBeLessThanOrEqual(6);
    expect(findings.map((f) => f.code)).not.toContain("edge-uneven");
    // Faired by no more than the widest tolerance: every point of the flat feather and bottom edge is still near.
    const sign = medialSign(last.side);
    const { feather } = netUpper(last, drawn.lines, flat);
    for (const v of [...flat.shell.edges.featherMedial, ...flat.shell.edges.featherLateral]) {
      expect(nearestOn(feather.line, feather.arc, flat.uv[2 * v]!, sign * flat.uv[2 * v + 1]!).distance).toBeLessThan(0.35);
    }
    const { ring } = netBottom(last, bottom);
    for (const v of bottom.bottom.loop) expect(nearestOn(ring.line, ring.arc, bottom.uv[2 * v]!, sign * bottom.uv[2 * v + 1]!).distance).toBeLessThan(0.35);
  });
});
