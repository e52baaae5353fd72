import type { Half } from "#lines/feather.ts";
import type { LineSettings, Rule } from "#lines/lines.ts";
import { mostStandOffMm, throatFrom } from "./check-rows.ts";
import type { CheckInput } from "./check-input.ts";
import { heelGap, nearGapMm } from "./lay-flat.ts";
import type { ShellNumbers } from "./settings.ts";

/**
 * Why a card stands off: its topline is longer than its way and lies slack; it is slack though the topline is as short as is usual; it
 * is taut and spans a hollow of the waist, or the hollow of the instep at the throat.
 */
export type GapeWhy = "topline-slack" | "heel-slack" | "waist-hollow" | "instep-hollow";

/** A change of one of the maker's own settings that brings the card nearer; shares for the topline, else mm. */
export interface GapeChange {
  readonly setting: keyof (Pick<LineSettings, "sideHeightMedialMm" | "sideHeightLateralMm" | "throatDepthMm"> & Pick<ShellNumbers, "toplineShorter" | "springMm">);
  readonly by: number;
}

/** Why, and what helps; no change where every number that would help is at the end of what is usual. */
export interface Remedy {
  readonly why: GapeWhy;
  readonly change?: GapeChange;
}

/** A run of topline that stands off, as far as its remedy hangs on it. */
export interface Seen {
  readonly half: Half;
  readonly share: number;
  readonly standOffMm: number;
  readonly taut: boolean;
  /** By how much its way over the card is longer than that of its feet, as a share of the half. */
  readonly excessShare: number;
}

/** Steps in which settings are proposed, and the most at once. */
const toplineStep = 0.001, mmStep = 0.5, springMm = 4, throatMm = 5, mostSideMm = 3;
/** Millimetres a side is raised for each that the topline stands off too far over a hollow: measured on three lasts, where 5 mm brought 0.4 to 0.9 mm. */
const sidePerMm = 5;
/** A throat lies at least so far ahead of the vamp point (common practice, no source: 5 to 20 mm, never behind it). */
const aheadOfVampMm = 5;

/** The change that helps most, as far as the rules leave room for it. */
export function remedyFor(seen: Seen, input: CheckInput): Remedy {
  if (seen.share > throatFrom) return remedy("instep-hollow", throatChange(input));
  return seen.taut ? remedy("waist-hollow", tautChange(seen, input)) : slackRemedy(seen, input);
}

const remedy = (why: GapeWhy, change: GapeChange | undefined): Remedy => ({ why, ...(change && { change }) });

function throatChange({ last, asked, rules }: CheckInput): GapeChange | undefined {
  const max = Math.min(rules.lines.throatDepthMm.max, last.measures.vampPointFromToe - aheadOfVampMm);
  return within("throatDepthMm", throatMm, asked.lines.throatDepthMm, { ...rules.lines.throatDepthMm, max });
}

function slackRemedy({ excessShare }: Seen, { asked: { shell }, rules, coarse }: CheckInput): Remedy {
  const shorter = within("toplineShorter", inSteps(excessShare), shell.toplineShorter, rules.shell.toplineShorter);
  if (shorter) return remedy("topline-slack", shorter);
  const max = Math.min(rules.shell.springMm.max, shell.springMm + heelGap(coarse) - nearGapMm);
  return remedy("heel-slack", within("springMm", springMm, shell.springMm, { ...rules.shell.springMm, max }));
}

/** A topline that is drawn too tight is eased if that is enough; else the side is raised out of the hollow, and only then is it eased in part. */
function tautChange({ half, standOffMm, excessShare }: Seen, { asked, rules }: CheckInput): GapeChange | undefined {
  const easing = inSteps(-excessShare);
  const eased = within("toplineShorter", -easing, asked.shell.toplineShorter, rules.shell.toplineShorter);
  if (eased && -eased.by >= easing) return eased;
  const side = half === "medial" ? "sideHeightMedialMm" : "sideHeightLateralMm";
  return within(side, Math.min(mostSideMm, Math.ceil(sidePerMm * (standOffMm - mostStandOffMm))), asked.lines[side], rules.lines[side]) ?? eased;
}

const inSteps = (share: number): number => toplineStep * Math.max(1, Math.ceil(share / toplineStep));

/** A change by what is wanted, or by what is left of it in whole steps; none where nothing is left. */
function within(setting: GapeChange["setting"], wanted: number, value: number, { min, max }: Pick<Rule, "min" | "max">): GapeChange | undefined {
  const step = setting === "toplineShorter" ? toplineStep : mmStep;
  const left = wanted > 0 ? max - value : value - min;
  const by = Math.min(Math.abs(wanted), step * Math.floor(left / step + 1e-6));
  return by > 0 ? { setting, by: wanted > 0 ? by : -by } : undefined;
}
