import type { Strip } from "#leather/leather.ts";

/** Names for strips that stay with them while they are edited, others are taken out and steps are undone; for what belongs to one strip alone. */
export class StripIds {
  readonly #known = new WeakMap<Strip, string>();
  #before: readonly Strip[] = [];
  #given = 0;

  /** One name for each; a strip that alone is another object than before, at its place, is the same one edited. */
  of(strips: readonly Strip[]): readonly string[] {
    const before = this.#before;
    const edited = strips.length === before.length && strips.filter((s, i) => s !== before[i]).length === 1;
    const names = strips.map((strip, i) => {
      const former = edited ? this.#known.get(before[i]!) : undefined;
      const name = this.#known.get(strip) ?? former ?? `strip ${++this.#given}`;
      this.#known.set(strip, name);
      return name;
    });
    this.#before = strips;
    return names;
  }
}
