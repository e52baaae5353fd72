// Lays the shells flat with their heel ends tied to given distances: `tsx crosscheck/flatten-tied.ts FOLDER` reads
// FOLDER/gaps.json, mm by name, and makes FOLDER/tied.json, uv by name.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { flatten } from "#flatten/flatten.ts";
import { theCases } from "./flatten-cases.ts";

const folder = process.argv[2]!;
const gaps = JSON.parse(readFileSync(join(folder, "gaps.json"), "utf8")) as Record<string, number>;
const tied = theCases().flatMap(({ name, mesh, heel }) =>
  heel && gaps[name] !== undefined ? [[name, [...flatten(mesh, { ties: [{ a: heel[0], b: heel[1], targetMm: gaps[name], weight: 100 }] }).uv]] as const] : [],
);
writeFileSync(join(folder, "tied.json"), JSON.stringify(Object.fromEntries(tied)));
