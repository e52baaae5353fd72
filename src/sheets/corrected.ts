import type { Difference, Measure } from "#lasting/difference.ts";
import type { Gauges } from "#lasting/gauges.ts";
import { pullRules, type LastingChoices, type PullSettings } from "#lasting/settings.ts";
import type { ToplineShift } from "#lasting/shift.ts";
import type { Leather } from "#leather/leather.ts";
import { rounded } from "./report-number.ts";

/** What the pieces were corrected for and what that changed. */
export interface CorrectedFor {
  readonly upper: Leather;
  readonly lining: Leather;
  readonly lasting: LastingChoices;
  readonly difference: Difference;
}

/** "Corrected for nappa: toe to throat 3.8 mm shorter, …". Says nothing of what was not cut farther out. */
export function correctedWords({ upper, difference: { throatDepthMm, lengthMm, widthMm }, lasting }: CorrectedFor): string {
  const by = (what: string, { before, after }: Measure, [less, more]: readonly [string, string]): string => `${what} ${tenths(Math.abs(after - before))} mm ${after < before ? less : more}`;
  const changed = [by("toe to throat", throatDepthMm, ["shorter", "longer"]), by("whole length", lengthMm, ["shorter", "longer"]), by("width at the joints", widthMm, ["narrower", "wider"])];
  const { throatShiftMm, backShiftMm, innerShiftMm, outerShiftMm } = lasting;
  const shifts = [throatShiftMm, backShiftMm, innerShiftMm, outerShiftMm];
  const out = ["throat", "back", "inner side", "outer side"].map((name, k) => `${name} ${shifts[k]! < 0 ? "less " : ""}${tenths(Math.abs(shifts[k]!))}`);
  return `Corrected for ${upper.name}: ${changed.join(", ")}.${shifts.some((mm) => mm !== 0) ? ` Of that cut farther out again, mm: ${out.join(", ")}.` : ""}`;
}

const tenths = (mm: number): string => mm.toFixed(1);

/** The same for the report, with the leathers and the pulls that it was reckoned with. */
export function correctedReport({ upper, lining, lasting, difference }: CorrectedFor) {
  const { outline: _, ...changed } = difference;
  const { throatShiftMm, backShiftMm, innerShiftMm, outerShiftMm } = lasting;
  const shift: ToplineShift = { throatShiftMm, backShiftMm, innerShiftMm, outerShiftMm };
  const pulls = Object.fromEntries((Object.keys(pullRules) as (keyof PullSettings)[]).filter((key) => !(key in shift)).map((key) => [key, lasting[key]]));
  return {
    leather: { upper: leatherReport(upper), lining: leatherReport(lining) },
    correct: rounded({ ...shift, difference: changed }),
    pulls: { ...pulls, stopAtMarks: lasting.stopAtMarks },
  };
}

const leatherReport = ({ name, known, numbers, spread, thicknessMm, source }: Leather) => rounded({ name, known, numbers, spread, thicknessMm, source });

/**
 * The margins that must show when an upper of the corrected pattern stands at its marks. It is not yet stretched over the feather line where
 * it is cut, so less shows than was added: as much as was foretold. To whole
 * millimetres: no nearer is it foretold. Where nothing was, the plain pattern's margins stay.
 */
export function correctedMargins({ drafts, ...gauges }: Gauges): Gauges {
  return {
    ...gauges,
    drafts: drafts.map((draft) => {
      if (!draft.foretold) return draft;
      const upperMm = Math.max(0, Math.round(draft.foretold.marginMm));
      return { ...draft, upperMm, liningMm: Math.max(0, draft.liningMm + upperMm - draft.upperMm) };
    }),
  };
}

/** What is to be known of the margins of a corrected pattern. */
export const marginWords = ({ drafts }: Gauges): string =>
  drafts.some((d) => d.foretold)
    ? "The pattern is corrected for its leather: the margins to show are those foretold for it, less than was added where the leather is not drawn as far."
    : "The pattern is corrected for its leather, and how much margin then shows was not foretold: these margins are the plain pattern's. Do not pull on to the gauge; stop at the marks.";
