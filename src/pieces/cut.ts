import type { Finding } from "#base/findings.ts";
import { medialSign, type Last, type Side } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { LaidOnLast } from "#shell/lay-flat.ts";
import type { LaidPanel } from "#shell/panel.ts";
import type { LaidPanels } from "#shell/panels.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import type { SeamLine } from "#shell/seam-line.ts";
import type { HalvesChoice, ShellSettings, ToplineEdge } from "#shell/settings.ts";
import type { FlatBottom } from "#shell/shell.ts";
import type { TapedShell } from "#tape/taped-shell.ts";
import { bottomPieces } from "./bottom/bottom-pieces.ts";
import type { BottomMade } from "./bottom/made.ts";
import { netBottom, type NetBottom } from "./bottom/net-bottom.ts";
import { checkBack, checkSettings } from "./check.ts";
import { placesOnLast } from "./check/on-last.ts";
import { checkParts } from "./check-parts.ts";
import { usualParts, type Chosen, type PartChoices } from "./choices.ts";
import { bothOf } from "./draft.ts";
import { extraPieces } from "./extras/extras.ts";
import { Groups, said } from "./groups.ts";
import type { Labels } from "./label-text.ts";
import { onPiece } from "./inside-piece.ts";
import { withGore } from "./lining/gore-cut.ts";
import { heelNet } from "./lining/heel-net.ts";
import { liningPieces, type LiningInput } from "./lining/lining.ts";
import { scalesOf } from "./lining/on-last.ts";
import { groundOf, netPanels, panelGround, wholePanel, type NetPanels } from "./net-panels.ts";
import { netTapedBottom, netTapedUpper } from "./net-tape.ts";
import { netUpper, type NetUpper } from "./net-upper.ts";
import type { Parts } from "./parts.ts";
import type { Ground, Piece, Strip } from "./piece.ts";
import { pricked } from "./pricks.ts";
import { bottomKeys, bottomOnlyKeys, pieceRulesFor, pieceRulesForTape } from "./rules.ts";
import type { PieceSettings } from "./settings.ts";
import { stiffeningPieces } from "./stiffening/stiffening.ts";
import type { Stitched } from "./stitching.ts";
import { allStitching } from "./stitching/all.ts";
import { tapedPartsFrom, tapeLacks } from "./tape-lacks.ts";
import { cutUpperPanels } from "./upper/allowances.ts";
import type { CorrectedFor } from "./upper/notes.ts";
import { upperPieces, type CardPanels } from "./upper/pieces.ts";

/** What lies beneath the upper as far as parts are made of it; of the shell's settings. */
const stiffKeys = ["counterMm", "counterBelowMm", "counterInnerMm", "counterOuterMm", "puffReachMm", "skiveMm", "skiveFeatherMm"] as const;
export type Stiff = Pick<ShellSettings, (typeof stiffKeys)[number]>;

interface Choices {
  /** How the topline's edge is made; folded over a tape where nothing is said. */
  readonly edge?: ToplineEdge;
  readonly parts?: PartChoices;
  /** As the shell's rules say where nothing is said. */
  readonly stiff?: Stiff;
  readonly settings: PieceSettings;
  readonly labels: Labels;
  /** What was cut before: groups of pieces that would come out the same are taken over. */
  readonly before?: CutPieces | undefined;
}

/** The upper as it lies without any leather in mind, for card, which does not stretch. */
export interface PlainUpper {
  readonly flat: LaidOnLast;
  readonly panels?: LaidPanels;
  readonly correctedFor: CorrectedFor;
}

export interface CutInput extends Choices {
  readonly last: Last;
  readonly lines: Lines;
  readonly flat: LaidOnLast;
  /** What the flat and its panels were before they were corrected for a leather; what is cut of card comes of it. */
  readonly plain?: PlainUpper;
  /** The upper opened along the seams of another cut than that at the back alone. */
  readonly panels?: LaidPanels;
  /** The lining laid flat by itself, and by how much the upper over it is longer round the heel, level at half the back's height, mm a half. */
  readonly lining?: { readonly flat: LaidOnLast; readonly heelLongerMm: number };
  /** The heel part of the last's own surface without a seam: drawn together along the topline for the heel pocket, and as it is for the stiffener. */
  readonly heel?: { readonly pocket: LaidPanel; readonly stiffener: LaidPanel };
  readonly bottom: FlatBottom;
  readonly halves?: HalvesChoice;
}

export interface CutPieces {
  /** Both shoes: each piece for the last's own side, its mirrored twin right after it. */
  readonly pieces: readonly Piece[];
  readonly strips: readonly Strip[];
  /** Every line of stitches of one shoe. */
  readonly stitching: readonly Stitched[];
  readonly findings: readonly Finding[];
  /** What the bottom is built of; nothing where no bottom was traced. */
  readonly made?: BottomMade;
  /** The flat sheets that pieces are drawn on, and where they lie on the last. */
  readonly grounds: readonly Ground[];
  /** The seams of another cut than that at the back alone, as they lie on the last. */
  readonly seams?: readonly SeamLine[];
  readonly groups: Groups;
}

/**
 * Every piece of a pair, for both shoes. Rules: docs/method/pieces.md.
 * @throws Refusal where a setting is not a number or below its least, or a seam cannot run where it should.
 */
export function cutPieces({ last, lines, flat, plain, panels: laid, lining, heel, bottom, halves, before, ...choices }: CutInput): CutPieces {
  const { settings } = choices;
  const unusual = checkSettings(pieceRulesFor(last, choices.edge), settings);
  const groups = new Groups(before?.groups);
  const sign = medialSign(last.side);
  const net = groups.make("net", [last, lines, flat, halves], () => netUpper(last, lines, flat, halves));
  const nets = groups.make("panels", [net, laid, halves], (): NetPanels => (laid ? netPanels({ last, lines, laid, ...(halves && { halves }) }) : wholeOf(net)));
  const cards = plain && groups.make("cards", [last, lines, plain.flat, plain.panels, halves, said(plain.correctedFor)], (): CardPanels => ({
    panels: (plain.panels ? netPanels({ last, lines, laid: plain.panels, ...(halves && { halves }) }) : wholeOf(netUpper(last, lines, plain.flat, halves))).panels,
    correctedFor: plain.correctedFor,
  }));
  const own = lining && groups.make("own", [last, lines, lining, halves], () => ({ net: netUpper(last, lines, lining.flat, halves), heelLongerMm: lining.heelLongerMm }));
  const heels = heel && groups.make("heel", [heel], () => ({ pocket: heelNet(heel.pocket, sign), stiffener: heelNet(heel.stiffener, sign) }));
  const scales = lining && own && groups.make("scales", [lining, own], () => scalesOf(lining.flat, own.net, sign));
  const ground = groups.make("bottom net", [last, bottom], () => netBottom(last, bottom));
  const grounds = groups.make("grounds", [flat, laid, lining, heel, bottom], () => [
    groundOf("upper", last.side, flat.onLast.mesh, flat.uv),
    ...(laid?.panels.map((panel) => panelGround(panel, last.side)) ?? []),
    ...(lining ? [groundOf("lining", last.side, lining.flat.onLast.mesh, lining.flat.uv)] : []),
    ...(heel ? [panelGround(heel.pocket, last.side), groundOf("stiffener", last.side, heel.stiffener.panel.onLast, heel.stiffener.uv)] : []),
    groundOf("bottom", last.side, bottom.bottom.mesh, bottom.uv),
  ]);
  const cut = cutGroups({
    side: last.side,
    groups,
    whole: net,
    nets,
    ...(cards && { cards }),
    lining: { ...(own && { own }), ...(scales && heels && { laid: { scales, heel: heels.pocket } }), seams: laid?.placed.lines ?? [] },
    ...(scales && heels && { stiffener: { scales, heel: heels.stiffener } }),
    bottom: { net: ground, on: { last, bottom } },
    onLast: { last, lines },
    grounds,
    choices: { ...choices, stiff: choices.stiff ?? usualStiff(last.measures) },
  });
  return { ...cut, findings: [...unusual, ...(laid?.findings ?? []), ...(laid ? [] : checkBack(net)), ...nets.findings, ...cut.findings], grounds, ...(laid && { seams: laid.placed.lines }), groups };
}

const noGrounds: readonly Ground[] = [];
const wholeOf = (net: NetUpper): NetPanels => ({ panels: [wholePanel(net)], seams: [], findings: [] });

/**
 * The same from a taped pattern: cut whole with a back seam, lined in one, without what needs a last (told where it was
 * asked for), and without insole, outsole and sock where no bottom was traced.
 * @throws Refusal as {@link cutPieces}
 */
export function cutTapedPieces(tape: TapedShell, { before, parts = tapedPartsFrom(), ...choices }: Choices): CutPieces {
  const unusual = checkSettings(pieceRulesForTape(tape, choices.edge), choices.settings);
  const groups = new Groups(before?.groups);
  const bottom = tape.bottom && netTapedBottom(tape.bottom);
  const net = netTapedUpper(tape, bottom);
  const cut = cutGroups({ side: tape.side, groups, whole: net, nets: wholeOf(net), lining: { seams: [] }, grounds: noGrounds, ...(bottom && { bottom: { net: bottom } }), choices: { ...choices, parts, stiff: choices.stiff ?? usualStiff({ lastLength: tape.length.mm }) } });
  return { ...cut, findings: [...unusual, ...tapeLacks(parts), ...cut.findings], grounds: noGrounds, groups };
}

interface Nets {
  readonly side: Side;
  readonly groups: Groups;
  readonly whole: NetUpper;
  readonly nets: NetPanels;
  readonly cards?: CardPanels;
  readonly lining: Pick<LiningInput, "own" | "laid" | "seams">;
  readonly stiffener?: NonNullable<LiningInput["laid"]>;
  readonly bottom?: { readonly net: NetBottom; readonly on?: { readonly last: Last; readonly bottom: FlatBottom } };
  readonly onLast?: { readonly last: Last; readonly lines: Lines };
  readonly grounds: readonly Ground[];
  readonly choices: Omit<Choices, "before"> & { readonly stiff: Stiff };
}

const usualStiff = ({ lastLength }: { readonly lastLength: number }): Stiff => shellSettingsFrom(shellRulesFor({ measures: { lastLength } }));

/** Draws all parts, group by group, and looks at them. */
function cutGroups({ side, groups, whole, nets: { panels }, cards, lining, stiffener, bottom, onLast, grounds, choices }: Nets): Pick<CutPieces, "pieces" | "strips" | "stitching" | "findings" | "made"> {
  const { edge = "taped", parts = usualParts, stiff, settings, labels } = choices;
  // A taped pattern is whole, whatever is chosen.
  const chosen: Chosen = { ...parts, cut: onLast ? parts.cut : "back-seam", edge };
  const words = said([chosen, labels]), stiffWords = said(stiffKeys.map((key) => stiff[key]));
  const aboveWords = said(aboveOf(settings)), belowWords = said(bottomKeys.map((key) => settings[key]));
  const upper = groups.make("upper", [panels, cards, aboveWords, words], () => upperPieces({ panels, ...(cards && { cards }), settings, chosen, labels }));
  const extras = groups.make("extras", [upper, onLast?.lines, aboveWords, words], () => extraPieces({ panels, upper: upper.drafts, ...(onLast && { onLast }), settings, chosen, labels }));
  const inside = groups.make("lining", [whole, lining.own, lining.laid?.heel, panels, aboveWords, words, stiffWords], () => {
    const made = liningPieces({ upper: whole, ...lining, settings, stiffener: stiff, chosen, labels });
    const drafts = chosen.gore ? withGore(made.drafts, lining.own?.net ?? whole, lining.own !== undefined, settings) : made.drafts;
    return { ...made, drafts: drafts.map((draft) => pricked({ ...draft, marks: onPiece(draft.outline, draft.marks) })) };
  });
  const stiffening = groups.make("stiffening", [whole, lining.own, stiffener?.heel, aboveWords, words, stiffWords], () =>
    stiffeningPieces({
      ...(lining.own ? { net: lining.own.net, ground: "lining" } : { net: whole, ground: "upper" }),
      ...(stiffener && onLast && { laid: { ...stiffener, lastLengthMm: onLast.last.measures.lastLength } }),
      sizes: stiff,
      settings,
      chosen,
      labels,
    }),
  );
  // What was asked for but could not be drawn is not lasted under either.
  const drawn = (name: string): boolean => [extras, stiffening].some(({ drafts }) => drafts.some((d) => d.name === name));
  const lasted = { toeCap: drawn("toe cap"), backStrip: drawn("back strip"), sideLining: drawn("inner side lining") || drawn("outer side lining") };
  const below = bottom && groups.make("bottom", [bottom.net, belowWords, said([parts.sock, lasted, labels]), stiffWords], () => bottomPieces({ ...bottom, settings, shell: stiff, chosen: { ...lasted, sock: parts.sock }, labels }));
  const all: readonly Parts[] = [{ ...upper, drafts: extras.upper }, extras, inside, stiffening, ...(below ? [below] : [])];
  const drafts = all.flatMap((part) => part.drafts);
  const pieces = all.flatMap(({ drafts }, k) => groups.make(`pieces ${k}`, [drafts], () => drafts.flatMap((draft) => bothOf(draft, side))));
  const stitching = groups.make("stitching", [panels, extras, inside, aboveWords, words], () =>
    allStitching({ upper: cutUpperPanels(panels, settings, chosen).panels, upperDrafts: extras.upper, extras: extras.drafts, lining: inside.drafts, ...(inside.panels && { liningPanels: inside.panels }), settings, chosen }),
  );
  const checked = groups.make("checks", [panels, grounds, said(settings), words, ...all.map((part) => part.drafts)], () => checkParts({ panels, drafts, settings, chosen, onLast: placesOnLast(grounds), ...(panels.length > 1 && { whole: wholePanel(whole) }) }));
  return { pieces, strips: all.flatMap((part) => part.strips), stitching, findings: [...all.flatMap((part) => part.findings), ...checked], ...(below && { made: below.made }) };
}

/** What is cut above the bottom: all settings but those of the bottom alone. */
const aboveOf = (settings: PieceSettings) => Object.entries(settings).filter(([key]) => !bottomOnlyKeys.has(key as keyof PieceSettings));
