// A stand-in for the mechanics in tests of the loop's logic: the upper answers a change of its flat by `gain` of it, a little across from
// end to end, and its throat lies off by more the more its leather gives. Nothing about it is leather; true runs: loop-true.test.ts.
import { leatherFrom } from "#leather/leather-from.ts";
import { askedEnds } from "#lasting/ends.ts";
import type { Lasted } from "#lasting/lasted.ts";
import type { LastingCase, Mechanics } from "#lasting/lasting-case.ts";
import { byName, endNames } from "#lasting/log.ts";
import { lastingFrom } from "#lasting/settings.ts";
import { lowestShares, shiftedTopline, type ToplineShift } from "#lasting/shift.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { cutShell } from "#shell/cut.ts";
import { layFlat } from "#shell/lay-flat.ts";
import type { FlatShell } from "#shell/shell.ts";
import { toplineOf } from "#shell/tension.ts";
import { demoBoard } from "../support/demo-shell.ts";

const { last, board, drawn } = demoBoard();
const laid = (triangles: number): FlatShell => layFlat(cutShell(board, drawn, triangles), 0);

export const standInCase: LastingCase = {
  last, lines: drawn.lines, margins: pieceSettingsFrom(pieceRulesFor(last, "taped"), {}), edge: "taped", settings: lastingFrom(),
  upper: leatherFrom(undefined, "upper", 0.9), lining: leatherFrom(undefined, "lining", 0.8), fine: laid(3000), coarse: laid(900),
};

const shiftNames: readonly (keyof ToplineShift)[] = ["throatShiftMm", "backShiftMm", "innerShiftMm", "outerShiftMm"];
const none: ToplineShift = { throatShiftMm: 0, backShiftMm: 0, innerShiftMm: 0, outerShiftMm: 0 };

/** How far the flat was cut farther out at throat, back and both lowest sides, mm. */
function cutOut(flat: FlatShell, uv: Float64Array): readonly number[] {
  const lowest = lowestShares(standInCase.lines);
  return shiftNames.map((name) => {
    const unit = shiftedTopline(flat.shell, flat.uv, lowest, { ...none, [name]: 1 });
    let at = 0, most = 0;
    for (const half of ["medial", "lateral"] as const) for (const v of toplineOf(flat.shell, half)) {
      const size = Math.hypot(unit[2 * v]! - flat.uv[2 * v]!, unit[2 * v + 1]! - flat.uv[2 * v + 1]!);
      if (size > most + 1e-9) [at, most] = [v, size];
    }
    return [0, 1].reduce((sum, d) => sum + (uv[2 * at + d]! - flat.uv[2 * at + d]!) * (unit[2 * at + d]! - flat.uv[2 * at + d]!), 0) / (most * most);
  });
}

export interface StandIn {
  /** Share of a change of the flat that arrives. */
  readonly gain?: number;
  /** How far the throat comes forward with the usual leather, mm. */
  readonly offMm?: number;
  readonly onPull?: () => void;
}

export function standIn({ gain = 0.75, offMm = 4, onPull = () => {} }: StandIn = {}): Mechanics {
  return {
    propose: (flat) => flat.uv.slice(),
    puller: (flat, { lines }) => ({ upper, lining, settings }, uv, watch) => {
      onPull();
      watch("pull", 0.5);
      const asked = askedEnds(lines), out = cutOut(flat, uv);
      const gives = standInCase.upper.numbers.along / upper.numbers.along + 0.1 * (standInCase.lining!.numbers.along / (lining ?? standInCase.lining!).numbers.along - 1);
      const off = [-offMm * gives + settings.upperTurnDeg / 15, 0.3 * offMm, 0.1 * offMm * gives, -0.2 * offMm];
      const ends = Object.fromEntries(endNames.map((name, k) => [name, byName(asked)[name] + off[k]! + gain * (out[k]! + 0.15 * out[(k + 1) % 4]! + 0.01 * out[k]! ** 2)])) as ReturnType<typeof byName>;
      const source = Uint32Array.from({ length: uv.length / 2 }, (_, v) => v), empty = new Float64Array(0);
      return {
        triangles: flat.shell.mesh.triangles, positions: flat.shell.mesh.positions, source, most: empty, least: empty, along: empty, across: empty, standOff: empty, drafts: [], asked,
        ends: { throatDepthMm: ends.throatDepthMm, backHeightMm: ends.backHeightMm, sideMm: asked.sideMm, lowestMm: { medial: ends.innerHeightMm, lateral: ends.outerHeightMm } },
        troubles: [], frames: [], settled: true, steps: 1, moveMm: 0, residualN: 0, findings: [],
      } satisfies Lasted;
    },
  };
}
