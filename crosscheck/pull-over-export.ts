// Writes sheets, loads and where our solver brings them, for the outside check of the mechanics:
// `tsx crosscheck/pull-over-export.ts FOLDER` makes FOLDER/pull-over.json.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { InverseSheet } from "#lasting/inverse/inverse-sheet.ts";
import { flatten } from "#flatten/flatten.ts";
import { capMesh } from "../test/support/formula-surfaces.ts";
import { cap, capRim, drawnEvenly, drawnStrip, formOf, inverseLayers, lawOf, strip, theCases, there, type Case } from "./pull-over-cases.ts";

const formStiffness = 50, tackStiffness = 500;
const exactly = { toleranceMm: 1e-7, residualN: 1e-6, mostSteps: 1000 };

/** The sheet before anything pulls. */
function sheetOf({ triangles, flat, start, layers, form, tacked, plane }: Case, friction = 0): LeatherSheet {
  const vertices = Uint32Array.from({ length: flat.length / 2 }, (_, v) => v);
  const inPlane = { held: tacked, guided: { vertices, across: Float64Array.from(start, (_, k) => (k % 3 === 2 ? 1 : 0)) } };
  return new LeatherSheet({ sheet: { triangles, flat, ...(plane && inPlane) }, law: lawOf(layers), bend: 0, formStiffness, friction, ...(form && { form: formOf(form) }) }, start);
}

const plain = (one: Case): object => Object.fromEntries(Object.entries(one).map(([key, value]) => [key, ArrayBuffer.isView(value) ? [...(value as Float64Array)] : value]));

/** What our sheet has come to. */
function ours(sheet: LeatherSheet): object {
  const { most, least, tension } = sheet.strains();
  return { positions: [...sheet.positions()], tackForces: [...sheet.tackForces()], normalForces: [...sheet.normalForces()], most: [...most], least: [...least], tension: [...tension] };
}

/** Brought to rest under its loads: as nearly as it goes, and as nearly as is usual. */
function pulled(one: Case): object {
  const loaded = (): LeatherSheet => {
    const sheet = sheetOf(one);
    sheet.load.set(one.load);
    if (!one.plane) sheet.tack(one.tacked, { stiffness: tackStiffness, at: one.at });
    return sheet;
  };
  const sheet = loaded(), usual = loaded();
  const settled = sheet.settle(one.plane ? { ...exactly, toleranceMm: 1e-9, residualN: 1e-11 } : exactly);
  usual.settle();
  return { ...plain(one), settled, ours: ours(sheet), usual: [...usual.positions()] };
}

/** Drawn on until all of it slides. */
function drawn(share: number): object {
  const one = drawnStrip(), sheet = sheetOf(one, share);
  sheet.load.set(one.load);
  const at = (by: number): Float64Array => one.at.map((x, k) => x + by * there[k % 3]!);
  const most = 14;
  let settled = {};
  for (let by = 0; by <= most; by += 2) {
    sheet.tack(one.tacked, { stiffness: tackStiffness, at: at(by) });
    sheet.begin();
    settled = sheet.settle({ ...exactly, residualN: 1e-4, toleranceMm: 1e-5 });
  }
  return { ...plain({ ...one, at: at(most), start: drawnEvenly(one, most) }), share, there, settled, ours: ours(sheet) };
}

/** The flat sheet that takes the shape of the cap under a pull round its rim. */
function inverse(pull: number): object {
  const { positions, triangles } = capMesh(cap.radius, cap.degrees, cap.rings), rim = capRim(), ring = Uint32Array.from([...rim, rim[0]!]);
  const { uv, pressure, settled, exact } = new InverseSheet(positions.length / 3, triangles).run({
    positions, start: flatten({ positions, triangles }).uv, law: lawOf(inverseLayers), frame: { from: 0, origin: rim[0]! }, toleranceMm: 1e-9,
    pulls: [{ vertices: ring, perMm: new Float64Array(ring.length).fill(pull) }], normals: positions.map((x) => x / cap.radius),
  });
  return { name: "flat found for a cap", triangles: [...triangles], positions: [...positions], rim, pull, layers: inverseLayers, form: { kind: "sphere", radius: cap.radius }, ours: { uv: [...uv], pressure: [...pressure], settled, exact } };
}

writeFileSync(join(process.argv[2]!, "pull-over.json"), JSON.stringify({ formStiffness, tackStiffness, wrap: (strip.wrapDeg * Math.PI) / 180, pulled: theCases().map(pulled), drawn: [0.15, 0.3].map(drawn), inverse: inverse(2) }));
