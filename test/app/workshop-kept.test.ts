// Her prices outlast whatever happens to the browser's drawer: what cannot be read, a full disk, reads that fail, two tabs at once.
import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { run, runBrought, startHistory, type History } from "#app/state/history.ts";
import { setMaking, setPrice } from "#app/state/making-edits.ts";
import { readWorkshop, writeWorkshop } from "#app/state/workshop-file.ts";
import { Workshop } from "#app/workshop.ts";

/** A drawer as the browser has it: one tab after the other reads and writes in one breath, and either may fail. */
class FakeDrawer {
  text: string | undefined;
  fails: "reading" | "writing" | undefined;
  #last: Promise<void> = Promise.resolve();
  change(how: (text: string | undefined) => string | undefined): Promise<void> {
    const turn = this.#last.then(() => this.#turn(how));
    this.#last = turn.catch(() => undefined);
    return turn;
  }
  async #turn(how: (text: string | undefined) => string | undefined): Promise<void> {
    if (this.fails === "reading") throw new Error("no reading");
    const next = how(this.text);
    await Promise.resolve();
    if (next !== undefined && this.fails === "writing") throw new Error("the disk is full");
    this.text = next ?? this.text;
  }
  get own() {
    return this.text === undefined ? undefined : readWorkshop("kept", this.text).own;
  }
}

/** The desk, as far as a workshop hears of it. */
class FakeDesk {
  now: { readonly history: History; readonly looked: boolean } = { history: startHistory(defaultJob(), "the example last"), looked: true };
  #ear: () => void = () => undefined;
  listen(ear: () => void): void {
    this.#ear = ear;
    ear();
  }
  become(history: History): void {
    this.now = { history, looked: true };
    this.#ear();
  }
  get job(): Job {
    return this.now.history.now.job;
  }
  write(job: Job): void {
    this.become(run(this.now.history, job, "a price"));
  }
}

const price = (job: Job, of: string, is: string): Job => setPrice(job, of, { price: is });

async function bench(drawer: FakeDrawer): Promise<{ readonly workshop: Workshop; readonly desk: FakeDesk }> {
  const workshop = new Workshop(drawer);
  const desk = new FakeDesk();
  await workshop.open();
  workshop.follow(desk);
  return { workshop, desk };
}

describe("what is kept of the workshop", () => {
  test("stays when the work begins anew without the steps before, and the new pair has none of it", async () => {
    const drawer = new FakeDrawer();
    const { workshop, desk } = await bench(drawer);
    desk.write(price(desk.job, "latex", "7"));
    desk.become(startHistory(defaultJob(), "the example last"));
    await workshop.open();
    expect(drawer.own?.prices).toEqual({ latex: { price: "7" } });
    expect(workshop.look().own).toEqual(drawer.own);
  });

  test("is written when a full disk was cleared, with all that was changed meanwhile", async () => {
    const drawer = new FakeDrawer();
    drawer.text = writeWorkshop({ own: { rate: "30" }, former: [] });
    const { workshop, desk } = await bench(drawer);
    drawer.fails = "writing";
    desk.write(price(desk.job, "latex", "7"));
    desk.write(price(desk.job, "thread", "9"));
    await workshop.open();
    expect(drawer.own).toEqual({ rate: "30" });
    expect(workshop.look().own).toEqual({ rate: "30", prices: { latex: { price: "7" }, thread: { price: "9" } } });
    expect(workshop.look().said).toContain("could not keep them");
    drawer.fails = undefined;
    // A later change, or coming back to the page, brings all of it.
    desk.write(setMaking(desk.job, { overhead: "4" }));
    await workshop.open();
    expect(drawer.own).toEqual({ rate: "30", overhead: "4", prices: { latex: { price: "7" }, thread: { price: "9" } } });
    expect(workshop.look().said).toBeUndefined();
  });

  test("is not written over while it cannot be looked up", async () => {
    const drawer = new FakeDrawer();
    drawer.text = writeWorkshop({ own: { rate: "30" }, former: [] });
    drawer.fails = "reading";
    const { workshop, desk } = await bench(drawer);
    expect(workshop.look().said).toContain("could not be looked up");
    desk.write(price(desk.job, "latex", "7"));
    await workshop.open();
    expect(workshop.look().own).toEqual({ prices: { latex: { price: "7" } } });
    expect(drawer.own).toEqual({ rate: "30" });
    drawer.fails = undefined;
    await workshop.open();
    expect(drawer.own).toEqual({ rate: "30", prices: { latex: { price: "7" } } });
    expect(workshop.look()).toMatchObject({ own: drawer.own, said: undefined });
  });

  test("that cannot be read stays until those of a pair are kept in its place, which is always open to her", async () => {
    const drawer = new FakeDrawer();
    drawer.text = "from a newer version";
    const { workshop, desk } = await bench(drawer);
    expect(workshop.look()).toMatchObject({ unreadable: "from a newer version", own: undefined });
    desk.write(price(desk.job, "latex", "7"));
    await workshop.open();
    expect(drawer.text).toBe("from a newer version");
    expect(workshop.look()).toMatchObject({ unreadable: "from a newer version", own: { prices: { latex: { price: "7" } } } });
    await workshop.keep(desk.job);
    expect(drawer.own).toEqual({ prices: { latex: { price: "7" } } });
    expect(workshop.look()).toMatchObject({ unreadable: undefined, said: undefined });
  });

  test("that cannot be read is still spoken of where keeping others failed", async () => {
    const drawer = new FakeDrawer();
    drawer.text = "torn";
    const { workshop, desk } = await bench(drawer);
    drawer.fails = "writing";
    await workshop.keep(price(desk.job, "latex", "7"));
    expect(drawer.text).toBe("torn");
    expect(workshop.look()).toMatchObject({ unreadable: "torn", own: { prices: { latex: { price: "7" } } } });
    drawer.fails = undefined;
    await workshop.open();
    expect(drawer.own).toEqual({ prices: { latex: { price: "7" } } });
    expect(workshop.look().unreadable).toBeUndefined();
  });

  test("takes up what two tabs write at once", async () => {
    const drawer = new FakeDrawer();
    const [one, two] = [await bench(drawer), await bench(drawer)];
    one.desk.write(price(one.desk.job, "latex", "7"));
    two.desk.write(price(two.desk.job, "thread", "9"));
    await Promise.all([one.workshop.open(), two.workshop.open()]);
    expect(drawer.own).toEqual({ prices: { latex: { price: "7" }, thread: { price: "9" } } });
    // The other tab sees it when it is come back to.
    await one.workshop.open();
    expect(one.workshop.look().own).toEqual(drawer.own);
  });

  test("can be had back after a friend's were kept, also after the page was loaded again, and twice over", async () => {
    const drawer = new FakeDrawer();
    const { workshop, desk } = await bench(drawer);
    desk.write(setMaking(price(desk.job, "latex", "7"), { rate: "30" }));
    const hers = workshop.look().own;
    // Her friend says no prices at all.
    desk.become(runBrought(desk.now.history, defaultJob(), "opening a friend’s"));
    await workshop.keep(desk.job);
    expect(drawer.own).toEqual({});
    await workshop.keep(price(defaultJob(), "thread", "9"));
    const later = new Workshop(drawer);
    await later.open();
    expect(later.look().former).toEqual([{}, hers]);
    await later.haveBack();
    await later.haveBack();
    expect(drawer.own).toEqual(hers);
    expect(later.look().former).toEqual([{ prices: { thread: { price: "9" } } }, {}]);
    await later.letGo();
    await later.letGo();
    expect(readWorkshop("kept", drawer.text!)).toEqual({ own: hers, former: [] });
  });
});
