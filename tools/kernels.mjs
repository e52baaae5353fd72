// `node tools/kernels.mjs`: compiles kernels/*.ts (AssemblyScript) and writes them as text into src/solve/kernel-bytes.ts.
// The result is kept in the repository, so that nothing need be compiled to run the tool; a test holds it to its source.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { giveUp, inRoot, isMain, runPackage } from "./steps.mjs";

const target = inRoot("src", "solve", "kernel-bytes.ts");

export function compiledKernels() {
  const folder = mkdtempSync(join(tmpdir(), "kernels-"));
  const out = join(folder, "cholesky.wasm");
  const code = runPackage("assemblyscript", "asc", [inRoot("kernels", "cholesky.ts"), "--enable", "simd", "--runtime", "stub", "--importMemory", "--noExportMemory", "-O3", "--noAssert", "-o", out]);
  if (code !== 0) giveUp("The kernels do not compile.");
  const bytes = readFileSync(out);
  rmSync(folder, { recursive: true });
  return asSource(bytes);
}

function asSource(bytes) {
  const lines = bytes.toString("base64").match(/.{1,120}/g).map((line) => `  "${line}",`);
  return [
    "// Written by tools/kernels.mjs out of kernels/cholesky.ts; do not edit.",
    'import { fromBase64 } from "./base64.ts";',
    "",
    "const text = [",
    ...lines,
    "];",
    "",
    `/** The compiled kernels, ${bytes.length} bytes. */`,
    'export const kernelBytes = (): Uint8Array => fromBase64(text.join(""));',
    "",
  ].join("\n");
}

if (isMain(import.meta.url)) writeFileSync(target, compiledKernels());
