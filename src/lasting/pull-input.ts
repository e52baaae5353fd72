import type { Last } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { LastingSettings } from "#pieces/rules/lasting.ts";
import type { LastingChoices } from "./settings.ts";
import type { CutUpper, Fabric } from "./upper.ts";

/** What is pulled over, on what, and how. */
export interface PullInput {
  readonly cut: CutUpper;
  readonly last: Last;
  readonly lines: Lines;
  readonly fabric: Fabric;
  readonly settings: LastingChoices;
  /** The lasting margin that is cut, by zone. */
  readonly margins: LastingSettings;
}
