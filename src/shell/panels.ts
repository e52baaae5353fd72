import { finding, type Finding } from "#base/findings.ts";
import type { Side } from "#last/last.ts";
import type { DrawingBoard, DrawnLines } from "#lines/draw.ts";
import { halves } from "#lines/feather.ts";
import type { CutShell } from "./cut.ts";
import { edgeLength, flatLength } from "./edge-length.ts";
import type { LaidPanel } from "./panel.ts";
import { inFrame } from "./panel-frame.ts";
import { drawnSteps, layPanel } from "./panel-lay.ts";
import { openShell, type OpenedShell } from "./panel-open.ts";
import { innerSeamLine, sideSeamLines, type PlacedSeams, type SeamLineSettings } from "./seam-line.ts";
import type { FlatShell, Shell, StrainSummary } from "./shell.ts";
import { summarise } from "./strain.ts";
import { toplineAsked, toplineOf, type ByHalf } from "./tension.ts";

/** The ways to cut the upper that open it elsewhere than at the back alone. */
export type PanelCut = "inner-seam" | "quarters";

export interface PanelsInput {
  readonly cut: PanelCut;
  readonly board: DrawingBoard;
  readonly drawn: DrawnLines;
  /** The shell on the last itself and over what lies beneath the upper. */
  readonly onLast: CutShell;
  readonly over: Shell;
  readonly seams: SeamLineSettings;
  /** How much shorter the topline is on the card than on the last, as a share. */
  readonly toplineShorter: number;
  /** How far the banks of the inner seam are swung together at the topline; a cut in quarters lies without. */
  readonly springMm: number;
  /** The upper laid flat in one piece, to begin from, which is quicker. */
  readonly flat?: Pick<FlatShell, "uv">;
}

export interface LaidPanels {
  readonly cut: PanelCut;
  readonly side: Side;
  readonly opened: OpenedShell;
  /** Vamp, inner quarter, outer quarter; or the whole. */
  readonly panels: readonly LaidPanel[];
  readonly placed: PlacedSeams;
  /** Banks of each seam on the flat, mm. */
  readonly banks: readonly SeamBanks[];
  /** Of all panels together, by which cuts are compared. */
  readonly strain: StrainSummary;
  readonly findings: readonly Finding[];
}

export interface SeamBanks {
  readonly seam: string;
  readonly lengthsMm: readonly [number, number];
}

const order = ["whole", "vamp", "inner quarter", "outer quarter", "heel"] as const;

/**
 * Opens the upper along the seams of its cut and lays each panel flat by itself. Method: docs/method/panels.md.
 * @throws Refusal where a seam cannot run where it should, or a panel cannot be laid
 */
export function layPanels({ cut, board, drawn, onLast, over, seams, toplineShorter, springMm, flat }: PanelsInput): LaidPanels {
  const placed = cut === "quarters" ? sideSeamLines(board, drawn, seams) : innerSeamLine(board, drawn, seams);
  const backClosed = cut === "inner-seam";
  const { side } = board.last;
  const opened = openShell({ onLast, over, side, lines: placed.lines, backClosed, forme: board.forme, ...(flat && !backClosed && { uv: flat.uv }) });
  const toMm = toplineAsked(onLast, toplineShorter);
  const shorterMm = Object.fromEntries(halves.map((half) => [half, edgeLength(over.mesh.positions, toplineOf(over, half)) - toMm[half]])) as unknown as ByHalf<number>;
  const draw = drawnSteps(opened.over, shorterMm);
  const panels = opened.panels
    .map((panel) => inFrame(layPanel(panel, { draw, start: opened.uv, springMm: backClosed ? springMm : 0 })))
    .sort((a, b) => order.indexOf(a.panel.name) - order.indexOf(b.panel.name));
  const banks = banksOf(panels);
  const strain = panels.length === 1 ? panels[0]!.strain : together(panels);
  return { cut, side, opened, panels, placed, banks, strain, findings: [...placed.findings, ...panels.flatMap(({ findings }) => findings), ...judgeBanks(banks)] };
}

function banksOf(panels: readonly LaidPanel[]): readonly SeamBanks[] {
  const found = new Map<string, number[]>();
  for (const { panel, uv } of panels) for (const { seam, vertices } of panel.edges) if (seam !== undefined) found.set(seam, [...(found.get(seam) ?? []), flatLength({ uv }, vertices)]);
  return [...found].map(([seam, mm]) => ({ seam, lengthsMm: [mm[0]!, mm[1]!] }));
}

/** Less than this is lost in cutting, mm: banks are brought to one length in any case. */
const bankMissMm = 0.5;

const judgeBanks = (banks: readonly SeamBanks[]): readonly Finding[] =>
  banks.filter(({ lengthsMm: [a, b] }) => Math.abs(a - b) > bankMissMm).map(({ seam, lengthsMm: [a, b] }) => finding("seam-banks-differ", { seam, differenceMm: a - b }));

/** Stretch of all panels together, for comparing ways to cut. */
function together(panels: readonly LaidPanel[]): StrainSummary {
  const positions: number[] = [], triangles: number[] = [];
  for (const { panel: { over } } of panels) {
    const from = positions.length / 3;
    for (const x of over.positions) positions.push(x);
    for (const v of over.triangles) triangles.push(from + v);
  }
  const all = (of: (laid: LaidPanel) => Float64Array): Float64Array => Float64Array.from(panels.flatMap((laid) => Array.from(of(laid))));
  return summarise({ positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }, all(({ stretchMax }) => stretchMax), all(({ stretchMin }) => stretchMin));
}
