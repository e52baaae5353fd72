import { z } from "zod";
import type { LastMeasurements } from "#last/measured.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { PieceSettings } from "#pieces/settings.ts";

const number = z.number({ error: "must be a number" }).finite();
const positive = number.positive({ error: "must be greater than zero" });
const side = z.enum(["left", "right"], { error: 'must be "left" or "right"' });

const measureShape = {
  side,
  toe: z.enum(["round", "almond", "square", "pointed"], { error: "must be round, almond, square or pointed" }),
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

const allowance = number.nonnegative({ error: "must not be negative" });
const pieceShape = {
  lastingToeMm: allowance,
  lastingToeSidesMm: allowance,
  lastingForepartMm: allowance,
  lastingOuterWaistMm: allowance,
  lastingInnerWaistMm: allowance,
  lastingHeelMm: allowance,
  toplineFoldMm: allowance,
  backSeamMm: allowance,
  upperThicknessMm: allowance,
  liningThicknessMm: allowance,
  liningTrimMm: allowance,
  liningBackInTopMm: allowance,
  liningBackInMiddleMm: allowance,
  liningBackInFeatherMm: allowance,
  liningToeInMm: allowance,
  liningLastingShorterMm: allowance,
  insoleInMm: allowance,
  soleFinishForepartMm: allowance,
  soleFinishWaistMm: allowance,
  soleFinishHeelMm: allowance,
  sockInMm: allowance,
  toePuffMm: allowance,
} satisfies Record<keyof PieceSettings, z.ZodType>;

/** What a saved job must look like; messages are shown to the maker after the field's name. */
export const jobSchema = z.strictObject({
  format: z.literal("lastwise job"),
  version: z.literal(1, { error: "must be 1" }),
  title: z.string({ error: "must be a text" }).max(200, { error: "must have at most 200 letters" }),
  size: z.string({ error: "must be a text" }).max(40, { error: "must have at most 40 letters" }),
  last: z.discriminatedUnion("from", [
    z.strictObject({ from: z.literal("measures"), measures: z.strictObject(measureShape) }),
    z.strictObject({ from: z.literal("scan"), file: plainName, side: side.optional() }),
  ]),
  lines: z.strictObject(lineShape).partial(),
  springMm: number,
  pieces: z.strictObject(pieceShape).partial(),
  paper: z.enum(["A4", "Letter"], { error: "must be A4 or Letter" }),
});
