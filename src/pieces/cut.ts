import type { Finding } from "#base/findings.ts";
import type { Last, Side } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { LaidOnLast } from "#shell/lay-flat.ts";
import type { HalvesChoice, ToplineEdge } from "#shell/settings.ts";
import type { FlatBottom } from "#shell/shell.ts";
import type { TapedShell } from "#tape/taped-shell.ts";
import { cutInsole, cutOutsole, cutSock, netBottom, type NetBottom } from "./bottom-pieces.ts";
import { checkDrafts, checkSettings, checkUpper } from "./check.ts";
import { bothOf } from "./draft.ts";
import type { Labels } from "./label-text.ts";
import { cutLining, type OwnLining } from "./lining.ts";
import { netTapedBottom, netTapedUpper } from "./net-tape.ts";
import { netUpper, type NetUpper } from "./net-upper.ts";
import type { Piece } from "./piece.ts";
import { pieceRulesFor, pieceRulesForTape } from "./rules.ts";
import type { PieceRules, PieceSettings } from "./settings.ts";
import { cutUpper, netUpperCard } from "./upper.ts";

/** What the pieces are cut from, whether it came off a last or off a maker's tape. Without a bottom there are no bottom pieces. */
interface Nets {
  readonly upper: NetUpper;
  /** The lining's own net, where it was laid flat by itself. */
  readonly lining?: OwnLining;
  readonly bottom: NetBottom | undefined;
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
}

export interface CutPieces {
  /** Both shoes: each piece for the last's own side, its mirrored twin right after it. */
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
}

/**
 * Every piece of a whole-cut upper with back seam and its bottom, for both shoes. Rules: docs/method/pieces.md.
 * @throws Refusal where a setting is not a number or below its least.
 */
export function cutPieces({ last, lines, flat, lining, bottom, halves, ...choices }: CutInput): CutPieces {
  const nets = (): Nets => ({
    upper: netUpper(last, lines, flat, halves),
    ...(lining && { lining: { net: netUpper(last, lines, lining.flat, halves), heelLongerMm: lining.heelLongerMm } }),
    bottom: netBottom(last, bottom),
  });
  return cutFrom(nets, last.side, pieceRulesFor(last, choices.edge), choices);
}

/**
 * The same from a taped pattern: without insole, outsole and sock where no bottom was traced.
 * @throws Refusal as {@link cutPieces}
 */
export function cutTapedPieces(tape: TapedShell, choices: Choices): CutPieces {
  const nets = (): Nets => {
    const bottom = tape.bottom && netTapedBottom(tape.bottom);
    return { upper: netTapedUpper(tape, bottom), bottom };
  };
  return cutFrom(nets, tape.side, pieceRulesForTape(tape, choices.edge), choices);
}

function cutFrom(nets: () => Nets, side: Side, rules: PieceRules, { settings, labels }: Choices): CutPieces {
  const unusual = checkSettings(rules, settings);
  const { upper, lining, bottom } = nets();
  const drafts = [
    netUpperCard(upper, labels),
    cutUpper(upper, settings, labels),
    cutLining(upper, settings, labels, lining),
    ...(bottom ? [cutInsole(bottom, settings, labels), cutOutsole(bottom, settings, labels), cutSock(bottom, settings, labels)] : []),
  ];
  return {
    pieces: drafts.flatMap((draft) => bothOf(draft, side)),
    findings: [...unusual, ...checkUpper(upper, settings), ...checkDrafts(drafts, upper)],
  };
}
