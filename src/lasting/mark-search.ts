import { tightN } from "./pulls.ts";

/** What a draft took. */
export interface PullTaken {
  readonly number: number;
  /** How hard it was pulled, N. */
  readonly pullN: number;
  /** How far the topline then still stood above the place where it was to stop, mm; left out where it had come down to it. */
  readonly shortMm?: number;
}

interface Asked {
  readonly number: number;
  readonly mostN: number;
  readonly mark?: unknown;
}

/** A mark counts as met from so near, mm; a pencil's line is as broad. */
const nearMm = 0.2;
/** How far a newton draws the topline down, to begin with, mm. */
const usualPerN = 0.2;
/** So many pulls are tried; where none of them met the mark, the hardest that did not go below it is taken. */
const mostTrials = 5;

/**
 * Finds how hard each draft of a stage has to be pulled for the topline to come down to where it is to stop: regula falsi from the state
 * before the draft, each of a pair by its own mark (inner and outer side have heights of their own). The harder the pull the lower the
 * topline; never less than just past tight and never more than the most.
 */
export class MarkSearch {
  readonly #drafts: readonly Asked[];
  readonly #brackets: readonly (Bracket | undefined)[];
  #pullsN: readonly number[];
  #over: readonly (number | undefined)[];
  #trials = 0;

  /** `over`: how far the topline stands above where each draft is to stop before it is pulled, mm; undefined for drafts by feel. */
  constructor(drafts: readonly Asked[], over: readonly (number | undefined)[]) {
    this.#drafts = drafts;
    this.#over = over;
    this.#brackets = drafts.map(({ mostN }, k) => (over[k] === undefined ? undefined : new Bracket(Math.min(tightN, mostN), mostN, over[k])));
    this.#pullsN = drafts.map(({ mostN }, k) => this.#brackets[k]?.first() ?? mostN);
  }

  /** The pulls to be tried now, N. */
  get pullsN(): readonly number[] {
    return this.#pullsN;
  }

  /** Takes in where the topline stands with these pulls, mm above where each is to stop. Whether others are to be tried. */
  goesOn(over: readonly (number | undefined)[]): boolean {
    this.#over = over;
    this.#trials++;
    if (this.#trials > mostTrials) return false;
    const last = this.#trials === mostTrials;
    const next = this.#pullsN.map((pullN, k) => {
      const bracket = this.#brackets[k];
      if (!bracket) return pullN;
      const better = bracket.next(pullN, over[k]!);
      return last && better !== pullN ? bracket.aboveN : better;
    });
    const changed = next.some((pullN, k) => pullN !== this.#pullsN[k]);
    this.#pullsN = next;
    return changed;
  }

  get taken(): readonly PullTaken[] {
    return this.#drafts.map(({ number }, k) => ({ number, pullN: this.#pullsN[k]!, ...((this.#over[k] ?? 0) > nearMm && { shortMm: this.#over[k]! }) }));
  }
}

interface Tried {
  readonly n: number;
  readonly mm: number;
}

/** The hardest pull known to leave the topline above, and the lightest known to draw it below. */
class Bracket {
  readonly #leastN: number;
  readonly #mostN: number;
  #above: Tried | undefined;
  #below: Tried | undefined;

  constructor(leastN: number, mostN: number, beforeMm: number) {
    this.#leastN = leastN;
    this.#mostN = mostN;
    if (beforeMm > nearMm) this.#above = { n: 0, mm: beforeMm };
  }

  first(): number {
    return this.#within(this.#above ? this.#above.mm / usualPerN : 0);
  }

  /** The hardest pull that is known not to go below. */
  get aboveN(): number {
    return this.#within(this.#above?.n ?? 0);
  }

  /** What to try after a pull of `n` that left the topline `mm` above: `n` itself where there is nothing more to try. */
  next(n: number, mm: number): number {
    if (Math.abs(mm) <= nearMm || (mm > 0 && n >= this.#mostN) || (mm < 0 && n <= this.#leastN)) return n;
    const before = this.#above;
    if (mm > 0) this.#above = { n, mm };
    else this.#below = { n, mm };
    if (!this.#above) return this.#leastN;
    if (this.#below) {
      const { n: a, mm: up } = this.#above, { n: b, mm: down } = this.#below, share = Math.min(0.9, Math.max(0.1, up / (up - down)));
      return this.#within(a + share * (b - a));
    }
    // Not yet below: on as the last two pulls tell, at most three times as hard.
    const perN = before && before.n < n ? (before.mm - mm) / (n - before.n) : 0;
    return this.#within(Math.min(3 * n, perN > 0 ? n + (1.1 * mm) / perN : 3 * n));
  }

  #within(n: number): number {
    return Math.min(this.#mostN, Math.max(this.#leastN, n));
  }
}
