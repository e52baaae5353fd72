import { medialSign, type Last } from "#last/last.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import type { LineSettings } from "#lines/lines.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { heelNet } from "#pieces/lining/heel-net.ts";
import type { LiningInput } from "#pieces/lining/lining.ts";
import { scalesOf } from "#pieces/lining/on-last.ts";
import { netUpper } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { seamSettingsOf } from "#pieces/rules/seams.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { StiffeningInput } from "#pieces/stiffening/stiffening.ts";
import { beneathFrom, heelLonger, layBeneath } from "#shell/beneath.ts";
import { cutShell } from "#shell/cut.ts";
import { edgeLength, flatLength } from "#shell/edge-length.ts";
import { layFlat, layFree, layLining } from "#shell/lay-flat.ts";
import { layHeel, openHeel } from "#shell/panel-heel.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { innerSeamLine, sideSeamLines } from "#shell/seam-line.ts";
import type { ShellSettings } from "#shell/settings.ts";
import { toplineAsked } from "#shell/tension.ts";

export interface AskedLining {
  readonly pieces?: Partial<PieceSettings>;
  readonly shell?: Partial<ShellSettings>;
  readonly lines?: Partial<LineSettings>;
  readonly triangles?: number;
}

const labels = { title: "Practice pair", size: "38" };

/** All that linings and stiffening are cut from, of one last, made as the pipeline makes it. */
export function laidLinings(last: Last, { pieces = {}, shell = {}, lines = {}, triangles = 2000 }: AskedLining = {}) {
  const lineRules = lineRulesFor(last);
  const board = drawingBoard(last);
  const drawn = drawLines(board, lineRules, settle(lineRules, lines));
  const onLast = cutShell(board, drawn, triangles);
  const sizes = shellSettingsFrom(shellRulesFor(last, shell), shell);
  const settings = pieceSettingsFrom(pieceRulesFor(last), pieces);
  const beneath = layBeneath(onLast, last, beneathFrom(settings, sizes, pieces.sideLiningMm !== undefined));
  const free = layFree(beneath.over);
  const flat = layFlat(beneath.over, 0, { onLast, free, toplineMm: toplineAsked(onLast, sizes.toplineShorter) });
  const laid = layLining(onLast, flat, free);
  const sign = medialSign(last.side);
  const upper = netUpper(last, drawn.lines, flat), net = netUpper(last, drawn.lines, laid);
  const reach = Math.max(settings.liningPocketWingMm, sizes.counterInnerMm, sizes.counterOuterMm) + 12;
  const opened = openHeel({ board, drawn, onLast, over: beneath.over, reachMm: { medial: reach, lateral: reach } });
  const shorter = (ids: Uint32Array): number => edgeLength(onLast.mesh.positions, ids) - flatLength(laid, ids);
  // The pocket is stitched to a topline that is drawn together, the stiffener is not.
  const pocketSheet = heelNet(layHeel(opened, { on: "onLast", shorterMm: { medial: shorter(onLast.edges.toplineMedial), lateral: shorter(onLast.edges.toplineLateral) } }), sign);
  const heel = heelNet(layHeel(opened, { on: "onLast" }), sign);
  const lining: LiningInput = {
    upper,
    own: { net, heelLongerMm: heelLonger(beneath.rows) },
    laid: { scales: scalesOf(laid, net, sign), heel: pocketSheet },
    seams: [],
    settings,
    stiffener: sizes,
    chosen: { lining: "three", edge: "taped" },
    labels,
  };
  const stiffening: StiffeningInput = {
    net: upper,
    ground: "upper",
    laid: { scales: scalesOf(flat, upper, sign), heel, lastLengthMm: last.measures.lastLength },
    sizes,
    settings,
    chosen: { edge: "taped", sideLining: true, gore: false },
    labels,
  };
  const seams = { quarters: () => sideSeamLines(board, drawn, seamSettingsOf(settings)).lines, inner: () => innerSeamLine(board, drawn, seamSettingsOf(settings)).lines };
  return { last, lining, stiffening, seams, settings, sizes };
}
