/** Something that changes beside the page and tells it: what it is now, and who listens, as React's useSyncExternalStore asks for it. */
export abstract class Heard<T extends object> {
  /** Set it without a word only where {@link show} follows. */
  protected now: T;
  readonly #ears = new Set<() => void>();

  constructor(first: T) {
    this.now = first;
  }

  readonly listen = (ear: () => void): (() => void) => {
    this.#ears.add(ear);
    return () => this.#ears.delete(ear);
  };
  readonly look = (): T => this.now;

  protected show(part: Partial<T>): void {
    this.now = { ...this.now, ...part };
    for (const ear of this.#ears) ear();
  }
}
