// What the station Making tells of a real pair: its state in words, the list as text, every complaint at its own field, the shelf after the pair.
import { describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { goodIds } from "#making/goods.ts";
import { phases } from "#making/steps/step.ts";
import type { MakingSaid } from "#making/said.ts";
import { spotsOfGood } from "#app/column/making-good.tsx";
import { goodsBeside } from "#app/state/goods-said.ts";
import { byGoodGroup, goodWords } from "#app/state/good-words.ts";
import { buyWords, listAsText, listLines } from "#app/state/list-words.ts";
import { laidFrom, makingNow, sameForMaking, withCalendar, withoutCalendar } from "#app/state/making-now.ts";
import { hours, makingWords, money } from "#app/state/making-words.ts";
import { spotOf, stationOf } from "#app/state/spots.ts";
import { findingsAt, whatOf } from "#app/state/stations.ts";
import { usualMinutes } from "#app/state/usual-minutes.ts";

const pair = new Pipeline().run(defaultJob(), new Map());
const of = (said: MakingSaid) => makingNow(pair, said)!;

describe("the station Making", () => {
  test("stands in words: things to buy, money and hours, or that there are no prices", () => {
    const bare = of({});
    const things = bare.toBuy.filter((b) => b.short > 0).length;
    expect(whatOf("Making", pair, bare, false)).toBe(`${things} things to buy, no prices yet · ${(bare.cost.minutes / 60).toFixed(0)}\u00a0h a pair`);
    const priced = of({ currency: "EUR", prices: { "upper leather": { price: "100", for: "1 m2" } } });
    // 100 for a square metre of what the pair takes.
    const material = 100 * (priced.needs.find((n) => n.good === "upper leather")!.gross / 1e6);
    expect(makingWords(priced)).toContain(`· ${material.toFixed(0)}\u00a0EUR and `);
  });

  test("hours and money are told as they are spoken of", () => {
    expect([0, 59.6, 61, 680].map(hours)).toEqual(["0\u00a0min", "1\u00a0h", "1\u00a0h 1\u00a0min", "11\u00a0h 20\u00a0min"]);
    expect([money(12.5, "EUR"), money(420, "EUR"), money(0.456, "")]).toEqual(["12.50\u00a0EUR", "420.00\u00a0EUR", "0.46"]);
  });

  test("each thing of the pair stands in one group, and every thing has its words", () => {
    const { needs } = of({});
    expect(byGoodGroup(needs).flatMap(({ here }) => here)).toHaveLength(needs.length);
    expect(Object.keys(goodWords).sort()).toEqual([...goodIds].sort());
  });

  test("the list as text holds every thing once: what to buy, and what is there already", () => {
    const making = of({ pairs: "3", currency: "EUR", shelf: { "upper leather": "9 m2" }, prices: { thread: { price: "9", for: "1000 m" } } });
    const text = listAsText("Anna’s pair", making);
    expect(text).toContain("Shopping list: Anna’s pair, 3 pairs\n");
    for (const { good } of making.needs) expect(text.toLowerCase().split("\n").filter((l) => l.startsWith(`- ${good}:`) || (l.startsWith("on the shelf") && l.includes(good)))).toHaveLength(1);
    expect(text).toContain("On the shelf, enough: upper leather");
    expect(text).toMatch(/- Thread: 1 spool of 1000 m, 9\.00\u00a0EUR\. Polyester.*\. 9\d\d m .*will be left over\./);
    // Two things are on the shelf or have a price; of all others it is said that they have none.
    expect(text).toContain(`In the shop this time: 9.00\u00a0EUR, without ${listLines(making).filter(({ buy }) => buy.short > 0).length - 1} things that have no price yet.`);
    expect(text).toContain("Tools are not in this list.");
    expect(buyWords(listLines(making)[0]!)).toBe("nothing");
  });

  test("the calendar is laid apart from what is only bought and paid, and both together are the whole", () => {
    const said: MakingSaid = { pairs: "3", lasts: "many", sessions: "Tue 19:00-21:30, Sat 9-13, Sun", start: "2026-12-01", minutes: { closing: "long" }, rate: "-1", prices: { thread: { price: "9", for: "1000 m" } } };
    const answered = withoutCalendar(pair, said)!;
    expect(answered.calendar).toBeUndefined();
    const whole = withCalendar(answered, of(said));
    const codes = (m: { readonly findings: readonly { readonly code: string }[] }): readonly string[] => m.findings.map((f) => f.code).sort();
    expect(whole.calendar).toEqual(of(said).calendar);
    expect(whole.calendar).toBeDefined();
    expect(codes(whole)).toEqual(codes(of(said)));
    expect({ ...whole, findings: [] }).toEqual({ ...of(said), findings: [] });
    // Prices, shelf and ticks lay no day anew; pairs, lasts and cement do.
    const same = laidFrom(said);
    expect(laidFrom({ ...said, rate: "30", overhead: "4", asked: "400", currency: "EUR", prices: {}, shelf: { thread: "9 m" }, skins: { thread: "9 m" }, done: { a: { left: "2026-12-01T19:40" } } })).toBe(same);
    for (const other of [{ pairs: "4" }, { lasts: "2" }, { cement: "water-based" }, { minutes: {} }, { start: "2026-12-02" }, { sessions: "Sat 9-13" }]) expect(laidFrom({ ...said, ...other })).not.toBe(same);
  });

  test("what cannot be read is told at its own field, and the rest is reckoned with", () => {
    const said: MakingSaid = {
      pairs: "some", rate: "a lot", overhead: "-1", asked: "1,234", start: "soon", sessions: "whenever",
      prices: { "upper leather": { price: "-12,50" }, "lining leather": { price: "6", for: "1 bucket" }, thread: { price: "9" } },
      shelf: { latex: "half" }, skins: { "sock leather": "big" }, minutes: { closing: "long" },
    };
    const { findings, cost } = of(said);
    const looks = findings.filter((f) => severityOf(f) === "look");
    expect(findingsAt("Making", looks)).toEqual(looks);
    const spots = looks.map((f) => spotOf(f, undefined));
    for (const spot of ["making pairs", "making rate", "making overhead", "making asked", "making start", "making sessions", "making prices upper leather", "making for lining leather", "making for thread", "making shelf latex", "making skins sock leather", "making minutes closing"] as const) {
      expect(spots, spot).toContain(spot);
      expect(stationOf(spot)).toBe("Making");
    }
    expect(spots).not.toContain(undefined);
    expect(cost.minutes).toBeGreaterThan(0);
  });

  test("asked less than it costs is told at the price asked", () => {
    const { findings } = of({ rate: "30", asked: "5" });
    expect(findings.map((f) => spotOf(f, undefined))).toContain("making asked");
  });

  test("what is wrong at a thing that this pair does not use has its field as well, and a first day without hours is told at the hours", () => {
    const said: MakingSaid = { cement: "water-based", prices: { "contact cement": { price: "-5", for: "1 kg" }, latex: { price: "7" } }, shelf: { "contact cement": "a tin", elastic: "1 m" }, skins: { unheard: "6 ft2" } };
    const { needs, findings } = of(said);
    const beside = goodsBeside(said, needs);
    expect(needs.map(({ good }) => good)).not.toContain("contact cement");
    expect(beside).toContain("contact cement");
    expect(beside).not.toContain("latex");
    expect(goodsBeside({}, needs)).toEqual([]);
    // Each complaint that has a field has one that is shown.
    const shown = new Set([...needs.map(({ good }) => good), ...beside].flatMap((good) => spotsOfGood({ good })) as readonly string[]);
    const atGoods = findings.map((f) => spotOf(f, undefined)).filter((spot) => spot !== undefined && /^making (prices|for|shelf|skins) /.test(spot));
    expect(atGoods).toEqual(expect.arrayContaining(["making prices contact cement", "making shelf contact cement"]));
    for (const spot of atGoods) expect(shown).toContain(spot);
    expect(of({ start: "2026-12-01" }).findings.filter((f) => f.code === "start-alone").map((f) => spotOf(f, undefined))).toEqual(["making sessions"]);
  });

  test("a price makes no other pair for making, another leather does though it cuts the same pieces", () => {
    expect(sameForMaking(pair, { ...pair, job: { ...pair.job, making: { rate: "30" } } })).toBe(true);
    expect(sameForMaking(pair, { ...pair, job: { ...pair.job, leather: { ...pair.job.leather, upper: { strips: [] } } } } as typeof pair)).toBe(false);
    expect(sameForMaking(pair, { ...pair, pieces: [...pair.pieces] })).toBe(false);
  });

  test("usual minutes are those of the steps, stretch by stretch", () => {
    const making = of({});
    const usual = usualMinutes(making.steps);
    expect(phases.reduce((sum, p) => sum + (usual[p] ?? 0), 0)).toBeCloseTo(making.cost.minutes, 6);
  });
});
