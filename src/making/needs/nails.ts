import { finding, type Finding } from "#base/findings.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import type { Piece } from "#pieces/piece.ts";
import { lengthOf } from "#plane/measure.ts";
import { mmWords } from "../amounts/units.ts";
import { lastsOf } from "../calendar/lasts.ts";
import type { GoodId } from "../goods.ts";
import type { MakingInput } from "../input.ts";
import { readPairs } from "../money/read-pairs.ts";
import type { Need, NeedOf } from "../need.ts";
import { nailedLifts, soldMm, underFootMm } from "./nailed-lifts.ts";
import { netOf, piecesOf } from "./part-areas.ts";
import { wasteOf } from "./waste.ts";

const practice = "common practice, no source";
const shoes = 2;
/** Tacks that hold an insole to its last. */
export const tacksOfInsole = 3;
/** Lasting nails stand so close along the feather line, mm. */
export const nailEveryMm = 10;
/** How many lasting nails a shoe takes whose margin is `roundMm` long. */
export const nailsOfShoe = (roundMm: number): number => Math.ceil(roundMm / nailEveryMm - 1e-9);
/** Some bend, some roll away: so many of a hundred are kept in hand of what is drawn again, or driven in vain of what stays. */
const bentShare = 0.1;
/** How far tacks of the insole and of the drafts, and lasting nails, go into the last, mm. */
const intoLastMm = 8, nailIntoLastMm = 6;
const longEnough = (mm: number): number => soldMm.find((one) => one >= mm - 1e-9) ?? soldMm[soldMm.length - 1]!;

/** Tacks and nails by kind. Those of lasting are drawn again once the cement holds, so as many are bought as stand in all lasts at once. */
export const nailNeeds = (input: MakingInput, findings: Finding[]): readonly Need[] => [...lasting(input), ...heelNails(input, findings)];

/** Running length round one shoe's bottom, and where it is measured; nothing where there is neither insole nor feather line. */
export function featherMm(pieces: readonly Piece[]): { readonly mm: number; readonly on: string } | undefined {
  const one = pieces.filter(({ side }) => side === "right");
  const insole = piecesOf(one, "insole board")[0];
  if (insole) return { mm: insole.perimeterMm, on: "round the insole" };
  const mm = piecesOf(one, "upper leather").flatMap(({ marks }) => marks).reduce((sum, mark) => (mark.kind === "line" && mark.use === "net" && mark.name === "feather line" ? sum + lengthOf(mark.line) : sum), 0);
  return mm > 0 ? { mm, on: "along the upper's feather line" } : undefined;
}

function lasting({ pieces, settings, stiff, said }: MakingInput): readonly Need[] {
  const feather = featherMm(pieces);
  if (!feather) return [];
  const boards = settings.firstBoardMm + (piecesOf(pieces, "second board").length > 0 ? settings.secondBoardMm : 0);
  const margin = settings.upperThicknessMm + settings.liningThicknessMm + Math.max(stiff.counterMm, settings.toePuffMm);
  const atOnce = lastsOf(said, readPairs(said.pairs, []));
  const need = (good: GoodId, part: NeedOf, kind: string, reason: string): Need => {
    const spare = Math.ceil(bentShare * atOnce * part.net);
    const counted = atOnce === 1 ? "" : ` Bought for ${atOnce} pairs, which stand on lasts at once.`;
    return { good, measure: "count", parts: [part], net: part.net, gross: part.net, again: true, atOnce, spare, kind, reason: `${reason} Drawn again, so they serve for pair after pair.${counted} Buy a tenth more, ${spare} here: some bend.`, source: practice };
  };
  const each = (name: string, count: number): NeedOf => ({ name, perPair: count, net: count });
  const nails = shoes * nailsOfShoe(feather.mm);
  const front = boards > settings.firstBoardMm ? `${mmWords(boards)} of board behind the joint and ${mmWords(settings.firstBoardMm)} before it,` : `${mmWords(boards)} of board`;
  return [
    need("insole tacks", each("insole", shoes * tacksOfInsole), `${longEnough(boards + intoLastMm)} mm`, `${tacksOfInsole} hold the insole to each last: through ${front} and ${intoLastMm} mm or more into the last. They stand clear of the shank.`),
    need("lasting tacks", each("drafts", shoes * draftOrder.length), `first kind of lasting nails: stout, ${longEnough(boards + margin + intoLastMm)} mm, with a head that pincers hold`, `One at each of the ${draftOrder.length} drafts of a shoe; it has to hold the pull until the cement does.`),
    need("lasting nails", each("lasting margin", nails), `second kind of lasting nails: thin, ${longEnough(settings.firstBoardMm + margin + nailIntoLastMm)} mm`, `One every ${nailEveryMm} mm ${feather.on}, ${feather.mm.toFixed(0)} mm on each shoe; closer at toe and heel, where the pleats lie, and farther along the waist.`),
  ];
}

/** Nails of the heel: as many as are pricked on its pieces, as long as ends inside. */
function heelNails(input: MakingInput, findings: Finding[]): readonly Need[] {
  const lifts = nailedLifts(piecesOf(input.pieces, "heel leather"), input);
  for (const { name, nailMm, roomMm } of lifts) if (nailMm === undefined) findings.push(finding("heel-nails-none", { lift: name, roomMm }));
  const nailed = lifts.filter(({ nailMm }) => nailMm !== undefined);
  const parts = nailed.map(({ name, count, nailMm }): NeedOf => ({ name: `${name}, ${nailMm} mm`, perPair: count, net: count })), net = netOf(parts);
  if (net === 0) return [];
  const gross = Math.ceil(net * (1 + bentShare) - 1e-9);
  return [{
    good: "heel nails", measure: "count", parts, net, gross,
    waste: wasteOf(1 - net / gross, "About one in ten bends and is drawn (common practice, no source)."),
    kind: nailed.map(({ name, count, nailMm }) => `${count} of ${nailMm} mm for ${name}`).join(", ") + " of each pair",
    reason: `At the places pricked on each lift. Each ends inside the shoe, in heel, sole or boards, ${underFootMm} mm or more below the foot at the thinnest place: buy none longer, and feel inside for points. They stay in the shoe; the top piece is cemented.`,
    source: `${practice}; lifts one by one with nails: notes of a shoemaking course`,
  }];
}
