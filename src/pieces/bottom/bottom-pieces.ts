import { finding, type Finding } from "#base/findings.ts";
import { medialSign, type Last } from "#last/last.ts";
import type { FlatBottom } from "#shell/shell.ts";
import type { Outline } from "#plane/outline.ts";
import { area } from "#plane/measure.ts";
import type { SockKind } from "../choices.ts";
import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import { lineMark, ringEdge } from "../marks.ts";
import type { Parts } from "../parts.ts";
import type { PieceSettings } from "../settings.ts";
import { cutInsole, cutSecondBoard } from "./boards.ts";
import { refuseImpossibleBottom } from "./bottom-possible.ts";
import { BottomSurface } from "./bottom-surface.ts";
import { checkDrawn, checkFiller, checkHeel, checkShank } from "./check-bottom.ts";
import { cutFiller, fillerOutline } from "./filler-piece.ts";
import { fillerRoom, thicknessNear } from "./filler.ts";
import { breadthAt } from "./heel-line.ts";
import { cutHeel, needsSplitLift } from "./heel-pieces.ts";
import { heelStack } from "./heel-stack.ts";
import type { BottomMade } from "./made.ts";
import { marginUnder, type LastedExtras, type MarginUnder, type StiffReach } from "./margin-under.ts";
import type { NetBottom } from "./net-bottom.ts";
import { cutOutsole } from "./outsole.ts";
import { levelSeat } from "./seat.ts";
import { lastedSections } from "./sections.ts";
import { shankBend, shankOutline, shankPlace } from "./shank.ts";
import { cutShank, cutShankBend } from "./shank-pieces.ts";
import { cutSock } from "./sock.ts";

export interface BottomInput {
  readonly net: NetBottom;
  /** The last and its bottom, by which heights are known; none on a taped pattern. */
  readonly on?: { readonly last: Last; readonly bottom: FlatBottom };
  readonly settings: PieceSettings;
  readonly shell: StiffReach;
  readonly chosen: LastedExtras & { readonly sock: SockKind };
  readonly labels: Labels;
}

/** What follows from the bottom's heights. */
interface Built {
  readonly drafts: readonly Draft[];
  readonly findings: readonly Finding[];
  readonly filler?: NonNullable<BottomMade["filler"]>["depth"];
  readonly heel?: BottomMade["heel"];
}

/**
 * Every piece of the bottom: both insole boards, shank, filler, outsole, heel and sock. Method: docs/method/bottom.md.
 * @throws Refusal at a number with which no bottom can be built
 */
export function bottomPieces({ net, on, settings, shell, chosen, labels }: BottomInput): Parts & { readonly made: BottomMade } {
  refuseImpossibleBottom(settings);
  const place = shankPlace(net, settings);
  const onBoards = [lineMark("shank", "place", ringEdge(shankOutline(net, place)).line)];
  const bend = on ? shankBend(net, place, on.bottom, on.last.side) : [];
  const margin = marginUnder(net, settings, shell, chosen);
  const hollow = fillerOutline(net, margin.reachMm);
  const built = on ? builtOn(net, on, hollow, margin, settings, labels) : { drafts: [], findings: [finding("bottom-without-heights", {})] };
  const drafts = [
    cutInsole(net, settings, labels, onBoards),
    ...cutSecondBoard(net, settings, labels, onBoards),
    cutShank(net, place, settings, labels),
    ...cutShankBend(bend, labels),
    ...(hollow ? [cutFiller(net, hollow, margin.reachMm, on && built.filler && { mostMm: built.filler.mostMm, at: thicknessNear(on.bottom, built.filler.thicknessMm, medialSign(on.last.side)) }, settings, labels)] : []),
    cutOutsole(net, settings, labels, chosen),
    ...built.drafts,
    ...cutSock(net, settings, labels, chosen.sock),
  ];
  const made: BottomMade = {
    boards: { firstMm: settings.firstBoardMm, secondMm: settings.secondBoardMm, secondBehindJointMm: settings.secondBehindMm, skiveMm: settings.secondSkiveMm },
    shank: { lengthMm: settings.shankMm, widthMm: settings.shankWideMm, thicknessMm: settings.shankThickMm, fromSeatMm: place.rearMm, behindJointMm: place.shortOfJointMm, longestMm: place.longestMm, bend },
    ...(hollow && { filler: { marginMm: margin.reachMm, areaMm2: area(hollow), ...(built.filler && { depth: built.filler }) } }),
    ...(built.heel && { heel: built.heel }),
  };
  const meet = hollow ? [] : [finding("margins-meet", { marginMm: margin.reachMm, halfMm: narrowestHalf(net) })];
  return { drafts, strips: [], findings: [...checkShank(place, settings), ...meet, ...built.findings, ...checkDrawn(drafts.map(({ name }) => name), built.heel?.layers ?? [], built.heel !== undefined && needsSplitLift(built.heel.layers, built.heel.splitEdge))], made };
}

function builtOn(net: NetBottom, { last, bottom }: NonNullable<BottomInput["on"]>, hollow: Outline | undefined, margin: MarginUnder, settings: PieceSettings, labels: Labels): Built {
  const surface = new BottomSurface(last, bottom, net);
  const sections = lastedSections(last, surface, margin);
  const room = hollow && fillerRoom(sections, surface, bottom, margin.reachMm);
  const seat = levelSeat(last, bottom, surface, sections, margin, settings);
  const layers = seat ? heelStack({ ...seat, ...settings }) : [];
  const back = last.landmarks.seatPoint[0];
  return {
    drafts: seat ? cutHeel(net, layers, seat.edge, settings, labels) : [],
    findings: [...(room ? checkFiller(room, back) : []), ...(seat ? checkHeel(seat, layers, settings, last.measures.heelHeight, last.landmarks.seatPoint) : [])],
    ...(room && { filler: { volumeMm3: room.volumeMm3, mostMm: room.mostMm, mostFromSeatMm: room.mostAt[0] - back, thicknessMm: room.thicknessMm } }),
    ...(seat && {
      heel: {
        backMm: seat.backMm, breastMm: seat.breastMm, pitchDeg: seat.pitchDeg, layers, splitEdge: seat.edge,
        splitMostMm: seat.edge.reduce((most, { offMm }) => Math.max(most, offMm), 0), breastOffMm: seat.breastOffMm,
      },
    }),
  };
}

/** Half the bottom's breadth where it is narrowest between heel and joint, mm. */
function narrowestHalf(net: NetBottom): number {
  let least = Infinity;
  for (let x = net.breastX / 2; x < net.jointLateralPoint[0]; x += 2) least = Math.min(least, breadthAt(net, x) / 2);
  return least;
}
