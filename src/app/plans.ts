import type { Pair } from "#job/pair.ts";
import { Heard } from "./heard.ts";
import { pagePlan, type PagePlan } from "./state/page-plan.ts";
import { sameButMaking } from "./state/same-but-making.ts";

type Planned = Parameters<typeof pagePlan>[0];
export interface ToPlanner {
  readonly id: number;
  readonly pair: Planned;
}
export interface FromPlanner {
  readonly id: number;
  readonly plan: PagePlan;
}

/** The newest plan of pages, and whether that of a newer pair is being worked out. */
export interface PlanNow {
  readonly pair: Pair | undefined;
  readonly plan: PagePlan | undefined;
  readonly busy: boolean;
}

/** Plans of pages, worked out beside the page: one at a time, the newest pair next. */
export class Plans extends Heard<PlanNow> {
  #worker: Worker | undefined;
  #running: { readonly id: number; readonly pair: Pair } | undefined;
  #wanted: Pair | undefined;
  #count = 0;

  constructor() {
    super({ pair: undefined, plan: undefined, busy: false });
  }

  ask(pair: Pair): void {
    if (pair === this.now.pair || pair === this.#running?.pair) {
      this.#wanted = undefined;
      return;
    }
    // A price moves no page.
    if (!this.#running && this.now.pair?.pieces === pair.pieces && sameButMaking(pair.job, this.now.pair.job)) return this.show({ pair });
    this.#wanted = pair;
    if (!this.#running) this.#start();
  }

  #start(): void {
    const pair = this.#wanted;
    if (!pair) return this.show({ busy: false });
    this.#wanted = undefined;
    const id = ++this.#count;
    this.#running = { id, pair };
    this.show({ busy: true });
    this.#spawned().postMessage({ id, pair: askedOf(pair) } satisfies ToPlanner);
  }

  #spawned(): Worker {
    if (this.#worker) return this.#worker;
    const worker = new Worker(new URL("./plan-worker.ts", import.meta.url), { type: "module", name: "plans" });
    worker.addEventListener("message", ({ data }: MessageEvent<FromPlanner>) => this.#done(data.id, data.plan));
    // It is only beside the page for quickness: where it breaks, the plan is made here.
    worker.addEventListener("error", () => {
      const running = this.#running;
      this.#worker = undefined;
      worker.terminate();
      if (running) this.#done(running.id, pagePlan(running.pair));
    });
    return (this.#worker = worker);
  }

  #done(id: number, plan: PagePlan): void {
    if (this.#running?.id !== id) return;
    const { pair } = this.#running;
    this.#running = undefined;
    this.show({ pair, plan });
    this.#start();
  }
}

/** What a plan depends on, and nothing heavier than that. */
function askedOf(pair: Pair): Planned {
  if (pair.from === "tape") return { ...pair, traced: [] };
  const { from, pieces, strips, job, labels, last, lines } = pair;
  return { from, pieces, strips, job, labels, last, lines };
}
