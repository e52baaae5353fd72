import { describe, expect, test } from "vitest";
import { answered, ask, noTurns, stopped, type Turns } from "#app/state/turns.ts";

describe("only the newest wish is worth doing", () => {
  test("while one runs, later ones replace each other", () => {
    const first = ask<string>(noTurns as Turns<string>, "a");
    let { turns } = first;
    expect(first.start).toEqual({ id: 1, wish: "a" });
    for (const wish of ["b", "c", "d"]) {
      const next = ask(turns, wish);
      expect(next.start).toBeUndefined();
      turns = next.turns;
    }
    const after = answered(turns, 1);
    expect([after.counts, after.start?.wish]).toEqual([true, "d"]);
    const end = answered(after.turns, after.start!.id);
    expect([end.counts, end.start]).toEqual([true, undefined]);
  });

  test("answers that come after a stop, or twice, do not count", () => {
    const { turns, start } = ask<string>(noTurns as Turns<string>, "a");
    expect(answered(stopped(turns), start!.id).counts).toBe(false);
    const done = answered(turns, start!.id).turns;
    expect(answered(done, start!.id).counts).toBe(false);
    const again = ask(stopped(turns), "b");
    expect(again.start!.id).not.toBe(start!.id);
  });
});
