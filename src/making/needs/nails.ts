import { finding, type Finding } from "#base/findings.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import type { Piece } from "#pieces/piece.ts";
import { lengthOf } from "#plane/measure.ts";
import type { GoodId } from "../goods.ts";
import type { MakingInput } from "../input.ts";
import type { Need, NeedOf } from "../need.ts";
import { piecesOf } from "./part-areas.ts";

const practice = "common practice, no source";
const shoes = 2;
const tacksOfInsole = 3;
/** Lasting nails stand so close along the feather line, mm. */
const nailEveryMm = 10;
/** Lengths in which tacks and nails are sold, mm: common practice, no source. */
const sold = [6, 8, 10, 13, 16, 19, 22, 25, 30] as const;
/** How far tacks of the insole and of the drafts, and lasting nails, go into the last, mm. */
const intoLastMm = 8, nailIntoLastMm = 6;
/** How far below the foot a heel nail ends at least, and how far it goes beyond its lift if there is room, mm (our own limits). */
const underFootMm = 1.5, beyondLiftMm = 10, holdsMm = 4;

const longEnough = (mm: number): number => sold.find((one) => one >= mm - 1e-9) ?? sold[sold.length - 1]!;

/** Tacks and nails by kind. Those of lasting are drawn again once the cement holds, so they serve for the next pair. */
export const nailNeeds = (input: MakingInput, findings: Finding[]): readonly Need[] => [...lasting(input), ...heelNails(input, findings)];

/** Running length round one shoe's bottom, and where it is measured; nothing where there is neither insole nor feather line. */
export function featherMm(pieces: readonly Piece[]): { readonly mm: number; readonly on: string } | undefined {
  const one = pieces.filter(({ side }) => side === "right");
  const insole = piecesOf(one, "insole board")[0];
  if (insole) return { mm: insole.perimeterMm, on: "round the insole" };
  const mm = piecesOf(one, "upper leather").flatMap(({ marks }) => marks).reduce((sum, mark) => (mark.kind === "line" && mark.use === "net" && mark.name === "feather line" ? sum + lengthOf(mark.line) : sum), 0);
  return mm > 0 ? { mm, on: "along the upper's feather line" } : undefined;
}

function lasting({ pieces, settings, stiff }: MakingInput): readonly Need[] {
  const feather = featherMm(pieces);
  if (!feather) return [];
  const boards = settings.firstBoardMm + (piecesOf(pieces, "second board").length > 0 ? settings.secondBoardMm : 0);
  const margin = settings.upperThicknessMm + settings.liningThicknessMm + Math.max(stiff.counterMm, settings.toePuffMm);
  const need = (good: GoodId, part: NeedOf, kind: string, reason: string): Need => ({ good, measure: "count", parts: [part], net: part.net, gross: part.net, again: true, kind, reason: `${reason} Drawn again, so they serve for many pairs.`, source: practice });
  const each = (name: string, count: number): NeedOf => ({ name, perPair: count, net: count });
  const nails = shoes * Math.ceil(feather.mm / nailEveryMm - 1e-9);
  return [
    need("insole tacks", each("insole", shoes * tacksOfInsole), `${longEnough(boards + intoLastMm)} mm`, `${tacksOfInsole} hold the insole to each last: through ${boards.toFixed(1)} mm of board and ${intoLastMm} mm into the last.`),
    need("lasting tacks", each("drafts", shoes * draftOrder.length), `first kind of lasting nails: stout, ${longEnough(boards + margin + intoLastMm)} mm, with a head that pincers hold`, `One at each of the ${draftOrder.length} drafts of a shoe; it has to hold the pull until the cement does.`),
    need("lasting nails", each("lasting margin", nails), `second kind of lasting nails: thin, ${longEnough(settings.firstBoardMm + margin + nailIntoLastMm)} mm`, `One every ${nailEveryMm} mm ${feather.on}, ${feather.mm.toFixed(0)} mm on each shoe; closer at toe and heel, where the pleats lie, and farther along the waist.`),
  ];
}

/** Nails of the heel: as many as are pricked on its pieces, as long as ends inside. */
function heelNails({ pieces, made, settings }: MakingInput, findings: Finding[]): readonly Need[] {
  const layers = made?.heel?.layers ?? [];
  const parts: NeedOf[] = [], kinds: string[] = [];
  let above = settings.soleMm + settings.secondBoardMm + settings.firstBoardMm;
  for (const { name, backMm, breastMm } of layers) {
    const lifts = piecesOf(pieces, "heel leather").filter((piece) => piece.name === name);
    const count = lifts.reduce((sum, piece) => sum + piece.perPair * piece.marks.filter((mark) => mark.kind === "prick" && mark.name === "nails").length, 0);
    above += Math.min(backMm, breastMm);
    if (count === 0) continue;
    const length = nailWithin(above, Math.max(backMm, breastMm));
    if (length === undefined) findings.push(finding("heel-nails-none", { lift: name, roomMm: above }));
    else {
      parts.push({ name: `${name}, ${length} mm`, perPair: count, net: count });
      kinds.push(`${count} of ${length} mm for ${name}`);
    }
  }
  const net = parts.reduce((sum, part) => sum + part.net, 0);
  if (net === 0) return [];
  return [{
    good: "heel nails", measure: "count", parts, net, gross: net, kind: kinds.join(", "),
    reason: `At the places pricked on each lift. Each must end inside: at least ${underFootMm} mm below the foot at the thinnest place, through lift, sole and boards. They stay in the shoe; the top piece is cemented.`,
    source: `${practice}; lifts one by one with nails: notes of a shoemaking course`,
  }];
}

/** The longest nail that ends inside `roomMm` of lifts, sole and boards, and goes no farther beyond its lift than it needs to; nothing where none holds. */
export function nailWithin(roomMm: number, liftMm: number): number | undefined {
  const most = Math.min(roomMm - underFootMm, liftMm + beyondLiftMm);
  const longest = sold.findLast((mm) => mm <= most + 1e-9);
  return longest !== undefined && longest >= liftMm + holdsMm ? longest : undefined;
}
