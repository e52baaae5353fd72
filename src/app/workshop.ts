import type { Job } from "#job/job.ts";
import type { Desktop } from "./desktop.ts";
import { Heard } from "./heard.ts";
import { Drawer } from "./keep/drawer.ts";
import type { History } from "./state/history.ts";
import { withWorkshop, workshopOf } from "./state/workshop.ts";
import { nothingKept, type WorkshopKept } from "./state/workshop-file.ts";
import { workshopStep } from "./state/workshop-follow.ts";
import { alongWith, found, haveBack, keepThese, letGo, withOwed, type Found, type Owed } from "./state/workshop-owed.ts";

interface WorkshopNow extends WorkshopKept {
  /** What went wrong with keeping it, where that has to be said. */
  readonly said: string | undefined;
  /** What the browser holds and nobody can read; it stays until others are kept in its place. */
  readonly unreadable: string | undefined;
}

/** With what new work begins beside the maker's usual numbers. */
export interface OwnWorkshop {
  begin(job: Job): Job;
}

/** The desk, as far as its steps go. */
interface Followed {
  listen(ear: () => void): unknown;
  readonly now: Pick<Desktop, "history" | "looked">;
}

const unread = "Your prices could not be looked up: this browser keeps nothing.";
const unkept = "Prices and shelf hold for this pair, but this browser could not keep them for other pairs. It tries again with your next change; until then, save them as tables.";

/** Prices, shelf and hours of the maker's workshop: kept in the browser beside the work, and brought on to every new pair. */
export class Workshop extends Heard<WorkshopNow> implements OwnWorkshop {
  readonly #drawer: Pick<Drawer, "change">;
  #queue: Promise<void> = Promise.resolve();
  /** As the browser was last seen to hold it. */
  #held = nothingKept;
  /** Changes that the browser does not hold yet. */
  #owed: readonly Owed[] = [];
  #seen: History | undefined;

  constructor(drawer: Pick<Drawer, "change"> = new Drawer("workshop")) {
    super({ ...nothingKept, said: undefined, unreadable: undefined });
    this.#drawer = drawer;
  }

  /** Looks into the browser, at first and whenever the page is come back to: another tab may have written, a full disk may have been cleared. */
  open(): Promise<void> {
    return (this.#queue = this.#queue.then(() => this.#settle()));
  }

  begin(job: Job): Job {
    return withWorkshop(job, this.now.own);
  }

  /** Goes along with what the maker writes at any pair. */
  follow(desk: Followed): void {
    desk.listen(() => {
      const { history, looked } = desk.now;
      const before = this.#seen;
      this.#seen = looked ? history : undefined;
      if (!before || before.now === history.now) return;
      const step = workshopStep(before, history);
      if (step) void this.#change(alongWith(step));
    });
  }

  /** Those of this pair become her own. */
  keep(job: Job): Promise<void> {
    return this.#change(keepThese(workshopOf(job)));
  }

  /** What was hers before she kept those of a pair is hers again. */
  haveBack(): Promise<void> {
    return this.#change(haveBack);
  }

  /** What was hers before is not to be offered any more. */
  async letGo(): Promise<void> {
    const [former] = this.now.former;
    if (former) await this.#change(letGo(former));
  }

  /** It holds at once, and in the browser as soon as that can be. */
  #change(change: Owed): Promise<void> {
    this.#owed = [...this.#owed, change];
    this.show(withOwed(this.#held, this.#owed));
    return this.open();
  }

  async #settle(): Promise<void> {
    const owed = this.#owed;
    let here: Found = {};
    try {
      await this.#drawer.change((text) => {
        here = found(text, owed);
        return here.text;
      });
      const { held, unreadable } = here;
      if (held) {
        this.#held = withOwed(held, owed);
        this.#owed = this.#owed.filter((change) => !owed.includes(change));
      }
      const left = held ? undefined : unreadable;
      this.#tell({ unreadable: left?.text, said: left && `${left.why} They are left as they are, and what you write holds for this pair, until you keep others.` });
    } catch {
      if (here.held) this.#held = here.held;
      this.#tell({ said: owed.length > 0 ? unkept : unread, ...(here.unreadable && { unreadable: here.unreadable.text }) });
    }
  }

  #tell(of: Partial<Pick<WorkshopNow, "said" | "unreadable">>): void {
    this.show({ ...withOwed(this.#held, this.#owed), ...of });
  }
}
