import { finding, type Finding } from "#base/findings.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import { drawLeather } from "#leather/band-draw.ts";
import type { Leather } from "#leather/leather.ts";
import { givingMore } from "#leather/toe-law.ts";
import type { Banded, BandedEnds, Lasted } from "./lasted.ts";
import { makingOf, type LastingCase, type Making, type Mechanics } from "./lasting-case.ts";
import { byName, endNames, type EndName, type EndsByName } from "./log.ts";
import type { Target } from "./compensate.ts";
import { trueMechanics } from "./mechanics.ts";
import { SheetMoves } from "./sheet-moves.ts";

/** A pattern that is to be cut, x0 y0 … mm of the fine shell, how it lay when it was pulled over, and what was asked of it. */
export interface Pattern {
  readonly uv: Float64Array;
  readonly lasted: Pick<Lasted, "ends" | "asked">;
  readonly target?: Target;
}

export interface BandOptions {
  readonly draws?: number;
  readonly seed?: number;
  readonly watch?: Watch;
  readonly mechanics?: Mechanics;
}

export interface Banding {
  readonly banded: BandedEnds;
  /** Each drawn leather's ends, and those of the leather in the middle, all on the coarse sheet, mm. */
  readonly draws: readonly EndsByName[];
  readonly centre: EndsByName;
  /** Draws that did not come to rest; they are left out of the band where at least half of all did. */
  readonly unsettled: number;
  readonly findings: readonly Finding[];
  /** How the ends move for an upper that gives a tenth more, mm. */
  readonly perTenth: EndsByName;
}

const usualDraws = 30;

/** A pattern pulled over on the coarse sheet, with whatever making. */
export function coarseTrial(of: LastingCase, { uv }: Pick<Pattern, "uv">, mechanics: Mechanics): (making: Making, watch?: Watch) => Lasted {
  const moved = new SheetMoves(of.fine.shell.mesh.triangles, of.fine.uv, uv).moved(of.coarse.uv);
  const pull = mechanics.puller(of.coarse, of, true);
  return (making, watch = unwatched) => pull(makingOf(making), moved, watch);
}

/**
 * Where the ends lie for 80 of 100 leathers like this one: leathers are drawn from what is not known about upper and lining, each is pulled
 * over on a coarse sheet, and by how much its ends lie off those of the leather in the middle is put upon the fine prediction. Draw k is
 * the same whatever else is drawn.
 */
export function bandOf(of: LastingCase, pattern: Pattern, { draws = usualDraws, seed = 1, watch = unwatched, mechanics = trueMechanics }: BandOptions = {}): Banding {
  const trial = coarseTrial(of, pattern, mechanics), drawn: Lasted[] = [];
  let done = 0;
  const run = (making: Making): Lasted => {
    const lasted = trial(making, (stage, fraction) => watch(stage, (done + fraction) / (draws + 2)));
    done++;
    return lasted;
  };
  const { centre, perTenth } = tenthMore(of, run);
  for (let k = 0; k < draws; k++) drawn.push(run(drawnMaking(of, seed, k)));
  watch("band", 1);
  // Without most of its draws a band would only be narrow because they are missing.
  const settled = drawn.filter((lasted) => lasted.settled), unsettled = draws - settled.length, rough = 2 * settled.length < draws;
  const all = (rough ? drawn : settled).map(({ ends }) => byName(ends));
  const predicted = byName(pattern.lasted.ends), asked = { ...byName(pattern.lasted.asked), ...pattern.target };
  const banded = Object.fromEntries(endNames.map((name): [EndName, Banded] => {
    const off = all.map((ends) => ends[name] - centre[name]).sort((a, b) => a - b);
    return [name, { target: asked[name], predicted: predicted[name], low: predicted[name] + quantile(off, 0.1), high: predicted[name] + quantile(off, 0.9) }];
  }));
  const findings = unsettled > 0 ? [finding("band-restless", { unsettled, draws, rough })] : [];
  return { banded: banded as unknown as BandedEnds, draws: all, centre, unsettled, findings, perTenth };
}

/** The ends of the leather in the middle, and how they move for an upper that gives a tenth more, mm: two pull-overs. */
export function tenthMore(of: LastingCase, run: (making: Making) => Lasted): Pick<Banding, "centre" | "perTenth"> {
  const centre = byName(run(of).ends);
  const more = byName(run({ ...of, upper: { ...of.upper, numbers: givingMore(of.upper.numbers, 1.1) } }).ends);
  return { centre, perTenth: Object.fromEntries(endNames.map((name) => [name, more[name] - centre[name]])) as EndsByName };
}

/** Upper and lining are drawn apart: they come from two skins. */
function drawnMaking({ upper, lining, edge, settings }: Making, seed: number, k: number): Making {
  const drawn = (leather: Leather, of: number): Leather => ({ ...leather, numbers: drawLeather(leather, of, k) });
  return { upper: drawn(upper, seed), ...(lining && { lining: drawn(lining, seed + 1000003) }), edge, settings };
}

/** The value below which a share of the sorted ones lies, between two of them in proportion (Hyndman and Fan's seventh way). 0 of none. */
export function quantile(sorted: readonly number[], share: number): number {
  if (sorted.length === 0) return 0;
  const at = share * (sorted.length - 1), k = Math.floor(at), next = sorted[Math.min(k + 1, sorted.length - 1)]!;
  return sorted[k]! + (at - k) * (next - sorted[k]!);
}
