import { expect, test } from "vitest";
import { clearNumbers } from "#app/picture/level-numbers.tsx";

test("of numbers that would run together the later one gives way", () => {
  const at = (key: string, x: number, y: number) => ({ key, x, y, text: "+2" });
  expect(clearNumbers([at("a", 0, 0), at("b", 12, 0), at("c", 30, 0), at("d", 31, 22), at("e", 31, 50)]).map((n) => n.key)).toEqual(["a", "c", "e"]);
});
