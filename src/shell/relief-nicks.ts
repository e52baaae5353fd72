import type { Watch } from "#base/watch.ts";
import type { SlitLay, SlitTable } from "./relief-lay.ts";
import { lengthStepMm, nickApartMm, nickLimits, type NickPlace } from "./relief-places.ts";

/** A nick that was chosen: the place's number, its length, and the share of the unslit shell's stretch that it takes away. */
export interface ChosenNick {
  readonly place: number;
  /** Steps of the place's line, from the feather edge. */
  readonly count: number;
  readonly lengthMm: number;
  readonly takesAway: number;
}

/** What cuts are chosen by: a value of the lay, falling, and by how much each mm of slit must lower it at least to be worth it. */
export interface Aim {
  readonly valueOf: (lay: SlitLay) => number;
  readonly leastPerMm: number;
}

/** A cut, or a longer one, must take away so much of the unslit shell's stretch for each mm, as a share. */
const leastGainPerMm = 0.0001;
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
 * Chooses nicks one step at a time: of all that may be cut or cut longer, the one that lowers the aim's value most for each mm of slit,
 * until none is worth it. What a cut takes away hardly ever grows by others beside it, so that an old trial bounds a new one and only
 * the best few are laid again each time (Minoux 1978, accelerated greedy; from memory).
 */
export class NickChooser {
  readonly #table: SlitTable;
  readonly #places: readonly NickPlace[];
  readonly #paths: readonly Uint32Array[];
  readonly #watch: Watch;
  readonly #steps: Int32Array;
  readonly #takes: Float64Array;
  readonly #stretch: number;
  #now: SlitLay;
  #lays = 1;
  #taken = 0;

  /** `paths[i]` are the vertices of place i. */
  constructor(table: SlitTable, places: readonly NickPlace[], paths: readonly Uint32Array[], watch: Watch) {
    this.#table = table;
    this.#places = places;
    this.#paths = paths;
    this.#watch = watch;
    this.#steps = new Int32Array(places.length);
    this.#takes = new Float64Array(places.length);
    this.#now = table.lay([]);
    this.#stretch = this.#now.total - 4;
  }

  /** The lay with all that has been chosen. */
  get now(): SlitLay {
    return this.#now;
  }

  get nicks(): readonly ChosenNick[] {
    return this.#places.flatMap((_, place) => {
      const count = this.#steps[place]!;
      return count > 0 ? [{ place, count, lengthMm: count * lengthStepMm, takesAway: this.#takes[place]! }] : [];
    });
  }

  /** Cuts while it takes away enough stretch. */
  byStretch(): void {
    if (this.#stretch > leastStretch) this.towards({ valueOf: ({ total }) => (total - 4) / this.#stretch, leastPerMm: leastGainPerMm });
  }

  /** Cuts while it is worth it, or the aim's value is above 0. Returns whether anything was cut. */
  towards(aim: Aim): boolean {
    const before = this.#taken, moves = movesOf(this.#places);
    for (let best = this.#bestMove(aim, moves); best && best.rate > aim.leastPerMm; best = this.#bestMove(aim, moves)) {
      for (const i of best.places) {
        this.#steps[i]! += this.#more(i);
        if (this.#stretch > 0) this.#takes[i]! += (this.#now.total - best.lay!.total) / this.#stretch / best.places.length;
      }
      this.#now = best.lay!;
      this.#taken++;
    }
    return this.#taken > before;
  }

  #bestMove({ valueOf, leastPerMm }: Aim, moves: readonly Move[]): Move | undefined {
    const value = valueOf(this.#now);
    if (!(value > 0)) return undefined;
    const open = moves.filter((move) => move.places.every((i) => mayCut(i, this.#places, this.#steps, move.places.length)));
    for (;;) {
      let best: Move | undefined;
      for (const move of open) if (!best || move.rate > best.rate) best = move;
      if (!best || best.tried === this.#taken || !(best.rate > leastPerMm)) return best;
      best.lay = this.#table.lay(this.#cutPaths(best.places), this.#now.corners, trialToleranceMm);
      best.rate = (value - valueOf(best.lay)) / best.places.reduce((sum, i) => sum + this.#more(i) * lengthStepMm, 0);
      best.tried = this.#taken;
      this.#lays++;
      this.#watch("nicks", 1 - 1 / (1 + this.#lays / 80));
    }
  }

  /** Steps that a place's next cut adds. */
  #more(i: number): number {
    return this.#steps[i] === 0 ? Math.round(nickLimits[this.#places[i]!.zone].shortestMm / lengthStepMm) : 1;
  }

  /** All that is cut, and beside it what a move would cut. */
  #cutPaths(beside: readonly number[]): Uint32Array[] {
    return this.#paths.flatMap((path, i) => {
      const count = this.#steps[i]! + (beside.includes(i) ? this.#more(i) : 0);
      return count > 0 ? [path.subarray(0, count + 1)] : [];
    });
  }
}

function movesOf(places: readonly NickPlace[]): Move[] {
  return places.flatMap((place, i) => {
    const alone = place.zone !== "toe";
    const facing = alone ? i : places.findIndex((other) => other.zone === "toe" && other.fromToeMm === -place.fromToeMm);
    return facing < i ? [] : [{ places: alone ? [i] : [i, facing], rate: Infinity, tried: -1, lay: undefined }];
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
