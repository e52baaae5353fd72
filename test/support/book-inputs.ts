import { defaultJob } from "#job/default-job.ts";
import { makingOfPair } from "#job/making.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import { lastInput } from "#job/sheets-for.ts";
import type { MakingSaid } from "#making/said.ts";
import { sheetChoicesFrom, type SheetChoices } from "#sheets/choices.ts";
import type { LastInput } from "#sheets/input.ts";
import { onLast } from "./on-last.ts";
import type { OwnChoices } from "./making-pairs.ts";

const kept = new Map<string, LastPair>();

/** What the bench book of the example pair (invented) is written from, with some choices changed. */
export function bookInput({ said = {}, parts = {}, shell = {} }: OwnChoices = {}, sheets: Partial<SheetChoices> = {}, change: Partial<LastInput> = {}): LastInput {
  const key = JSON.stringify([parts, shell]), job = defaultJob();
  const pair = kept.get(key) ?? onLast(new Pipeline().run({ ...job, parts: { ...job.parts, ...parts }, shell: { ...job.shell, ...shell } }, new Map(), { triangles: 4000 }));
  kept.set(key, pair);
  return { ...lastInput(pair), choices: sheetChoicesFrom(sheets), making: makingOfPair(pair, said), ...change };
}

/** A pair unlike the example: quarters, a bound edge, one lining and every extra. */
export const busy: OwnChoices = { parts: { cut: "quarters", seam: "lapped", lining: "one", strap: true, bow: true, toeCap: true, backStrip: true, sideLining: true }, shell: { edge: "bound" } };

/** A maker who said all there is to say; every figure invented. */
export const saidAll: MakingSaid = {
  pairs: "4", currency: "EUR", rate: "18", overhead: "12", asked: "290", start: "2026-12-01", sessions: "Tue 19:00-21:30, Sat 9:00-13:00",
  prices: { "upper leather": { price: "7,50", for: "1 ft2" }, "lining leather": { price: "4,20", for: "1 ft2" }, thread: { price: 9, for: "1000 m" } },
  shelf: { "lining leather": "0.4 m2" }, skins: { "upper leather": "6 ft2" },
};
