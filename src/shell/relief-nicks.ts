import type { Watch } from "#base/watch.ts";
import type { SlitLay, SlitTable } from "./relief-lay.ts";
import { lengthStepMm, nickApartMm, nickLimits, type NickPlace } from "./relief-places.ts";

/** A nick that was chosen: the place's number, its length, and the share of the unslit shell's stretch energy that it takes away. */
export interface ChosenNick {
  readonly place: number;
  /** Steps of the place's line, from the feather edge. */
  readonly count: number;
  readonly lengthMm: number;
  readonly takesAway: number;
}

export interface NickChoice {
  readonly nicks: readonly ChosenNick[];
  readonly before: SlitLay;
  readonly after: SlitLay;
  /** How often the shell was laid. */
  readonly lays: number;
}

/** What cuts are chosen by: a value of the lay, falling, and by how much each mm of slit must lower it at least to be worth it. */
export interface Aim {
  readonly valueOf: (lay: SlitLay) => number;
  readonly leastPerMm: number;
}

/** A cut, or a longer one, must take away so much of the unslit shell's stretch energy for each mm, as a share. */
const leastGainPerMm = 0.0002;
/** Stretch energy over 4 below which nothing is worth a cut: a mean strain of a fifth of a per cent. */
const leastStretch = 2e-5;
/** Trials stop when no vertex moves by more, mm: energies are far nearer by then, since they are flat at rest. */
const trialToleranceMm = 0.05;

/** What may be cut in one step: a place, or at the toe the two that face each other over the centre, which a maker cuts alike. */
interface Move {
  readonly places: readonly number[];
  /** What it lowers the aim's value by for each mm of slit, when last tried, and how many steps had been taken then. */
  rate: number;
  tried: number;
  lay: SlitLay | undefined;
}

/**
 * Chooses nicks one step at a time: of all that may be cut or cut longer, the one that takes away most stretch energy for each mm of
 * slit, until none is worth it; then by the second aim, if one is given. `paths[i]` are the vertices of place i. What a cut takes away
 * hardly ever grows by others beside it, so that an old trial bounds a new one and only the best few are laid again each time (Minoux
 * 1978, accelerated greedy; from memory).
 */
export function chooseNicks(table: SlitTable, places: readonly NickPlace[], paths: readonly Uint32Array[], second: Aim | undefined, watch: Watch): NickChoice {
  const before = table.lay([]);
  const stretch = before.total - 4;
  if (stretch < leastStretch) return { nicks: [], before, after: before, lays: 1 };
  const steps = new Int32Array(places.length);
  const takes = new Float64Array(places.length);
  let now = before, lays = 1, taken = 0;
  const more = (i: number): number => (steps[i] === 0 ? Math.round(nickLimits[places[i]!.zone].shortestMm / lengthStepMm) : 1);
  const lengthOf = ({ places: cut }: Move): number => cut.reduce((sum, i) => sum + more(i) * lengthStepMm, 0);
  const first: Aim = { valueOf: ({ total }) => (total - 4) / stretch, leastPerMm: leastGainPerMm };
  for (const aim of second ? [first, second] : [first]) {
    const moves = movesOf(places);
    for (let best = bestMove(aim, moves); best && best.rate > aim.leastPerMm; best = bestMove(aim, moves)) {
      for (const i of best.places) {
        steps[i]! += more(i);
        takes[i]! += (now.total - best.lay!.total) / stretch / best.places.length;
      }
      now = best.lay!;
      taken++;
    }
  }
  const nicks = places.flatMap((_, place) => (steps[place]! > 0 ? [{ place, count: steps[place]!, lengthMm: steps[place]! * lengthStepMm, takesAway: takes[place]! }] : []));
  return { nicks, before, after: table.lay(cutPaths([]), now.corners), lays };

  /** All that is cut, and beside it what a move would cut. */
  function cutPaths(beside: readonly number[]): Uint32Array[] {
    return paths.flatMap((path, i) => {
      const count = steps[i]! + (beside.includes(i) ? more(i) : 0);
      return count > 0 ? [path.subarray(0, count + 1)] : [];
    });
  }

  function bestMove({ valueOf, leastPerMm }: Aim, moves: readonly Move[]): Move | undefined {
    const open = moves.filter((move) => move.places.every((i) => mayCut(i, places, steps, move.places.length)));
    const value = valueOf(now);
    if (!(value > 0)) return undefined;
    for (;;) {
      let best: Move | undefined;
      for (const move of open) if (!best || move.rate > best.rate) best = move;
      if (!best || best.tried === taken || !(best.rate > leastPerMm)) return best;
      best.lay = table.lay(cutPaths(best.places), now.corners, trialToleranceMm);
      best.rate = (value - valueOf(best.lay)) / lengthOf(best);
      best.tried = taken;
      lays++;
      watch("nicks", 1 - 1 / (1 + lays / 80));
    }
  }
}

function movesOf(places: readonly NickPlace[]): Move[] {
  return places.flatMap((place, i) => {
    const facing = place.zone === "toe" ? places.findIndex((other) => other.zone === "toe" && other.fromToeMm === -place.fromToeMm) : -1;
    return facing >= 0 && facing < i ? [] : [{ places: facing < 0 ? [i] : [i, facing], rate: Infinity, tried: -1, lay: undefined }];
  });
}

/** Whether a place may be cut, or cut longer, within what a hand allows; `together` places are cut at once. */
function mayCut(i: number, places: readonly NickPlace[], steps: Int32Array, together: number): boolean {
  const place = places[i]!;
  if (steps[i]! > 0) return steps[i]! < place.inner.length / 2;
  const { most } = nickLimits[place.zone];
  let same = 0;
  for (let j = 0; j < places.length; j++) {
    const other = places[j]!;
    if (steps[j] === 0) continue;
    if (Math.abs(other.fromToeMm - place.fromToeMm) < nickApartMm) return false;
    if (other.zone === place.zone && (place.zone === "toe" || other.half === place.half)) same++;
  }
  return same + together <= most;
}
