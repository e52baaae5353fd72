import type { Files } from "#job/files.ts";
import type { Saved } from "../desktop.ts";
import type { History } from "../state/history.ts";
import { ElsewhereChanged, Keep } from "./keep.ts";

/** Keeps the newest state of the work in the browser; while one write runs, further changes are gathered into the next. */
export class Writer {
  readonly #keep = new Keep();
  readonly #files: Files;
  readonly #worthKeeping: () => History | undefined;
  readonly #tell: (saved: Saved) => void;
  #writing: Promise<void> = Promise.resolve();
  #ahead = 0;

  /** @param worthKeeping what is to be kept now; nothing while the newest change is still being tried, or is refused */
  constructor(files: Files, worthKeeping: () => History | undefined, tell: (saved: Saved) => void) {
    this.#files = files;
    this.#worthKeeping = worthKeeping;
    this.#tell = tell;
  }

  read(): ReturnType<Keep["read"]> {
    return this.#keep.read();
  }

  write(): void {
    // Of work that is refused nothing is kept until it is put right.
    if (!this.#worthKeeping()) return;
    this.#tell("saving");
    this.#ahead++;
    this.#writing = this.#writing.then(async () => {
      if (--this.#ahead > 0) return;
      try {
        const history = this.#worthKeeping();
        // Meanwhile a change may have come that is still being tried; it writes for itself.
        if (!history) return;
        await this.#keep.write(history, this.#files);
        if (this.#ahead === 0 && this.#worthKeeping()) this.#tell("saved");
      } catch (error) {
        this.#tell(error instanceof ElsewhereChanged ? "elsewhere" : "not saved");
      }
    });
  }
}
