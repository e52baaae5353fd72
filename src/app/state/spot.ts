import type { LastMeasurements } from "#last/measured.ts";
import type { LandmarkName, MeasureName } from "#last/said.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { ShellNumbers } from "#shell/settings.ts";
import type { TapeMark } from "#tape/said.ts";

export type SheetNumber = "rollWidthMm" | "barAcrossMm" | "barUpMm";
export type MeasureKey = Exclude<keyof LastMeasurements, "side" | "toe">;
/** A number of the job, by the part it stands in: where a finding belongs, and which field a refusal speaks of. */
export type Spot = `last ${MeasureKey}` | `lines ${keyof LineSettings}` | `pieces ${keyof PieceSettings}` | `parts ${keyof PartChoices}` | `shell ${keyof ShellNumbers}` | `sheets ${SheetNumber}` | "card bar" | `scan ${MeasureName | "unit" | "side" | "feather" | "other"}` | `point ${LandmarkName}` | `mark ${TapeMark}`;
