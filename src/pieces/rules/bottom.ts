import { sizeOfStick } from "#last/measures-by-size.ts";
import type { Rule } from "#lines/lines.ts";
import { mm, practice } from "./mm.ts";

/** Insole, shank, filler, sole, heel and sock; mm. */
export interface BottomSettings {
  readonly insoleInMm: number;
  readonly firstBoardMm: number;
  readonly secondBoardMm: number;
  /** How far behind the joint line the second board ends. */
  readonly secondBehindMm: number;
  readonly secondSkiveMm: number;
  readonly shankMm: number;
  readonly shankWideMm: number;
  readonly shankThickMm: number;
  /** How far the shank's ends stay from joint line and seat, at least. */
  readonly shankFrontMm: number;
  readonly shankRearMm: number;
  /** What is left of the lasting margin once it is trimmed. */
  readonly marginLeftMm: number;
  /** Of stiffener and toe puff, in the margin under the feather. */
  readonly stiffLeftMm: number;
  /** Under the feather at the toe, beside upper and lining; counts for the outsole alone. */
  readonly toePuffMm: number;
  readonly soleMm: number;
  readonly soleFinishForepartMm: number;
  readonly soleFinishWaistMm: number;
  readonly soleFinishHeelMm: number;
  readonly splitLiftMm: number;
  readonly splitLiftWideMm: number;
  readonly liftMm: number;
  readonly topPieceMm: number;
  /** How far lifts are cut beyond the seat. */
  readonly heelOverMm: number;
  /** By how much the heel runs in from the sole to the ground. */
  readonly heelTaperMm: number;
  readonly breastHollowMm: number;
  readonly sockInMm: number;
  readonly sockBehindMm: number;
  readonly sockBeyondMm: number;
  readonly sockRoundMm: number;
}

const soleAtToe = "a shoemaking textbook's rule of about 2 mm at the toe; the rest is common practice, no source";

/** Lengths at which shanks are sold, by steps of two sizes: 95 mm for EU 35 and 36 to 110 mm for EU 39 and 40 (common practice, no source). */
export const shankFor = (stickMm: number): number => 95 + 7.5 * Math.round((sizeOfStick(stickMm) - 35.5) / 2);

/** The rules of the bottom; the shank's length goes by the stick length. */
export const bottomRules = (stickMm: number): Readonly<Record<keyof BottomSettings, Rule>> => ({ ...boards, shankMm: shankRule(shankFor(stickMm)), ...shank, ...between, ...sole, ...heel, ...sock });

const boards = {
  insoleInMm: mm("Insole inside the feather line", 0.3, 0, 1, 0.1,
    "Leaves room for cement at the edge; a board that stands out shows through the upper.", practice),
  firstBoardMm: mm("Thickness of the insole", 2, 1.5, 3, 0.1,
    "The full board on the last's bottom: fibre board is 1.5 to 2 mm thick, shoulder leather 2.5 to 3 mm.", practice),
  secondBoardMm: mm("Thickness of the second board", 1.8, 1.5, 2.2, 0.1,
    "Stiffens waist and seat and holds the shank between the boards. It raises the foot in the heel, so the heel grows that much lower.", practice),
  secondBehindMm: mm("Second board ends behind the joint", 12, 10, 15, 0.5,
    "The shoe must bend at the joint. A stiff board that reaches into it breaks, or its edge is felt.", "trade notes on insoles: heel to 10 to 15 mm behind the ball"),
  secondSkiveMm: mm("Skiving of the second board's front", 20, 15, 25, 0.5,
    "Pared to nothing over this width, so that the foot finds no step.", practice),
} as const;

const shankRule = (value: number): Rule =>
  mm("Length of the shank", value, Math.min(80, value), Math.max(140, value), 0.5,
    "Shanks are sold in steps of two sizes: 95 mm for EU 36, 110 mm for EU 40. Put in the length of yours.", practice);

const shank = {
  shankWideMm: mm("Width of the shank", 13, 12, 15, 0.5, "A narrower one tilts, a broader one shows at the waist.", practice),
  shankThickMm: mm("Thickness of the shank", 1, 1, 1.2, 0.1, "Of spring steel. A thinner one gives, a thicker one stands out between the boards.", practice),
  shankFrontMm: mm("Shank short of the joint line", 10, 8, 12, 0.5,
    "The front end must never reach where the shoe bends: it would work through the boards.", practice),
  shankRearMm: mm("Shank short of the seat's edge", 17, 15, 20, 0.5,
    "It must lie well inside the heel but leave room for heel nails at the back.", practice),
} as const;

const between = {
  marginLeftMm: mm("Lasting margin left after trimming", 11, 10, 12, 0.5,
    "What stays stuck to the insole. Less lets go at the toe, more leaves no room for the filler.", practice),
  stiffLeftMm: mm("Stiffener and puff left in the margin", 0.2, 0, 1, 0.1,
    "Both are skived toward the feather line, and what is left of them lies in the margin and lifts the sole at heel and toe. 0 where they are pared to nothing.", "trade notes on skiving: 0.2 mm to nothing"),
  toePuffMm: mm("Thickness of the toe puff", 0.8, 0, 2, 0.1,
    "Lies between lining and upper at the toe, so the sole must reach that much farther there.", practice),
} as const;

const sole = {
  soleMm: mm("Thickness of the sole", 4.5, 4, 5, 0.1,
    "Sole bend in the forepart and under the heel: 8 irons are 4.2 mm, 9 irons 4.8 mm.", "1 iron is a 48th of an inch (tables of leather weights); 4 to 5 mm is common practice"),
  soleFinishForepartMm: mm("Sole edge, forepart", 2, 0, 6, 0.5,
    "What is left to trim and finish the edge, and a little to be seen from above.", soleAtToe),
  soleFinishWaistMm: mm("Sole edge, waist", 0.5, 0, 4, 0.5,
    "The waist is kept close so that it looks slim.", soleAtToe),
  soleFinishHeelMm: mm("Sole edge, heel", 1.2, 0, 4, 0.1,
    "What is rasped away when the heel and the sole are levelled together.", soleAtToe),
} as const;

const levels = "handmade shoe courses: a thin horseshoe first to level the round seat, then lifts one by one, each pared flat; the width is common practice, no source";

const heel = {
  splitLiftMm: mm("Leather of the split lift", 2.5, 2, 3, 0.5,
    "The horseshoe that levels the round seat is pared from it: as thick as the seat stands off at the edge, to nothing inside.", levels),
  splitLiftWideMm: mm("Width of the split lift", 15, 12, 18, 0.5,
    "From the edge inward to where the seat is level of itself.", levels),
  liftMm: mm("Thickness of a lift", 5, 4, 6, 0.5,
    "All lifts are of one substance but the first, which is pared to what is left of the height.", practice),
  topPieceMm: mm("Thickness of the top piece", 5.5, 5, 6, 0.5,
    "What wears on the ground, from the butt of the hide or of rubber, even all over.", practice),
  heelOverMm: mm("Lifts beyond the seat", 1, 0.5, 2, 0.1,
    "What is rasped away with the sole's edge once the heel is built.", practice),
  heelTaperMm: mm("Heel runs in toward the ground", 1.5, 1, 2, 0.1,
    "A stacked heel that goes straight down looks wider at the ground than at the sole.", practice),
  breastHollowMm: mm("Hollow of the heel's breast", 3, 0, 5, 0.5,
    "How far the middle of the breast lies behind its corners; 0 is cut straight.", practice),
} as const;

const sock = {
  sockInMm: mm("Sock inside the insole", 0.7, -1, 3, 0.1,
    "The sock must lie flat inside the shoe; if it touches the upper, its edge curls.", practice),
  sockBehindMm: mm("Half sock ends behind the joint", 12, 5, 25, 0.5,
    "Its front edge must lie where the shoe does not bend, or it rolls up.", practice),
  sockBeyondMm: mm("Heel sock beyond the heel's breast", 10, 0, 25, 0.5,
    "It covers the nails of the heel, so it goes on a little into the waist.", practice),
  sockRoundMm: mm("Front of a half or heel sock rounded", 5, 0, 10, 0.5,
    "A front rounded toward the toe lies flatter than a straight one; 0 is cut straight.", practice),
} as const;
