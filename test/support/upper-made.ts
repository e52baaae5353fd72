import { partsFrom, type Chosen } from "#pieces/choices.ts";
import type { Draft } from "#pieces/draft.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import { netUpper } from "#pieces/net-upper.ts";
import type { NetPanel } from "#pieces/panel.ts";
import type { Mark, Xy } from "#pieces/piece.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import { flatPump } from "./flat-pump.ts";
import { openedAtWaist, quartersOf } from "./panels-apart.ts";

// The flat pump's upper in all three cuts.

export const labels = { title: "Practice pair", size: "38" };
export const pump = flatPump("right", 0.02);
export const whole = wholePanel(netUpper(pump.last, pump.lines, pump.flat));
export const { vamp, inner, outer } = quartersOf(whole);
export const quarters = [vamp, inner, outer];
export const waist = [openedAtWaist(whole)];
export const cuts = { "back-seam": [whole], "inner-seam": waist, quarters } as const;

export const chosenFrom = (own: Partial<Chosen> = {}): Chosen => ({ ...partsFrom(own), edge: own.edge ?? "taped" });
export const settingsFor = (chosen: Chosen, own: Partial<PieceSettings> = {}): PieceSettings => pieceSettingsFrom(pieceRulesFor(pump.last, chosen.edge), own);
export function made(panels: readonly NetPanel[], own: Partial<Chosen> = {}, numbers: Partial<PieceSettings> = {}) {
  const chosen = chosenFrom(own);
  return upperPieces({ panels, settings: settingsFor(chosen, numbers), chosen, labels });
}
export const named = (drafts: readonly Draft[], name: string): Draft => drafts.find((d) => d.name === name)!;
export const ofKind = <K extends Mark["kind"]>({ marks }: Draft, kind: K) => marks.filter((m) => m.kind === kind) as unknown as readonly Extract<Mark, { kind: K }>[];
export const points = ({ xy }: { readonly xy: Float64Array }): readonly Xy[] => Array.from({ length: xy.length / 2 }, (_, i): Xy => [xy[2 * i]!, xy[2 * i + 1]!]);
