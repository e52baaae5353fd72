// The surfaces of the outside check of the flattening: shells and caps by formula, and open scans from `../shared` where present.
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { weld } from "#mesh/weld.ts";
import { capMesh, pumpCounts, pumpShell } from "../test/support/formula-surfaces.ts";

export interface Case {
  readonly name: string;
  readonly mesh: Mesh;
  /** The two ends of the topline at the heel, for a shell that has a spring. */
  readonly heel?: readonly [number, number];
}

const outside = fileURLToPath(new URL("../../shared/data/surfaces/", import.meta.url));

/** Scaled to 100 mm along x, so that the tolerance in millimetres means the same for all. */
function scan(file: string): Case {
  const { positions, triangles } = weld(readScan(file, new Uint8Array(readFileSync(outside + file))).mesh, 1e-6);
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 3) [low, high] = [Math.min(low, positions[i]!), Math.max(high, positions[i]!)];
  return { name: `${file}, ${triangles.length / 3} triangles`, mesh: { positions: positions.map((x) => (100 * x) / (high - low)), triangles } };
}

function shell(triangles: number): Case {
  const counts = pumpCounts(triangles);
  const first = counts.slice(0, -1).reduce((sum, n) => sum + n + 1, 0);
  return { name: `pump shell, ${triangles / 1000}k triangles`, mesh: pumpShell(triangles), heel: [first, first + counts.at(-1)!] };
}

export function theCases(): Case[] {
  const scans = ["nefertiti.stl", "nefertiti_fine.stl", "nefertiti_half.stl", "mountain.obj", "hand_lowres.obj", "cube_no_bottom.obj"];
  const found = scans.filter((file) => existsSync(outside + file));
  if (found.length < scans.length) console.log(`  skipped: ${scans.length - found.length} scans are not in ../shared/data/surfaces`);
  return [shell(5000), shell(20000), { name: "cap of 80 degrees, 10k triangles", mesh: capMesh(40, 80, 40) }, ...found.map(scan)];
}
