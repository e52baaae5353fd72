import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import type { Last } from "#last/last.ts";
import { drawingBoard, drawLines, type DrawingBoard, type DrawnLines } from "#lines/draw.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";

/** The invented example last with the default lines on it. */
export interface DemoBoard {
  readonly last: Last;
  readonly board: DrawingBoard;
  readonly drawn: DrawnLines;
}

export function demoBoard(): DemoBoard {
  const last = lastFromMeasures(demoMeasurements, "example last", () => {});
  const board = drawingBoard(last);
  const rules = lineRulesFor(last);
  return { last, board, drawn: drawLines(board, rules, settle(rules, {})) };
}
