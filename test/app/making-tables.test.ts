// A table that is read says how much it held, thing by thing, and of which work it speaks.
import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { makingTables } from "#app/making-tables.ts";
import { ofThisPair } from "#app/state/of-this-pair.ts";
import { run, startHistory, undo, type History } from "#app/state/history.ts";

class FakeDesk {
  history: History = startHistory(defaultJob(), "the example last");
  get job(): Job {
    return this.history.now.job;
  }
  change(job: Job, what: string): void {
    this.history = run(this.history, job, what);
  }
  get stands(): boolean {
    return ofThisPair(this.history).some(({ job }) => job === makingTables.look().of);
  }
}

describe("a table of prices or of the shelf", () => {
  test("is told by prices and sizes apart, and joins what stood there", () => {
    const desk = new FakeDesk();
    makingTables.take(desk, "prices.csv", "what,price,for,size\nupper leather,9.50,1 ft2,6 ft2\nthread,9,1000 m,\n");
    expect(makingTables.look().said).toBe("Read from prices.csv: 2 prices and the size of one thing.");
    makingTables.take(desk, "latex.csv", "what,price,for\nlatex,7,1 kg\n");
    expect(makingTables.look().said).toBe("Read from latex.csv: one price.");
    expect(Object.keys(desk.job.making.prices!)).toEqual(["upper leather", "thread", "latex"]);
    makingTables.take(desk, "shelf.csv", "what,amount\nlatex,1 kg\nthread,300 m\n");
    expect(makingTables.look().said).toBe("Read from shelf.csv: 2 things on the shelf.");
  });

  test("is no longer spoken of when it is taken back, and is while other things are written", () => {
    const desk = new FakeDesk();
    makingTables.take(desk, "prices.csv", "what,price,for\nlatex,7,1 kg\n");
    expect(desk.stands).toBe(true);
    desk.change({ ...desk.job, title: "Anna’s" }, "the name");
    expect(desk.stands).toBe(true);
    desk.history = undo(undo(desk.history));
    expect(desk.stands).toBe(false);
  });

  test("of which nothing can be taken changes nothing, and says so", () => {
    const desk = new FakeDesk();
    const { job } = desk;
    makingTables.take(desk, "prices.csv", "what,price,for\nunicorn hide,7,1 kg\n");
    expect(desk.job).toBe(job);
    expect(makingTables.look()).toMatchObject({ said: "Nothing was taken from prices.csv.", of: job });
    expect(makingTables.look().findings).toHaveLength(1);
    expect(desk.stands).toBe(true);
  });
});
