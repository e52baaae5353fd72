import { beforeAll, describe, expect, test } from "vitest";
import { cutShell } from "#shell/cut.ts";
import { heelGap, layFlat, layFree, type FreeLay } from "#shell/lay-flat.ts";
import type { Shell } from "#shell/shell.ts";
import { demoBoard } from "../support/demo-shell.ts";

describe("a spring that cannot be laid", () => {
  let shell: Shell, free: FreeLay, apart: number;
  beforeAll(() => {
    const { board, drawn } = demoBoard();
    shell = cutShell(board, drawn, 2500);
    free = layFree(shell);
    apart = heelGap({ shell, uv: free.flat.uv });
  });

  test("is refused with what can: the heel ends cannot be swung past each other", () => {
    for (const mm of [apart - 9, apart + 1, 1e6, -1e6, NaN]) expect(() => layFlat(shell, mm, { free }), String(mm)).toThrow(new RegExp(`cannot be laid.* to ${Math.floor(apart - 10)} mm`));
  });

  test("while one within that is laid as asked", () => {
    expect(apart - heelGap(layFlat(shell, 30, { free }))).toBeCloseTo(30, 0);
  });
});
