import { Refusal } from "#base/refusal.ts";
import type { Job } from "#job/job.ts";
import type { Desktop } from "./desktop.ts";
import { Heard } from "./heard.ts";
import { Drawer } from "./keep/drawer.ts";
import type { History } from "./state/history.ts";
import { tell } from "./state/spots.ts";
import { followed, readWorkshop, withWorkshop, workshopOf, workshopStep, writeWorkshop, type WorkshopSaid } from "./state/workshop.ts";

export interface WorkshopNow {
  /** Nothing where the maker has said nothing yet. */
  readonly own: WorkshopSaid | undefined;
  /** What went wrong with keeping it, where that has to be said. */
  readonly said: string | undefined;
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

type Change = NonNullable<ReturnType<typeof workshopStep>>;

/** Prices, shelf and hours of the maker's workshop: kept in the browser beside the work, and brought on to every new pair. */
export class Workshop extends Heard<WorkshopNow> implements OwnWorkshop {
  readonly #drawer = new Drawer("workshop");
  #queue: Promise<void> = Promise.resolve();
  /** Changes that no write has taken up yet. */
  #ahead: Change[] = [];
  #seen: History | undefined;

  constructor() {
    super({ own: undefined, said: undefined });
  }

  open(): Promise<void> {
    return this.#next(async () => {
      try {
        this.show({ own: await this.#held() });
      } catch (error) {
        this.show({ said: error instanceof Refusal ? `${tell(error.finding)} They are left as they are until you keep others.` : "Your prices could not be looked up: this browser keeps nothing." });
      }
    });
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
      if (step) this.#change(step);
    });
  }

  /** Those of this pair become her own. */
  keep(job: Job): Promise<void> {
    const own = workshopOf(job);
    this.show({ own });
    return this.#next(() => this.#write(own));
  }

  #change(step: Change): void {
    this.show({ own: followed(this.now.own, step.before, step.after) });
    this.#ahead.push(step);
    void this.#next(async () => {
      const steps = this.#ahead;
      if (steps.length === 0) return;
      this.#ahead = [];
      // Another tab may have written meanwhile; what it wrote elsewhere stays, and what cannot be read there is not written over.
      let held = this.now.own;
      try {
        held = await this.#held();
      } catch (error) {
        if (error instanceof Refusal) return this.show({ said: `${tell(error.finding)} It is left as it is; save prices and shelf as tables.` });
      }
      const own = steps.reduce((mine: WorkshopSaid | undefined, s) => followed(mine, s.before, s.after), held) ?? {};
      this.show({ own });
      await this.#write(own);
    });
  }

  #next(how: () => Promise<void>): Promise<void> {
    return (this.#queue = this.#queue.then(how));
  }

  async #write(own: WorkshopSaid): Promise<void> {
    await this.#drawer.write(writeWorkshop(own)).then(
      () => this.show({ said: undefined }),
      () => this.show({ said: "Prices and shelf hold for this pair, but this browser keeps nothing. Save them as tables." }),
    );
  }

  async #held(): Promise<WorkshopSaid | undefined> {
    const text = await this.#drawer.read();
    return text === undefined ? undefined : readWorkshop("what this browser keeps of your prices and shelf", text);
  }
}
