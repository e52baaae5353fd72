import { must } from "#base/bug.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { LoftNumbers } from "./loft-numbers.ts";
import { widthsMet } from "./loft-plan.ts";
import type { LastMeasurements } from "./measured.ts";

/** Joint, waist, instep and heel girth, mm. */
export type Girths = readonly [number, number, number, number];
/** What they are met with, in mm of height or standing out: vamp, waist, instep, cone and heel. */
type Moves = readonly number[];

/** How far each move may go before the form looks like no last: our own limits, seen on renderings. */
const low: Moves = [-10, -8, -9, -7];
const high: Moves = [10, 8, 9, 7];

/** Girths of a form, by the shared measuring. */
export type GirthsOf = (numbers: LoftNumbers) => Girths;

export interface GirthFit {
  readonly numbers: LoftNumbers;
  /** Better once more by girths measured more finely. */
  better(measured: Girths): GirthFit;
}

export const askedGirths = (m: LastMeasurements): Girths => [m.jointGirthMm, m.waistGirthMm, m.instepGirthMm, m.heelGirthMm];

/**
 * Newton on four moves with a Jacobian by differences, taken once. Moves are held within their limits; where a limit keeps a girth
 * away from what is asked, the measures contradict each other.
 * @throws Refusal that names the two measures and the range that would fit
 */
export function fitGirths(plan: LoftNumbers, m: LastMeasurements, girthsOf: GirthsOf): GirthFit {
  const asked = askedGirths(m);
  const at = (moves: Moves): Girths => girthsOf(moved(plan, m, moves));
  let moves: Moves = [0, 0, 0, 0];
  let girths = at(moves);
  let slopes = slopesAt(at, moves, girths);
  for (let round = 0; round < 10 && worst(asked, girths) > 0.03; round++) {
    const before = moves;
    moves = stepped(moves, slopes, asked, girths);
    const next = at(moves);
    slopes = broyden(slopes, before, moves, girths, next);
    girths = next;
  }
  if (worst(asked, girths) > 0.3) refuse(moves, slopes, asked, girths, at, m);
  return fitOf(plan, m, moves, slopes, asked);
}

function fitOf(plan: LoftNumbers, m: LastMeasurements, moves: Moves, slopes: readonly Moves[], asked: Girths): GirthFit {
  return { numbers: moved(plan, m, moves), better: (measured) => fitOf(plan, m, stepped(moves, slopes, asked, measured), slopes, asked) };
}

const worst = (a: Girths, b: Girths): number => Math.max(...a.map((v, i) => Math.abs(v - b[i]!)));

/** The form after the moves, its widths met again. */
function moved(plan: LoftNumbers, m: LastMeasurements, [vamp, waist, instep, heel]: Moves): LoftNumbers {
  const [j, , i] = plan.rise;
  const joints = j + vamp! / 47;
  const cone = i + (0.9 * heel!) / 75;
  const now = {
    ...plan,
    rise: [joints, (joints + cone) / 2 + (0.5 * waist!) / 61, cone] as const,
    fullnessMm: [0.7 * waist!, 0.55 * instep! - 0.3 * heel!, heel!] as const,
    shankMm: 0.3 * instep!,
  };
  return widthsMet(now, m);
}

/** Rows: girths; columns: moves. */
function slopesAt(at: (moves: Moves) => Girths, moves: Moves, girths: Girths): number[][] {
  const columns = moves.map((_, k) => at(moves.map((v, i) => (i === k ? v + 1 : v))).map((g, row) => g - girths[row]!));
  return girths.map((_, row) => columns.map((c) => c[row]!));
}

/** One step toward the girths asked for, moves held within their limits; what a held move cannot do the others take over. */
function stepped(moves: Moves, slopes: readonly Moves[], asked: Girths, girths: Girths): Moves {
  const step = solveDense(slopes, asked.map((a, i) => a - girths[i]!));
  return moves.map((v, i) => Math.max(low[i]!, Math.min(high[i]!, v + step[i]!)));
}

/** Broyden's rank-one correction of the slopes by what the step really did (Mathematics of Computation 19, 1965). */
function broyden(slopes: readonly Moves[], from: Moves, to: Moves, before: Girths, after: Girths): number[][] {
  const step = to.map((v, i) => v - from[i]!);
  const long = step.reduce((sum, v) => sum + v * v, 0);
  return slopes.map((row, r) => {
    const missed = after[r]! - before[r]! - row.reduce((sum, v, i) => sum + v * step[i]!, 0);
    return row.map((v, i) => (long > 1e-12 ? v + (missed * step[i]!) / long : v));
  });
}

const names = ["jointGirth", "waistGirth", "instepGirth", "heelGirth"] as const;
/** The measure that sets the bounds of each girth most. */
const partners = ["ballWidth", "jointGirth", "waistGirth", "instepGirth"] as const;

function refuse(moves: Moves, slopes: readonly Moves[], asked: Girths, girths: Girths, at: (moves: Moves) => Girths, m: LastMeasurements): never {
  // The girth that its own move, at its limit, leaves farthest off.
  const off = asked.map((a, i) => (moves[i] === low[i] || moves[i] === high[i] ? Math.abs(a - girths[i]!) : 0));
  const k = off.indexOf(Math.max(...off));
  const ends = [low[k]!, high[k]!].map((end) => reach(k, end, moves, slopes, asked, at));
  const partner = partners[k]!;
  const partnerMm = { ballWidth: m.ballWidthMm, jointGirth: m.jointGirthMm, waistGirth: m.waistGirthMm, instepGirth: m.instepGirthMm }[partner];
  throw new Refusal(
    finding("measures-contradict", { measure: names[k]!, askedMm: asked[k]!, against: partner, againstMm: partnerMm, fromMm: Math.ceil(Math.min(...ends)), toMm: Math.floor(Math.max(...ends)) }),
  );
}

/** Girth k when its own move stands at a limit and the other girths are as asked, as nearly as they can be. */
function reach(k: number, end: number, moves: Moves, slopes: readonly Moves[], asked: Girths, at: (moves: Moves) => Girths): number {
  let now = moves.map((v, i) => (i === k ? end : v));
  let girths = at(now);
  const others = [0, 1, 2, 3].filter((i) => i !== k);
  for (let round = 0; round < 4; round++) {
    const step = solveDense(others.map((r) => others.map((c) => slopes[r]![c]!)), others.map((r) => asked[r]! - girths[r]!));
    now = now.map((v, i) => (i === k ? v : Math.max(low[i]!, Math.min(high[i]!, v + step[others.indexOf(i)]!))));
    girths = at(now);
  }
  return girths[k]!;
}

/** Solves a small square system by elimination with row exchange. */
function solveDense(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]!]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[pivot]![c]!)) pivot = r;
    [a[c], a[pivot]] = [a[pivot]!, a[c]!];
    must(Math.abs(a[c]![c]!) > 1e-9, "girths do not answer to the moves of the form");
    for (let r = c + 1; r < n; r++) {
      const factor = a[r]![c]! / a[c]![c]!;
      for (let k = c; k <= n; k++) a[r]![k] = a[r]![k]! - factor * a[c]![k]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let sum = a[r]![n]!;
    for (let k = r + 1; k < n; k++) sum -= a[r]![k]! * x[k]!;
    x[r] = sum / a[r]![r]!;
  }
  return x;
}
