import { describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { netBottom } from "#pieces/bottom-pieces.ts";
import { cutPieces } from "#pieces/cut.ts";
import { edgeLength, netUpper } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { bendChanges } from "#plane/curvature.ts";
import { cutBottom, layBottomFlat } from "#shell/bottom.ts";
import { cutShell } from "#shell/cut.ts";
import { flatLength, layFlat } from "#shell/lay-flat.ts";
import { hasShared } from "../support/shared.ts";
import { truthLast, truthOf } from "../support/truth-last.ts";

// Synthetic lasts with truth beside them; without the shared data there is nothing to hold the pieces to.
if (!hasShared) console.log("test/pieces/real-last: skipped, the shared lasts are not beside the project");

describe.skipIf(!hasShared)("pieces of synthetic lasts whose truth is known", () => {
  test.each(["last_eu36_round", "last_eu41_pointed"])("%s", (name) => {
    const last = truthLast(name);
    const rules = lineRulesFor(last);
    const board = drawingBoard(last);
    const drawn = drawLines(board, rules, settle(rules, {}));
    const flat = layFlat(cutShell(board, drawn, 4000), 0);
    const bottom = layBottomFlat(cutBottom(last));
    const settings = pieceSettingsFrom(pieceRulesFor(last));
    const { pieces, findings } = cutPieces({ last, lines: drawn.lines, flat, bottom, settings, labels: { title: name, size: "" } });
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
});
