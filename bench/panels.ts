// Opening the upper along the seams of its cut and laying each panel flat, against the upper in one piece laid flat in the same run.
// Aim: each cut in under 150 ms, and in no more time than twice the upper in one piece takes.
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { netPanels } from "#pieces/net-panels.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { beneathFrom, layBeneath } from "#shell/beneath.ts";
import { cutShell } from "#shell/cut.ts";
import { layFlat, layFree } from "#shell/lay-flat.ts";
import { layHeel, openHeel } from "#shell/panel-heel.ts";
import { layPanels } from "#shell/panels.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { toplineAsked } from "#shell/tension.ts";
import { shown, timed } from "./support/timing.ts";

const last = lastFromMeasures(demoMeasurements, "example last", () => {});
const board = drawingBoard(last), rules = lineRulesFor(last);
const drawn = drawLines(board, rules, settle(rules, {}));
const seams = pieceSettingsFrom(pieceRulesFor(last)), shell = shellSettingsFrom(shellRulesFor(last));
const onLast = cutShell(board, drawn);
const { over } = layBeneath(onLast, last, beneathFrom(seams, shell));
const { toplineShorter } = shell;
const whole = () => layFlat(over, 0, { onLast, toplineMm: toplineAsked(onLast, toplineShorter), free: layFree(over) });
const flat = whole();
const lay = (cut: "quarters" | "inner-seam") => layPanels({ cut, board, drawn, onLast, over, seams, toplineShorter, springMm: 0, flat });
const laid = lay("quarters");

for (let k = 0; k < 3; k++) lay("inner-seam");
const one = timed(whole);
const rows: readonly (readonly [string, () => unknown])[] = [
  ["quarters", () => lay("quarters")],
  ["inner seam", () => lay("inner-seam")],
  ["quarters' fair edges and places", () => netPanels({ last, lines: drawn.lines, laid })],
  ["heel part", () => layHeel(openHeel({ board, drawn, onLast, over, reachMm: { medial: 85, lateral: 78 } }), { on: "onLast" })],
];
console.log(`${over.mesh.triangles.length / 3} triangles                       ms: best (… worst; processor)    × the upper in one piece, by the processor's time`);
console.log(`${"the upper in one piece".padEnd(34)} ${shown(one)}`);
for (const [name, run] of rows) {
  const time = timed(run);
  console.log(`${name.padEnd(34)} ${shown(time)}${(time.processor / one.processor).toFixed(2)}`);
}
