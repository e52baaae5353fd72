import { must } from "#base/bug.ts";
import { halfName } from "#base/sentences/names.ts";
import { lengthOf } from "#plane/measure.ts";
import type { SeamKind } from "../choices.ts";
import type { CutEdge, CutPanel } from "../edges/cut-panel.ts";
import type { PieceSettings } from "../settings.ts";
import type { Ply, Stitched } from "../stitching.ts";
import { liesOver } from "../upper/allowances.ts";
import { edgeNames, panelWord } from "../words.ts";
import { foldedPly, foldTapeThickMm, ply, skived, stitched, upperPly } from "./plies.ts";
import type { ToStitch } from "./to-stitch.ts";
import { mean } from "./ways.ts";

interface Bank {
  readonly of: CutPanel;
  readonly k: number;
  readonly edge: CutEdge;
}

/** The seams that hold the upper's panels together, once each, and the dog-tail. The tape over them is stuck on and not sewn. */
export function upperSeams(input: ToStitch): readonly Stitched[] {
  return [...banksOf(input.upper).map((banks) => seam(banks, input)), ...dogTail(input)];
}

function banksOf(panels: readonly CutPanel[]): readonly (readonly [Bank, Bank])[] {
  const bySeam = new Map<string, Bank[]>();
  for (const of of panels)
    of.edges.forEach((edge, k) => {
      const { seam } = edge.net;
      if (seam !== undefined) bySeam.set(seam, [...(bySeam.get(seam) ?? []), { of, k, edge }]);
    });
  return [...bySeam.values()].map(([a, b]) => {
    must(a && b, "a seam has two banks");
    return [a, b];
  });
}

function seam(banks: readonly [Bank, Bank], { settings, chosen }: ToStitch): Stitched {
  const [a, b] = banks;
  const { role, half } = a.edge.net;
  const side = role === "side" && half ? `${halfName(half)} ` : "";
  const about = { name: `${side}${edgeNames[role]}`, joins: [...new Set(banks.map(({ of }) => panelWord(of.panel)))] };
  const kind: SeamKind = role === "back" ? chosen.backSeam : chosen.seam;
  if (kind === "lapped") return { ...lapped(banks, settings), ...about };
  const lengthMm = sewnMm(a, b);
  // Edge to edge, so that the needle goes through one thickness on either side by turns.
  if (kind === "butted") return stitched({ ...about, plies: [upperPly(settings)], lengthMm, stitch: "zigzag", use: "closing" });
  const inMm = role === "back" ? settings.backSeamMm : settings.seamMm;
  return stitched({ ...about, plies: [ply("upper", skived(settings.upperThicknessMm, "seam", settings.skiveSeamMm, inMm), 2)], lengthMm, use: "closing" });
}

/** From the cutting edge of the lasting margin to that of the topline, mean of both banks. Under a dog-tail the other bank has nothing to be sewn to. */
function sewnMm(a: Bank, b: Bank): number {
  const [one, other] = [lengthOf(a.edge.line), lengthOf(b.edge.line)];
  return [a, b].some(({ of, edge }) => edge.net.role === "back" && of.snips.length > 0) ? Math.min(one, other) : mean(one, other);
}

/** A lap so wide takes two rows, a narrower one a single row, mm. The second is as long as the first but for hundredths. */
const twoRowsFromMm = 8;

function lapped(banks: readonly [Bank, Bank], settings: PieceSettings): Stitched {
  const over = banks.find(({ of, k }) => liesOver(of.panel, k));
  must(over, "one bank of a lap lies over");
  const { lapUnderMm, stitchInMm } = settings;
  const under = ply("upper", skived(settings.upperThicknessMm, "lap", settings.skiveLapMm, lapUnderMm - stitchInMm));
  return stitched({ name: "", joins: [], plies: [...overPlies(settings, settings.lapFoldMm, true), under], lengthMm: lengthOf(over.edge.stitch ?? over.edge.line), rows: lapUnderMm >= twoRowsFromMm ? 2 : 1, use: "lapped" });
}

/** What a folded or raw edge of upper leather, stitched down on another piece, brings with it; with tape in its fold where `taped`. */
export function overPlies(settings: PieceSettings, foldMm: number, taped: boolean): readonly Ply[] {
  if (foldMm > 0) return [foldedPly("upper", settings.upperThicknessMm), ...(taped ? [ply("fold tape", foldTapeThickMm)] : [])];
  return [ply("upper", skived(settings.upperThicknessMm, "raw", settings.skiveRawMm, settings.stitchInMm))];
}

/** Along the tongue's lower edge from the back seam and up its end to the topline's own row. */
function dogTail({ upper, settings }: ToStitch): readonly Stitched[] {
  const tail = upper.find(({ snips }) => snips.length > 0);
  const other = upper.find((of) => of.edges.some(({ net }) => net.role === "back" && net.half === "medial"));
  if (!tail || !other) return [];
  const { dogTailLongMm: long, dogTailWideMm: wide, stitchInMm: inMm } = settings;
  return [stitched({ name: "dog-tail", joins: [...new Set([tail, other].map(({ panel }) => panelWord(panel)))], plies: [upperPly(settings, 2)], lengthMm: long - inMm + (wide - 2 * inMm), use: "lapped" })];
}
