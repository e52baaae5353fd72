import type { Finding } from "#base/findings.ts";
import type { Last, Side } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { LaidOnLast } from "#shell/lay-flat.ts";
import type { HalvesChoice, ToplineEdge } from "#shell/settings.ts";
import type { FlatBottom } from "#shell/shell.ts";
import type { TapedShell } from "#tape/taped-shell.ts";
import { cutInsole } from "./bottom/boards.ts";
import { netBottom, type NetBottom } from "./bottom/net-bottom.ts";
import { cutOutsole } from "./bottom/outsole.ts";
import { cutSock } from "./bottom/sock.ts";
import { checkBack, checkSettings } from "./check.ts";
import { checkParts } from "./check-parts.ts";
import { usualParts } from "./choices.ts";
import { bothOf, type Draft } from "./draft.ts";
import type { Labels } from "./label-text.ts";
import { cutLining } from "./lining/one.ts";
import type { OwnLining } from "./lining/own.ts";
import { wholePanel } from "./net-panels.ts";
import { netTapedBottom, netTapedUpper } from "./net-tape.ts";
import { netUpper, type NetUpper } from "./net-upper.ts";
import type { Piece } from "./piece.ts";
import { pieceRulesFor, pieceRulesForTape } from "./rules.ts";
import type { PieceSettings } from "./settings.ts";
import { cutUpper, netUpperCard } from "./upper.ts";

/** What the pieces are cut from, whether it came off a last or off a maker's tape. */
interface Nets {
  readonly upper: NetUpper;
  /** The lining's own net, where it was laid flat by itself. */
  readonly lining?: OwnLining;
  readonly bottom: readonly Draft[];
}

interface Choices {
  /** How the topline's edge is made; folded over a tape where nothing is said. */
  readonly edge?: ToplineEdge;
  readonly settings: PieceSettings;
  readonly labels: Labels;
}

export interface CutInput extends Choices {
  readonly last: Last;
  readonly lines: Lines;
  readonly flat: LaidOnLast;
  /** The lining laid flat by itself, and by how much the upper over it is longer round the heel, level at half the back's height, mm a half. */
  readonly lining?: { readonly flat: LaidOnLast; readonly heelLongerMm: number };
  readonly bottom: FlatBottom;
  readonly halves?: HalvesChoice;
  /** What was cut before: its bottom pieces are taken over where they would come out the same. */
  readonly before?: CutPieces | undefined;
}

export interface CutPieces {
  /** Both shoes: each piece for the last's own side, its mirrored twin right after it. */
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
  /** The bottom pieces and what they were drawn from, where that was a last. */
  readonly bottomDrawn?: BottomDrawn;
}

interface BottomDrawn {
  readonly bottom: FlatBottom;
  readonly last: Last;
  /** Settings and labels, as text to compare by. */
  readonly chosen: string;
  readonly drafts: readonly Draft[];
}

/**
 * Every piece of a whole-cut upper with back seam and its bottom, for both shoes. Rules: docs/method/pieces.md.
 * @throws Refusal where a setting is not a number or below its least.
 */
export function cutPieces({ last, lines, flat, lining, bottom, halves, before, ...choices }: CutInput): CutPieces {
  const { settings, labels } = choices;
  const unusual = checkSettings(pieceRulesFor(last, choices.edge), settings);
  const chosen = JSON.stringify([settings, labels]);
  const known = before?.bottomDrawn;
  const same = known?.bottom === bottom && known.last === last && known.chosen === chosen;
  const bottomDrawn = same ? known : { bottom, last, chosen, drafts: cutBottomPieces(netBottom(last, bottom), choices) };
  const nets: Nets = {
    upper: netUpper(last, lines, flat, halves),
    ...(lining && { lining: { net: netUpper(last, lines, lining.flat, halves), heelLongerMm: lining.heelLongerMm } }),
    bottom: bottomDrawn.drafts,
  };
  return { ...cutFrom(nets, last.side, unusual, choices), bottomDrawn };
}

/**
 * The same from a taped pattern: without insole, outsole and sock where no bottom was traced.
 * @throws Refusal as {@link cutPieces}
 */
export function cutTapedPieces(tape: TapedShell, choices: Choices): CutPieces {
  const unusual = checkSettings(pieceRulesForTape(tape, choices.edge), choices.settings);
  const bottom = tape.bottom && netTapedBottom(tape.bottom);
  return cutFrom({ upper: netTapedUpper(tape, bottom), bottom: bottom ? cutBottomPieces(bottom, choices) : [] }, tape.side, unusual, choices);
}

const cutBottomPieces = (net: NetBottom, { settings, labels }: Choices): readonly Draft[] => [cutInsole(net, settings, labels), cutOutsole(net, settings, labels), cutSock(net, settings, labels)];

function cutFrom({ upper, lining, bottom }: Nets, side: Side, unusual: readonly Finding[], { edge = "taped", settings, labels }: Choices): CutPieces {
  const drafts = [netUpperCard(upper, labels), cutUpper(upper, settings, labels), cutLining(upper, settings, labels, lining), ...bottom];
  return {
    pieces: drafts.flatMap((draft) => bothOf(draft, side)),
    findings: [...unusual, ...checkBack(upper), ...checkParts({ panels: [wholePanel(upper)], drafts, settings, chosen: { ...usualParts, edge } })],
  };
}
