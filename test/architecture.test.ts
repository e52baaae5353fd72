// Who may look at whom (layers.mjs), over value and type imports alike, and proof that this guard can fail.
import { spawnSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join, posix } from "node:path";
import { describe, expect, test } from "vitest";
// @ts-expect-error plain module without types
import { layers as table } from "../layers.mjs";

const layers = table as Record<string, readonly string[]>;

function scan(root: string) {
  const files = (readdirSync(root, { recursive: true }) as string[]).map((f) => f.replaceAll("\\", "/")).filter((f) => /\.tsx?$/.test(f));
  const edges = new Map<string, string[]>();
  const faults: string[] = [];
  for (const file of files) {
    const text = readFileSync(join(root, file), "utf8");
    const specifiers = [...text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*["']([^"']+)["']/g)].map((m) => m[1]!);
    const targets = specifiers.flatMap((s) => (s.startsWith("#") ? [s.slice(1)] : s.startsWith(".") ? [posix.join(posix.dirname(file), s)] : []));
    const inside = targets.map((t) => t.replace(/^(\.\.\/)+src\//, ""));
    edges.set(file, inside);
    const folder = file.split("/")[0]!;
    for (const other of new Set(inside.map((t) => t.split("/")[0]!))) {
      if (other !== folder && !layers[folder]?.includes(other)) faults.push(`${file} -> ${other}`);
    }
  }
  return { filesRead: files.length, faults: faults.sort(), rings: rings(edges) };
}

/** Files that can reach themselves over imports. */
function rings(edges: ReadonlyMap<string, readonly string[]>): string[] {
  const reaches = (from: string) => {
    const seen = new Set<string>();
    const open = [...(edges.get(from) ?? [])];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (seen.has(next)) continue;
      seen.add(next);
      open.push(...(edges.get(next) ?? []));
    }
    return seen.has(from);
  };
  return [...edges.keys()].filter(reaches).sort();
}

describe("who may look at whom", () => {
  test("the source tree keeps to layers.mjs and has no rings of imports, types included", () => {
    const { filesRead, faults, rings: found } = scan("src");
    expect(filesRead).toBeGreaterThan(60);
    expect(faults).toEqual([]);
    expect(found).toEqual([]);
  });

  test("the table itself flows down: nobody looks at a folder that looks back", () => {
    const order = Object.keys(layers);
    for (const [folder, seen] of Object.entries(layers)) for (const other of seen) expect(order.indexOf(other), `${folder} -> ${other}`).toBeLessThan(order.indexOf(folder));
  });

  test("planted faults are found", () => {
    const { faults, rings: found } = scan("test/support/wrong-way/src");
    expect(faults).toEqual(["plane/value-from-last.ts -> last", "shell/type-from-pieces.ts -> pieces", "shell/type-in-place.ts -> pieces"]);
    expect(found).toEqual(["base/first.ts", "base/second.ts"]);
  });

  test("lint finds the planted faults too", () => {
    const { status, stdout } = spawnSync(process.execPath, ["tools/lint.mjs", "test/support/wrong-way"], { encoding: "utf8" });
    expect(status).toBe(1);
    for (const word of ["no-restricted-imports", "'Date'", "'Math.random'", "'Math.acos'", "import(no-cycle)", "The core compiles without Node"]) expect(stdout).toContain(word);
  });
});
