import type { Rule } from "#lines/lines.ts";
import type { BottomSettings } from "./rules/bottom.ts";
import type { ExtraSettings } from "./rules/extras.ts";
import type { LastingSettings } from "./rules/lasting.ts";
import type { LiningSettings } from "./rules/lining.ts";
import type { SeamSettings } from "./rules/seams.ts";
import type { StiffeningSettings } from "./rules/stiffening.ts";
import type { UpperSettings } from "./rules/upper.ts";

/** Every allowance, thickness and width of the pieces; all mm. */
export interface PieceSettings extends LastingSettings, UpperSettings, SeamSettings, LiningSettings, StiffeningSettings, BottomSettings, ExtraSettings {}
export type PieceRules = { readonly [K in keyof PieceSettings]: Rule };
