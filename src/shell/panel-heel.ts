import { must } from "#base/bug.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { curveLength, pointOn } from "#last/surface-curve.ts";
import type { DrawingBoard, DrawnLines } from "#lines/draw.ts";
import { halves } from "#lines/feather.ts";
import type { CutShell } from "./cut.ts";
import type { LaidPanel, Panel } from "./panel.ts";
import { inFrame } from "./panel-frame.ts";
import { drawnSteps, layPanel } from "./panel-lay.ts";
import { openShell, type OpenedShell } from "./panel-open.ts";
import { lineBetweenX } from "./seam-line.ts";
import type { Shell } from "./shell.ts";
import type { ByHalf } from "./tension.ts";

export interface HeelInput {
  readonly board: DrawingBoard;
  readonly drawn: DrawnLines;
  readonly onLast: CutShell;
  readonly over: Shell;
  /** How far it reaches from the seat point along the feather line, mm, and how much of that is more than the parts drawn on it ask for. */
  readonly reachMm: ByHalf<number>;
  readonly beyondMm?: number;
}

/** The heel part of the upper in one piece, closed at the back, not yet laid flat. */
export interface OpenedHeel {
  readonly opened: OpenedShell;
  readonly panel: Panel;
}

/**
 * Cuts the heel part off the shell: welded at the back, ended on both sides by lines that stand upright, as seen from the side, where the
 * reach ends on the feather line. Its edges: feather line, end, topline, end.
 * @throws Refusal `heel-part-impossible` where there is no upper above the end of its reach
 */
export function openHeel({ board, drawn, onLast, over, reachMm, beyondMm = 0 }: HeelInput): OpenedHeel {
  const lines = halves.map((half) => {
    const feather = board.forme.feather[half];
    const x = reachMm[half] > 0 && reachMm[half] < curveLength(feather) ? pointOn(feather, reachMm[half])[0] : NaN;
    const line = lineBetweenX(board, drawn, half === "medial" ? "inner end" : "outer end", half, x, x);
    if (!line) throw new Refusal(finding("heel-part-impossible", { half, reachMm: reachMm[half] - beyondMm }));
    return line;
  });
  const opened = openShell({ onLast, over, side: board.last.side, lines, backClosed: true, forme: board.forme });
  const panel = opened.panels.find(({ name }) => name === "heel");
  must(panel, "two lines in front of the heel cut off a heel part");
  return { opened, panel };
}

export interface LayHeelOptions {
  /** On the last's own surface, as a lining lies, or over what lies beneath the upper. */
  readonly on: "onLast" | "over";
  /** By how much each half of the whole topline is shorter on the card than on that surface, mm: the heel part takes its share. */
  readonly shorterMm?: ByHalf<number>;
  /** The same part laid before, to begin from. */
  readonly like?: LaidPanel;
}

/** The heel part laid flat: seat point at the origin, back point on +y, seen from outside. */
export function layHeel({ opened, panel }: OpenedHeel, { on, shorterMm, like }: LayHeelOptions): LaidPanel {
  return inFrame(layPanel(panel, { on, like, ...(shorterMm && { draw: drawnSteps(opened[on], shorterMm) }) }));
}
