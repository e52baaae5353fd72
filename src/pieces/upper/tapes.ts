import type { Chosen } from "../choices.ts";
import { edgeNames, edgeWord } from "../words.ts";
import { edgeLength } from "../net-upper.ts";
import type { NetEdge, NetPanel } from "../panel.ts";
import type { Strip } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { liesOver } from "./allowances.ts";

/** What is cut off a roll for a pair of uppers: tape for every folded edge and over every seam that does not lie over itself (closed, or butted, which nothing else holds), and the binding. */
export function upperStrips(panels: readonly NetPanel[], settings: PieceSettings, chosen: Chosen): readonly Strip[] {
  return [...foldTapes(panels, settings, chosen), ...seamTapes(panels, settings, chosen), ...bindings(panels, settings, chosen)];
}

/** The topline goes round in one strip over all panels. */
const toplineMm = (panels: readonly NetPanel[]): number => panels.flatMap(({ edges }) => edges).reduce((sum, e) => sum + (e.role === "topline" ? edgeLength(e) : 0), 0);

function foldTapes(panels: readonly NetPanel[], settings: PieceSettings, chosen: Chosen): readonly Strip[] {
  const tape = (lengthMm: number, where: string): Strip => ({ name: "fold tape", material: "tape", widthMm: settings.foldTapeMm, lengthMm: lengthMm + 2 * settings.stripEndsMm, perPair: 2, where });
  const topline = chosen.edge === "taped" && settings.toplineFoldMm > 0 ? [tape(toplineMm(panels), "along the fold line of the topline")] : [];
  if (chosen.seam !== "lapped" || settings.lapFoldMm === 0) return topline;
  return [...topline, ...banks(panels, "inner waist", "side").flatMap(({ panel, k, edge }) => (liesOver(panel, k) ? [tape(edgeLength(edge), `along the fold line of the ${seamWord(edge)}`)] : []))];
}

function seamTapes(panels: readonly NetPanel[], settings: PieceSettings, chosen: Chosen): readonly Strip[] {
  const tape = (edge: NetEdge): Strip => ({ name: "seam tape", material: "tape", widthMm: settings.seamTapeMm, lengthMm: edgeLength(edge) + 2 * settings.stripEndsMm, perPair: 2, where: `over the ${seamWord(edge)}, flesh side` });
  return [
    ...onceEach(banks(panels, "back")),
    ...(chosen.seam === "lapped" ? [] : onceEach(banks(panels, "inner waist", "side"))),
  ].map(tape);
}

function bindings(panels: readonly NetPanel[], settings: PieceSettings, { edge }: Chosen): readonly Strip[] {
  const widthMm = bindingMm(settings, edge);
  if (widthMm === undefined) return [];
  return [{ name: "topline binding", material: "upper leather", widthMm, lengthMm: toplineMm(panels) + 2 * settings.stripEndsMm, perPair: 2, where: `${edge === "bound" ? "sewn along the topline and turned in" : "wrapped round the topline"}, ${settings.bindingThickMm.toFixed(2)} mm thick` }];
}

/** Width of the strip for a bound or wrapped topline. */
export const bindingMm = (settings: PieceSettings, edge: Chosen["edge"]): number | undefined => (edge === "bound" ? settings.bindingBoundMm : edge === "wrapped" ? settings.bindingWrappedMm : undefined);

interface BankOf {
  readonly panel: NetPanel;
  readonly k: number;
  readonly edge: NetEdge;
}

const banks = (panels: readonly NetPanel[], ...roles: readonly NetEdge["role"][]): readonly BankOf[] =>
  panels.flatMap((panel) => panel.edges.flatMap((edge, k) => (roles.includes(edge.role) ? [{ panel, k, edge }] : [])));

/** One bank of every seam. */
function onceEach(all: readonly BankOf[]): readonly NetEdge[] {
  const seen = new Set<string | undefined>();
  return all.flatMap(({ edge }) => {
    if (seen.has(edge.seam)) return [];
    seen.add(edge.seam);
    return [edge];
  });
}

/** The back seam is one, whichever bank it is measured on. */
const seamWord = (edge: NetEdge): string => (edge.role === "back" ? edgeNames.back : edgeWord(edge));
