import { afterEach, expect, test, vi } from "vitest";
import { capMesh, pumpShell } from "../support/formula-surfaces.ts";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

/** The flattening as it runs in an engine with or without compiled kernels; which one is found out once, so it is loaded anew. */
async function flattenIn(compiled: boolean) {
  vi.resetModules();
  if (!compiled) vi.stubGlobal("WebAssembly", undefined);
  const { compiledRuns } = await import("#solve/compiled-cholesky.ts");
  expect(compiledRuns()).toBe(compiled);
  const { flatten } = await import("#flatten/flatten.ts");
  return flatten;
}

test.each([["a pump's shell", pumpShell(3000)], ["a cap", capMesh(40, 80, 20)]])("%s lies flat to the same bytes with compiled kernels and without", async (_, mesh) => {
  const withThem = (await flattenIn(true))(mesh);
  const without = (await flattenIn(false))(mesh);
  expect(new Uint8Array(without.uv.buffer)).toEqual(new Uint8Array(withThem.uv.buffer));
  expect(without).toEqual(withThem);
});
