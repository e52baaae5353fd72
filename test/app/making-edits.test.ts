// What is written at the station Making becomes the job's, and leaves no empty words behind.
import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import { setMaking, setMakingAt, setPrice } from "#app/state/making-edits.ts";
import { isExample } from "#app/state/edits.ts";

describe("edits of making", () => {
  test("texts stay just as they are typed, and what is emptied is no longer said", () => {
    const job = setMaking(setMakingAt(setPrice(defaultJob(), "thread", { price: "9,00 €", for: "1000 m" }), "shelf", "upper leather", "1/2 m2"), { pairs: "2", rate: "-3" });
    expect(job.making).toEqual({ pairs: "2", rate: "-3", prices: { thread: { price: "9,00 €", for: "1000 m" } }, shelf: { "upper leather": "1/2 m2" } });
    expect(checkedJob("the job", job)).toEqual(job);
    const emptied = setMaking(setMakingAt(setPrice(setPrice(job, "thread", { price: "" }), "thread", { for: "" }), "shelf", "upper leather", ""), { pairs: undefined, rate: undefined });
    expect(emptied.making).toEqual({});
    expect(isExample(emptied)).toBe(true);
  });

  test("an amount written before its price is kept, and other prices stay", () => {
    const job = setPrice(setPrice(defaultJob(), "paste", { for: "1 kg" }), "latex", { price: "7" });
    expect(job.making.prices).toEqual({ paste: { price: "", for: "1 kg" }, latex: { price: "7" } });
    expect(setPrice(job, "latex", { price: "" }).making.prices).toEqual({ paste: { price: "", for: "1 kg" } });
  });

  test("leave the job that they were made from alone", () => {
    const before = setMakingAt(defaultJob(), "minutes", "closing", "200");
    const frozen = JSON.stringify(before);
    setMakingAt(before, "minutes", "closing", "");
    setPrice(before, "thread", { price: "1" });
    expect(JSON.stringify(before)).toBe(frozen);
  });
});
