import type { Side } from "#last/last.ts";
import type { LastMeasurements } from "#last/measured.ts";
import type { LandmarkName, MeasureName } from "#last/said.ts";
import type { PullSettings } from "#lasting/settings.ts";
import type { StripReading, UpperLayer } from "#leather/leather.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { GoodId } from "#making/goods.ts";
import type { Phase } from "#making/steps/step.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { ShellNumbers } from "#shell/settings.ts";
import type { TapeMark } from "#tape/said.ts";
import type { ShoeMeasure } from "./log-edits.ts";

export type SheetNumber = "rollWidthMm" | "barAcrossMm" | "barUpMm";
export type MeasureKey = Exclude<keyof LastMeasurements, "side" | "toe">;
/** A number of a strip that was pulled: the strip's own, or one of a reading of it; layer, strip and reading counted from 0. */
export type StripSpot = `strip ${UpperLayer} ${number} ${"widthMm" | "gaugeMm"}` | `strip ${UpperLayer} ${number} ${number} ${keyof StripReading}`;
/** A measure of a shoe in the log, by number of the pair. */
export type ShoeSpot = `shoe ${number} ${Side} ${ShoeMeasure}`;
/** What the maker wrote about making and money: one text for the whole, for one thing that is bought, or for one stretch of the work. */
export type MakingSpot = `making ${"pairs" | "lasts" | "cement" | "currency" | "rate" | "overhead" | "asked" | "start" | "sessions"}` | `making ${"prices" | "for" | "shelf" | "skins"} ${GoodId}` | `making minutes ${Phase}`;
/** A number of the job, by the part it stands in: where a finding belongs, and which field a refusal speaks of. */
export type Spot = `last ${MeasureKey}` | `lines ${keyof LineSettings}` | `pieces ${keyof PieceSettings}` | `parts ${keyof PartChoices}` | `shell ${keyof ShellNumbers}` | `lasting ${keyof PullSettings}` | `leather ${UpperLayer}` | StripSpot | ShoeSpot | MakingSpot | `sheets ${SheetNumber}` | "card bar" | `scan ${MeasureName | "unit" | "side" | "feather" | "other"}` | `point ${LandmarkName}` | `mark ${TapeMark}`;
