import { expect, test } from "vitest";
import { Cancelled } from "#base/watch.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { flatten } from "#flatten/flatten.ts";
import { Ground } from "#wrap/ground.ts";
import { wrap, type Wrapped } from "#wrap/wrap.ts";
import { pumpShell } from "../support/formula-surfaces.ts";
import { largest } from "../support/sheets-on-forms.ts";

const card = { stretch: 100, bend: 3, press: 0.02, ground: 20 };
const shell = pumpShell(700);
const uv = flatten(shell, { toleranceMm: 1e-6 }).uv;
/** The two banks of the opening at the back, which lie in equal places. */
const taped = Uint32Array.from(
  Array.from({ length: shell.positions.length / 3 }, (_, a) => a).flatMap((a) => {
    const b = Array.from({ length: shell.positions.length / 3 - a - 1 }, (_, k) => a + 1 + k).find((other) => [0, 1, 2].every((d) => Math.abs(shell.positions[3 * a + d]! - shell.positions[3 * other + d]!) < 1e-9));
    return b === undefined ? [] : [a, b];
  }),
);
/** Cut into tongues below. */
const pushed = Float64Array.from({ length: shell.triangles.length / 3 }, (_, t) => (shell.positions[3 * shell.triangles[3 * t]! + 2]! < 20 ? 0.02 : 1));
const held = Uint32Array.from([0, shell.positions.length / 3 - 1]);

/** The pump-like shell's own flat laid on it again. */
const lay = (mesh: Mesh, flat: Float64Array, ground: Mesh): Wrapped => wrap({ triangles: mesh.triangles, flat, held, taped, pushed }, mesh.positions, new Ground(ground), { card, toleranceMm: 1e-9, mostSteps: 600 });
const fine = pumpShell(6000);
const here = lay(shell, uv, fine);

test("it comes to rest, as well as asked", () => {
  expect(here.settled).toBe(true);
  expect(here.steps.at(-1)!.moveMm).toBeLessThan(1e-9);
});

test("the mirror image lies as the mirror image", () => {
  const mirrored = ({ positions, triangles }: Mesh): Mesh => ({
    positions: positions.map((v, i) => (i % 3 === 1 ? 0 - v : v)),
    triangles: triangles.map((_, k) => triangles[k - (k % 3) + ((3 - (k % 3)) % 3)]!),
  });
  const image = lay(mirrored(shell), uv.map((v, i) => (i % 2 === 1 ? 0 - v : v)), mirrored(fine));
  expect(largest(image.positions.map((v, i) => v - (i % 3 === 1 ? -1 : 1) * here.positions[i]!))).toBeLessThan(1e-9);
});

test("moved and turned as a whole it lies the same", () => {
  const turned = (p: Float64Array): Float64Array => p.map((_, i) => {
    const k = i - (i % 3), [x, y, z] = [p[k]!, p[k + 1]!, p[k + 2]!];
    return [0.6 * x - 0.8 * y + 300, 0.48 * x + 0.36 * y - 0.8 * z - 20, 0.64 * x + 0.48 * y + 0.6 * z + 7][i % 3]!;
  });
  const there = lay({ positions: turned(shell.positions), triangles: shell.triangles }, uv, { positions: turned(fine.positions), triangles: fine.triangles });
  expect(largest(there.positions.map((v, i) => v - turned(here.positions)[i]!))).toBeLessThan(1e-9);
});

test("the same input gives the same bytes", () => {
  expect(lay(shell, uv, fine).positions).toEqual(here.positions);
});

test("it tells how far it is and stops when it is told to", () => {
  const told: number[] = [];
  wrap({ triangles: shell.triangles, flat: uv, held, taped, pushed }, shell.positions, new Ground(fine), { card, watch: (_, f) => told.push(f) });
  expect(told.length).toBeGreaterThan(3);
  expect(told.every((f, i) => f > 0 && f < 1 && f >= (told[i - 1] ?? 0))).toBe(true);
  const stop = () => {
    throw new Cancelled();
  };
  expect(() => wrap({ triangles: shell.triangles, flat: uv, held, taped, pushed }, shell.positions, new Ground(fine), { card, watch: stop })).toThrow(Cancelled);
});
