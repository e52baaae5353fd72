import type { Measure } from "#lasting/difference.ts";
import { carriedLining, carriedPanel } from "#lasting/carry.ts";
import { cutPieces } from "#pieces/cut.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { heelLonger } from "#shell/beneath.ts";
import { layLining } from "#shell/lay-flat.ts";
import { layHeel, openHeel } from "#shell/panel-heel.ts";
import type { ShellSettings } from "#shell/settings.ts";
import type { FlatShell, ToplineTension } from "#shell/shell.ts";
import type { LaidUpper } from "./lay-on-last.ts";
import type { Run } from "./memory.ts";

export type Cut = ReturnType<typeof cutPieces>;

/** How far the heel's sheet reaches along the feather line: as far as stiffener and heel pocket do, and a little on. */
const heelReach = ({ liningPocketWingMm, liningPocketTopMm }: PieceSettings, { counterInnerMm, counterOuterMm }: ShellSettings) => {
  const pocket = Math.max(liningPocketWingMm, liningPocketTopMm);
  return { medial: Math.max(counterInnerMm, pocket) + beyondHeelMm, lateral: Math.max(counterOuterMm, pocket) + beyondHeelMm };
};
const beyondHeelMm = 12;

/** By how much each half of the lining's topline is shorter on the card than on the last, mm. */
const liningShorter = ({ tension }: FlatShell) => ({ medial: shorterBy(tension.medial), lateral: shorterBy(tension.lateral) });
const shorterBy = ({ onLastMm, overMm, flatMm }: ToplineTension): number => onLastMm * (1 - flatMm / overMm);

const byOf = ({ before, after }: Measure): number => after - before;

/** All pieces from the laid upper. Lining and heel pocket are laid for them, and follow where the upper is corrected for its leather; cards stay as they lie on the last. */
export function cutLaid(stages: Run, { read: { value: { last } }, drawn: { value: { lines } }, bottom, shell, beneath, free, flat, leathers, fit, plainPanels, panels, cutAlike, labels, parts, shellSettings, pieceSettings }: LaidUpper): Cut {
  const { halves, edge } = shellSettings, corrected = fit?.value.corrected;
  const lining = stages.make("lining", [flat.key, fit?.key], () => {
    const laid = layLining(shell.value, flat.value, free.value);
    return { flat: corrected ? carriedLining(corrected, laid) : laid, heelLongerMm: heelLonger(beneath.value.rows) };
  });
  const reachMm = heelReach(pieceSettings, shellSettings);
  const opened = stages.make("heel part", [beneath.key, reachMm], () => openHeel({ ...cutAlike, reachMm, beyondMm: beyondHeelMm })).value;
  const heel = stages.make("heel", [lining.key, reachMm], () => {
    // The pocket is drawn together with the lining's topline; a stiffener keeps its own form, and is not pulled.
    const stiffener = layHeel(opened, { on: "onLast" });
    const pocket = layHeel(opened, { on: "onLast", shorterMm: liningShorter(flat.value), like: stiffener });
    return { stiffener, pocket: corrected ? carriedPanel(corrected, pocket) : pocket };
  });
  return stages.make("pieces", [lining.key, panels?.key, heel.key, halves, edge, parts, pieceSettings, shellSettings, labels], () =>
    cutPieces({
      last, lines, flat: corrected?.flat ?? flat.value, ...(corrected && { plain: { flat: flat.value, ...(plainPanels && { panels: plainPanels.value }), correctedFor: { leather: leathers.value.upper.name, throatByMm: byOf(corrected.difference.throatDepthMm) } } }), ...(panels && { panels: panels.value }), lining: lining.value, heel: heel.value, bottom: bottom.value, halves, edge, parts,
      stiff: shellSettings, settings: pieceSettings, labels, before: stages.former<Cut>("pieces"),
    }),
  ).value;
}
