import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readyWords } from "#making/calendar/stint-words.ts";
import { contents, lastwise, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const making = (name: string) => JSON.parse(readFileSync(join(folder, name, "report.json"), "utf8")).making;
const make = (name: string, ...args: readonly string[]) => lastwise("make", "--example", "--out", join(folder, name), "--untried", ...args);
const table = (name: string, ...rows: readonly string[]): string => {
  writeFileSync(join(folder, name), `${rows.join("\n")}\n`);
  return join(folder, name);
};

describe("make with prices, shelf and hours", () => {
  test("tells what to buy and writes the bench book, without any price too", () => {
    const { out, code } = make("plain");
    expect(code).toBe(0);
    expect(out).toMatch(/To buy for the pair/);
    expect(out).toMatch(/What it costs is told as soon as you say prices/);
    expect(contents(join(folder, "plain"))).toContain("making.pdf");
    expect(making("plain").cost.material).toBe(0);
  });

  test("reckons prices and shelf of tables, in either way of writing decimals", () => {
    const prices = table("prices.csv", "what;price;for", "upper leather;9,50;1 ft2", "thread;7,80;1000 m");
    const shelf = table("shelf.csv", "what,amount", "upper leather,1 ft2");
    const { out } = make("priced", "--prices", prices, "--shelf", shelf, "--currency", "EUR", "--rate", "18", "--overhead", "7,50", "--asked", "290", "--pairs", "3");
    const { pairs, materials, toBuy, cost } = making("priced");
    const upper = materials.find((m: { name: string }) => m.name === "upper leather");
    expect(pairs).toBe(3);
    // By hand: a price for a square foot of 929.0304 cm², and three pairs less one square foot.
    expect(cost.lines.find((l: { good: string }) => l.good === "upper leather").cost).toBeCloseTo((9.5 * upper.gross) / 92903.04, 3);
    expect(toBuy.find((b: { good: string }) => b.good === "upper leather").short).toBeCloseTo(3 * upper.gross - 92903.04, 2);
    expect(cost.total).toBeCloseTo(cost.material + (18 * cost.minutes) / 60 + 7.5, 3);
    expect(out).toContain("EUR");
    // What the shop takes this time: the report rounds it to 1e-4, the terminal to hundredths.
    expect(out).toMatch(new RegExp(`In the shop this time ${cost.shopping.toFixed(2)}\\u00A0EUR, without what has no price\\. Tools are not in this list`));
    // A spool is bought whole, and what stays on it is told; a shank is bought by the pair.
    expect(out).toMatch(/thread: \d[\d.]* m \(.*\), as 1 spool of 1000 m, with 9\d\d m \(.*\) left over;/);
    expect(out).toMatch(/shanks: 3 pairs;/);
  });

  test("takes the cement and the lasts that are said, and refuses a cement that is neither", () => {
    const { code } = make("watery", "--cement", "Water-based", "--pairs", "3", "--lasts", "2");
    const { materials, bonds, toBuy } = making("watery"), named = (name: string) => materials.find((m: { name: string }) => m.name === name);
    expect(code).toBeLessThan(2);
    expect(named("contact cement")).toBeUndefined();
    expect(named("water-based cement").gross).toBeGreaterThan(40);
    expect(new Set(bonds.map((b: { glue: string }) => b.glue))).toEqual(new Set(["latex", "water-based cement"]));
    // Two shoes of three tacks, on two pairs of lasts, and a tenth in hand.
    expect(named("insole tacks")).toMatchObject({ net: 6, gross: 6, spare: 2, atOnce: 2 });
    expect(toBuy.find((b: { good: string }) => b.good === "insole tacks").needed).toBe(14);
    const { code: no, err } = make("hot", "--cement", "hot glue");
    expect(no).toBe(2);
    expect(err).toMatch(/--cement.*contact or water-based/);
  });

  test("names the row or the option that cannot be read, and makes the rest", () => {
    const prices = table("bad.csv", "what,price,for", "upper leather,-4,1 ft2", "lining leather,5,1 parsec", "thread,7.80,1000 m");
    const { out, code } = make("bad", "--prices", prices, "--rate", "lots", "--pairs", "two", "--sessions", "whenever");
    expect(code).toBe(1);
    for (const part of [/bad\.csv, row 2.*upper leather/, /bad\.csv, row 3.*parsec/, /Your rate for an hour/, /How many pairs: "two"/, /whenever/]) expect(out).toMatch(part);
    expect(making("bad").cost.lines.find((l: { good: string }) => l.good === "thread").cost).toBeGreaterThan(0);
    expect(contents(join(folder, "bad"))).toContain("pattern.pdf");
  });

  test("takes an empty table for none, and refuses what is no table", () => {
    expect(make("empty", "--shelf", table("empty.csv", "what,amount")).code).toBe(0);
    writeFileSync(join(folder, "nothing.csv"), "");
    const nothing = make("nothing", "--prices", join(folder, "nothing.csv"));
    expect(nothing.code).toBe(0);
    expect(nothing.out).toMatch(/There is nothing in nothing\.csv\. Its first row reads what,price,for/);
    writeFileSync(join(folder, "picture.csv"), Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]));
    const { code, err } = make("none", "--prices", join(folder, "picture.csv"));
    expect(code).toBe(2);
    expect(err).toMatch(/picture\.csv is no plain text/);
    expect(contents(folder)).not.toContain("none");
  });

  test("fits the steps into the maker's hours", () => {
    const { out } = make("planned", "--sessions", "Tue 19:00-21:30, Sat 9:00-13:00", "--start", "2026-12-01");
    const { calendar, steps } = making("planned");
    expect(new Set(calendar.sessions.flatMap((s: { stints: { step: string }[] }) => s.stints.map((t) => t.step)))).toEqual(new Set(steps.map((s: { id: string }) => s.id)));
    expect(out).toContain(`ready on ${readyWords(calendar)}`);
  });
});
