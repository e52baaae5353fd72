// Every kind of finding that names a number, a point or a mark has to lead there. Which kinds name one is derived: each sentence is
// said with data that writes down what it is asked for.
import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Finding } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import type { Rules } from "#job/run-options.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lineRulesFor } from "#lines/rules.ts";
import { pieceRulesFor } from "#pieces/rules.ts";
import { markWords } from "#tape/mark-words.ts";
import { marksOf, spotOf, stationOf } from "#app/state/spots.ts";

const last = lastFromMeasures(demoMeasurements, "demo", unwatched);
const rules = { line: lineRulesFor(last), piece: pieceRulesFor(last) } satisfies Rules;

/** What a sentence is told of the place it speaks of, by the name of the datum. */
const naming: Readonly<Record<string, unknown>> = {
  measure: "stickLength",
  landmark: "vampPoint",
  mark: markWords("throatLateral"),
  marks: [markWords("toeMedial"), markWords("toeLateral")],
  barMm: 190,
};

/** What some sentences look up in a list of their own, and names no place. */
const lookedUp: Readonly<Record<string, unknown>> = { table: "prices" };

const folder = new URL("../../src/base/sentences/", import.meta.url);
const modules = await Promise.all(readdirSync(folder).filter((f) => f.endsWith(".ts")).map((f) => import(new URL(f, folder).href) as Promise<Record<string, unknown>>));
const sentences = modules.flatMap((m) => Object.values(m)).flatMap((c) => (typeof c === "object" && c !== null ? Object.entries(c as Record<string, { readonly say?: (data: unknown) => string }>) : [])).flatMap(([code, { say }]) => (say ? [{ code, say }] : []));

/** Stands in for any datum: a number, a text, a list, whatever is asked of it. */
const anything: unknown = new Proxy(() => anything, {
  get: (_, key) => (key === Symbol.toPrimitive ? () => 1 : key === Symbol.iterator ? () => [][Symbol.iterator]() : key === "length" ? 1 : anything),
  apply: () => anything,
});

function askedFor(say: (data: unknown) => string): ReadonlySet<string> {
  const asked = new Set<string>();
  const data = new Proxy({}, {
    get: (_, key) => {
      asked.add(String(key));
      return Object.hasOwn(naming, key) ? naming[String(key)] : (lookedUp[String(key)] ?? anything);
    },
  });
  say(data);
  return asked;
}

const named = sentences.map(({ code, say }) => ({ code, keys: Object.keys(naming).filter((key) => askedFor(say).has(key)) })).filter(({ keys }) => keys.length > 0);

describe("findings that name a number, a point or a mark", () => {
  test("are told apart from those that name none", () => {
    expect(sentences.length).toBeGreaterThan(120);
    const codes = named.map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(["measure-slip", "landmark-far-from-found", "tape-marks-contradict", "photo-bar-off"]));
    expect(codes).not.toContain("pose-doubtful");
  });

  test.each(named)("$code leads there", ({ code, keys }) => {
    const data = Object.fromEntries(keys.map((key) => [key, naming[key]]));
    const spot = spotOf({ code, data } as unknown as Finding, rules);
    expect(spot).toBeDefined();
    expect(stationOf(spot!)).toBe("Last");
    // It is that very number, point or mark, not only some place nearby.
    if (keys.includes("measure")) expect(spot).toMatch(/^(last stickLengthMm|scan stickLength)$/);
    if (keys.includes("landmark")) expect(spot).toBe("point vampPoint");
  });

  test("of two marks that contradict each other both are named", () => {
    const marks = naming["marks"] as readonly [string, string];
    expect(marksOf({ code: "tape-marks-contradict", data: { photo: "a.jpg", marks } })).toEqual(["toeMedial", "toeLateral"]);
    expect(marksOf({ code: "tape-mark-off", data: { mark: markWords("bottomJointMedial"), offMm: 9 } })).toEqual(["bottomJointMedial"]);
  });

  test("those that speak of one thing without a number are found by their kind", () => {
    const at = (code: Finding["code"]): string | undefined => spotOf({ code, data: {} } as Finding, rules);
    expect([at("vamp-point-too-high"), at("second-last-refused"), at("pull-far-off"), at("pulls-zigzag")]).toEqual(["point vampPoint", "scan other", "scan feather", "scan feather"]);
  });
});
