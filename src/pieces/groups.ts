/** One group of results and what it was made from. */
interface Known {
  readonly from: readonly unknown[];
  readonly value: unknown;
}

/**
 * What was made before, by group: a group whose makings are the very same objects, or equal numbers and words, is taken over and not made
 * again. Plain data that is made anew each time counts by what it says (see {@link said}).
 */
export class Groups {
  readonly #before: ReadonlyMap<string, Known>;
  readonly #now = new Map<string, Known>();

  constructor(before?: Groups) {
    this.#before = before ? before.#now : new Map();
  }

  make<T>(name: string, from: readonly unknown[], make: () => T): T {
    const known = this.#before.get(name);
    const same = known?.from.length === from.length && known.from.every((one, k) => one === from[k]);
    const kept = same ? known : { from, value: make() };
    this.#now.set(name, kept);
    return kept.value as T;
  }
}

/** Plain data as words, to be compared by what it says. */
export const said = (data: unknown): string => JSON.stringify(data);
