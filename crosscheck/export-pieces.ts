// Writes the example pair's net panels and cut pieces of every cut, with widths that are the same all along each edge, for the outside
// check of offsets and areas: `tsx crosscheck/export-pieces.ts FOLDER` makes FOLDER/pieces.json.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { cutInsole } from "#pieces/bottom/boards.ts";
import { netBottom } from "#pieces/bottom/net-bottom.ts";
import { cutSock } from "#pieces/bottom/sock.ts";
import { upperCuts, usualParts, type UpperCut } from "#pieces/choices.ts";
import { evenAllowance } from "#pieces/edges/allowance.ts";
import { cutPanel } from "#pieces/edges/cut-panel.ts";
import { cutLining } from "#pieces/lining/one.ts";
import { netPanels, wholePanel } from "#pieces/net-panels.ts";
import { netUpper } from "#pieces/net-upper.ts";
import type { EdgeRole, NetPanel } from "#pieces/panel.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import { joined } from "#plane/along.ts";
import { beneathFrom, heelLonger, layBeneath } from "#shell/beneath.ts";
import { cutBottom, layBottomFlat } from "#shell/bottom.ts";
import { cutShell } from "#shell/cut.ts";
import { layFlat, layFree, layLining } from "#shell/lay-flat.ts";
import { layPanels } from "#shell/panels.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { toplineAsked } from "#shell/tension.ts";

const labels = { title: "Example pair", size: "38" };
const lastingMm = 18;
/** One width all round, its corners run on, for buffers with mitred corners. */
const allRoundMm = 6;

const last = lastFromMeasures(demoMeasurements, "example", unwatched);
const rules = lineRulesFor(last);
const board = drawingBoard(last);
const drawn = drawLines(board, rules, settle(rules, {}));
const settings = pieceSettingsFrom(pieceRulesFor(last), {
  lastingToeMm: lastingMm, lastingToeSidesMm: lastingMm, lastingForepartMm: lastingMm, lastingOuterWaistMm: lastingMm, lastingInnerWaistMm: lastingMm, lastingHeelMm: lastingMm,
});
const shellSettings = shellSettingsFrom(shellRulesFor(last));
const onLast = cutShell(board, drawn);
const beneath = layBeneath(onLast, last, beneathFrom(settings, shellSettings));
const free = layFree(beneath.over);
const { springMm, toplineShorter } = shellSettings;
const flat = layFlat(beneath.over, springMm, { onLast, free, toplineMm: toplineAsked(onLast, toplineShorter) });
const net = netUpper(last, drawn.lines, flat);
const own = { net: netUpper(last, drawn.lines, layLining(onLast, flat, free)), heelLongerMm: heelLonger(beneath.rows) };

function panelsOf(cut: UpperCut): readonly NetPanel[] {
  if (cut === "back-seam") return [wholePanel(net)];
  const laid = layPanels({ cut, board, drawn, onLast, over: beneath.over, seams: settings, toplineShorter, springMm, flat });
  return netPanels({ last, lines: drawn.lines, laid }).panels;
}

const widths: Readonly<Record<EdgeRole, number>> = { feather: lastingMm, topline: settings.toplineFoldMm, back: settings.backSeamMm, side: settings.seamMm, "inner waist": settings.seamMm };
const ring = (panel: NetPanel): number[] => {
  const { xy } = joined(panel.edges.map(({ line }) => line));
  return [...xy.subarray(0, xy.length - 2)];
};

const panels = upperCuts.flatMap((cut) => {
  const made = panelsOf(cut);
  const { drafts } = upperPieces({ panels: made, settings, chosen: { ...usualParts, edge: "taped", cut }, labels });
  return made.map((panel) => ({
    name: `${cut}: ${panel.name}`,
    net: ring(panel),
    edges: panel.edges.map((edge) => ({ role: edge.role, xy: [...edge.line.xy], widthMm: widths[edge.role] })),
    cut: [...drafts.find((d) => d.ground === panel.name && !d.net)!.outline.xy],
    allRound: [...cutPanel(panel, panel.edges.map((edge) => evenAllowance(edge, "seam", allRoundMm))).outline.xy],
  }));
});

const bottom = netBottom(last, layBottomFlat(cutBottom(last)));
const lined = cutLining(net, settings, labels, own);
writeFileSync(
  join(process.argv[2]!, "pieces.json"),
  JSON.stringify({
    allRoundMm,
    panels,
    bottom: { net: [...bottom.outline.xy], parts: [
      { name: "insole", inMm: settings.insoleInMm, cut: [...cutInsole(bottom, settings, labels).outline.xy] },
      { name: "sock", inMm: settings.insoleInMm + settings.sockInMm, cut: [...cutSock(bottom, settings, labels)[0]!.outline.xy] },
    ] },
    lining: { cut: [...lined.outline.xy], upper: panels[0]!.cut, topline: [...own.net.topline.line.xy], trimMm: settings.liningTrimMm },
  }),
);
