import { z } from "zod";
import { toeShapes, type LastMeasurements } from "#last/measured.ts";
import { pullRules, type LastingChoices } from "#lasting/settings.ts";
import { knownLeathers, leatherThickness, stripWays } from "#leather/leather.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import type { LandmarkName, MeasureName } from "#last/said.ts";
import type { MakingSaid } from "#making/said.ts";
import type { LineSettings } from "#lines/lines.ts";
import { backTops, liningCuts, seamKinds, sockKinds, upperCuts, type PartChoices } from "#pieces/choices.ts";
import { pieceKeys } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { mostBarOff, rollWidths, sheetSets, type SheetChoices } from "#sheets/choices.ts";
import { layers } from "#sheets/pen.ts";
import { paperNames } from "#sheets/paper.ts";
import { halvesChoices, leathers, toplineEdges, type ShellSettings } from "#shell/settings.ts";
import { mostShorter } from "#shell/tension.ts";
import { mostPhotos, type TapeMark, type TapeSaid } from "#tape/said.ts";

const number = z.number({ error: "must be a number" }).finite();
const positive = number.positive({ error: "must be greater than zero" });
const side = z.enum(["left", "right"], { error: 'must be "left" or "right"' });

const measureShape = {
  side,
  toe: z.enum(toeShapes, { error: `must be one of ${toeShapes.join(", ")}` }),
  stickLengthMm: positive,
  jointGirthMm: positive,
  waistGirthMm: positive,
  instepGirthMm: positive,
  heelGirthMm: positive,
  ballWidthMm: positive,
  seatWidthMm: positive,
  heelHeightMm: number.nonnegative({ error: "must not be negative" }),
  toeSpringMm: number.nonnegative({ error: "must not be negative" }),
} satisfies Record<keyof LastMeasurements, z.ZodType>;

const lineShape = {
  throatDepthMm: positive,
  backHeightMm: positive,
  sideHeightMedialMm: positive,
  sideHeightLateralMm: positive,
  lowestAtMedial: positive,
  lowestAtLateral: positive,
  throatRadiusMm: positive,
} satisfies Record<keyof LineSettings, z.ZodType>;

/** A plain name, never a path: what a job speaks of lies inside it or beside it, and nowhere else. */
const plainName = z
  .string({ error: "must be the name of a file" })
  .refine((name) => name !== "" && name !== "." && name !== ".." && name !== "job.json" && !/[/\\\0]/.test(name), { error: "must be the name of a file that lies beside the job, without a folder" });

const point3 = z.tuple([number, number, number], { error: "must be three numbers" });

const landmarkShape = {
  toePoint: point3,
  seatPoint: point3,
  jointMedial: point3,
  jointLateral: point3,
  seatMedial: point3,
  seatLateral: point3,
  vampPoint: point3,
  waistPoint: point3,
  instepPoint: point3,
  counterPoint: point3,
  treadPoint: point3,
} satisfies Record<LandmarkName, z.ZodType>;

const measuredShape = {
  stickLength: positive,
  lastLength: positive,
  jointGirth: positive,
  waistGirth: positive,
  instepGirth: positive,
  heelGirth: positive,
  ballWidth: positive,
  seatWidth: positive,
  heelHeight: number,
  toeSpring: number,
  featherLength: positive,
  featherMedial: positive,
  featherLateral: positive,
  vampPointFromToe: positive,
} satisfies Record<MeasureName, z.ZodType>;

const saidOfScan = z.strictObject({
  side: side.optional(),
  measured: z.strictObject(measuredShape).partial().optional(),
  featherThrough: z.array(point3).max(400, { error: "must have at most 400 points" }).optional(),
  landmarks: z.strictObject(landmarkShape).partial().optional(),
});

const tapePlace = z.strictObject({ photo: plainName, at: z.tuple([number, number], { error: "must be two numbers" }) });
const tapeMarks = ["toe", "throat", "back", "seat", "joint"].flatMap((name) => [`${name}Medial`, `${name}Lateral`]).concat("bottomToe", "bottomSeat", "bottomJointMedial", "bottomJointLateral");

const tapeShape = {
  photos: z.array(plainName).min(1, { error: "must name at least one picture" }).max(mostPhotos, { error: `must name at most ${mostPhotos} pictures` }),
  side,
  faceDown: z.boolean({ error: "must be true or false" }).optional(),
  barMm: positive.optional(),
  marks: z.partialRecord(z.enum(tapeMarks as [TapeMark, ...TapeMark[]]), tapePlace).optional(),
} satisfies Record<keyof TapeSaid, z.ZodType>;

const allowance = number.nonnegative({ error: "must not be negative" });
const pieceShape = Object.fromEntries(pieceKeys.map((key) => [key, allowance])) as Record<keyof PieceSettings, typeof allowance>;

const word = <const T extends readonly [string, ...string[]]>(words: T) => z.enum(words, { error: `must be one of ${words.join(", ")}` });
const shellShape = {
  leather: word(leathers),
  edge: word(toplineEdges),
  halves: word(halvesChoices),
  springMm: number,
  toplineShorter: allowance.max(mostShorter, { error: `must be a share, at most ${mostShorter}` }),
  counterMm: allowance,
  counterBelowMm: allowance,
  counterInnerMm: allowance,
  counterOuterMm: allowance,
  puffReachMm: allowance,
  skiveMm: positive,
  skiveFeatherMm: positive,
} satisfies Record<keyof ShellSettings, z.ZodType>;

/** What a maker reads on a printed bar: a printer that is farther off than a twentieth has fitted the page to the paper. */
const bar = number.min(mostBarOff.least, { error: `must be ${mostBarOff.least} mm or more` }).max(mostBarOff.most, { error: `must be ${mostBarOff.most} mm or less` });
const yes = z.boolean({ error: "must be true or false" });
const partShape = {
  cut: word(upperCuts),
  seam: word(seamKinds),
  backSeam: word(["closed", "butted"]),
  backTop: word(backTops),
  lining: word(liningCuts),
  sock: word(sockKinds),
  backStrip: yes,
  toeCap: yes,
  strap: yes,
  gore: yes,
  bow: yes,
  sideLining: yes,
} satisfies Record<keyof PartChoices, z.ZodType>;

const sheetShape = {
  paper: word(paperNames),
  rollWidthMm: number.min(rollWidths.least, { error: `must be ${rollWidths.least} mm or more` }).max(rollWidths.most, { error: `must be ${rollWidths.most} mm or less` }),
  sets: word(sheetSets),
  onePage: yes,
  barAcrossMm: bar,
  barUpMm: bar,
  layers: z.array(word(layers)).min(1, { error: "must name at least one" }),
} satisfies Record<keyof SheetChoices, z.ZodType>;

/** A text of the maker's own. */
const textUpTo = (letters: number) => z.string({ error: "must be a text" }).max(letters, { error: `must have at most ${letters} letters` });

const leatherSaid = z
  .strictObject({
    known: word(knownLeathers),
    name: textUpTo(80),
    thicknessMm: number.min(leatherThickness.least, { error: `must be ${leatherThickness.least} mm or more` }).max(leatherThickness.most, { error: `must be ${leatherThickness.most} mm or less` }),
    strips: z
      .array(
        z.strictObject({
          way: word(stripWays),
          widthMm: positive,
          gaugeMm: positive,
          readings: z.array(z.strictObject({ loadN: positive, lengthMm: positive, afterMm: positive.optional() })).max(60, { error: "must have at most 60 readings" }),
        }),
      )
      .max(60, { error: "must have at most 60 strips" }),
  })
  .partial();

const lastingShape = {
  ...(Object.fromEntries(
    Object.entries(pullRules).map(([key, { min, max }]) => [key, number.min(min, { error: `must be ${min} or more` }).max(max, { error: `must be ${max} or less` })]),
  ) as Record<keyof typeof pullRules, z.ZodNumber>),
  correct: yes,
  stopAtMarks: yes,
} satisfies Record<keyof LastingChoices, z.ZodType>;

const drafts = draftOrder.map(({ number }) => String(number));

const shoeEntry = z.strictObject({
  pair: positive.int({ error: "must be a whole number" }).max(100_000, { error: "must be at most 100,000" }),
  side,
  last: textUpTo(200),
  leather: textUpTo(200),
  measured: z
    .strictObject({
      throatDepthMm: positive,
      backHeightMm: positive,
      innerHeightMm: positive,
      outerHeightMm: positive,
      marginsMm: z.partialRecord(z.enum(drafts), number, { error: "may only name drafts by their numbers, 1 to 10" }),
      soleMarginMm: number,
      heelHeightMm: number,
    })
    .partial(),
  foretold: z.strictObject({ throatDepthMm: number, perTenthMm: number, factor: positive.optional() }).optional(),
  asked: z.strictObject({ throatDepthMm: positive, backHeightMm: positive, innerHeightMm: positive, outerHeightMm: positive }).partial().optional(),
  overMm: z.strictObject({ throatDepthMm: number, backHeightMm: number, innerHeightMm: number, outerHeightMm: number }).partial().optional(),
  note: textUpTo(2000).optional(),
});

/** As it was written: what cannot be read as an amount is told where it is used, and the job opens all the same. */
const written = z.union([z.string().max(60), number], { error: "must be a number or a short text" });
/** Far more than there are goods, stretches of work or steps; each name that is none is told, and nobody reads more. */
const mostNames = 200;
const byName = <T extends z.ZodType>(of: T, what: string) =>
  z
    .record(z.string().max(60), of, { error: ({ code }) => (code === "invalid_key" ? "must be a name of at most 60 letters" : `must hold ${what}`) })
    .refine((said) => Object.keys(said).length <= mostNames, { error: `must hold at most ${mostNames} names` });
const writtenBy = byName(written, "numbers or short texts by name");
const makingShape = {
  pairs: written,
  currency: textUpTo(8),
  prices: byName(z.strictObject({ price: written, for: textUpTo(60).optional() }), "prices by name"),
  shelf: writtenBy,
  skins: writtenBy,
  minutes: writtenBy,
  rate: written,
  overhead: written,
  asked: written,
  lasts: written,
  cement: textUpTo(40),
  start: textUpTo(40),
  sessions: textUpTo(400),
  done: byName(z.strictObject({ left: textUpTo(40), right: textUpTo(40) }).partial(), "ticks by step"),
} satisfies Record<keyof MakingSaid, z.ZodType>;

/** What a saved job must look like; messages are shown to the maker after the field's name. */
export const jobSchema = z.strictObject({
  format: z.literal("lastwise job"),
  version: z.literal(6, { error: "must be 6" }),
  title: textUpTo(200),
  size: textUpTo(40),
  last: z.discriminatedUnion("from", [
    z.strictObject({ from: z.literal("measures"), measures: z.strictObject(measureShape), outlines: z.strictObject({ bottom: plainName, side: plainName, barMm: positive }).partial().optional() }),
    z.strictObject({ from: z.literal("scan"), file: plainName, said: saidOfScan.optional(), other: z.strictObject({ file: plainName, said: saidOfScan.optional() }).optional() }),
    z.strictObject({ from: z.literal("tape"), tape: z.strictObject(tapeShape) }),
  ]),
  lines: z.strictObject(lineShape).partial(),
  shell: z.strictObject(shellShape).partial(),
  pieces: z.strictObject(pieceShape).partial(),
  parts: z.strictObject(partShape).partial(),
  leather: z.strictObject({ upper: leatherSaid, lining: leatherSaid }).partial(),
  lasting: z.strictObject(lastingShape).partial(),
  log: z.array(shoeEntry).max(1000, { error: "must have at most 1,000 shoes" }),
  making: z.strictObject(makingShape).partial(),
  sheets: z.strictObject(sheetShape).partial(),
});
