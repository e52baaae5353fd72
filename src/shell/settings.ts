import type { Rule } from "#lines/lines.ts";

/** What the upper is cut from, as far as it decides how much its topline may be shortened. */
export const leathers = ["kid", "firm", "soft"] as const;
export type Leather = (typeof leathers)[number];

/**
 * How the topline's edge is made: folded over a tape that does not stretch, folded alone, or cut raw; bound with a strip sewn on grain to
 * grain and turned to the inside ("bound") or wrapped round the edge and seen on both sides ("wrapped"); or sewn to the lining grain
 * to grain and turned out like a bag ("bagged").
 */
export const toplineEdges = ["taped", "folded", "raw", "bound", "wrapped", "bagged"] as const;
export type ToplineEdge = (typeof toplineEdges)[number];

/** Whether inner and outer half keep shapes of their own or share their mean. */
export const halvesChoices = ["separate", "mean"] as const;
export type HalvesChoice = (typeof halvesChoices)[number];

/**
 * What the maker decides about the upper between last and flat card; mm but where said. Thicknesses of upper, lining and toe puff
 * belong to the pieces' settings.
 */
export interface ShellSettings {
  readonly leather: Leather;
  readonly edge: ToplineEdge;
  readonly halves: HalvesChoice;
  /** How far the heel ends are swung together at the topline from where they lie of themselves; below 0 apart. */
  readonly springMm: number;
  /** How much shorter the topline is on the card than on the last, as a share: 0.02 is 2 %. */
  readonly toplineShorter: number;
  /** Thickness of the heel stiffener. */
  readonly counterMm: number;
  /** How far its upper edge lies below the topline. */
  readonly counterBelowMm: number;
  /** How far its wings reach from the seat point along the feather line. */
  readonly counterInnerMm: number;
  readonly counterOuterMm: number;
  /** How far the toe puff reaches back from the toe point along the centre line. */
  readonly puffReachMm: number;
  /** Width over which stiffener and puff are skived to nothing, inside the upper and along the feather line. */
  readonly skiveMm: number;
  readonly skiveFeatherMm: number;
}

/** The settings that are chosen by word; all others are numbers with a rule. */
export type ShellChoices = Pick<ShellSettings, "leather" | "edge" | "halves">;
export type ShellNumbers = Omit<ShellSettings, keyof ShellChoices>;
export type ShellRules = { readonly [K in keyof ShellNumbers]: Rule };
