import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { area, bounds, diagonal, volume } from "./area.ts";
import { duplicateTriangles } from "#mesh/repair/drop-duplicates.ts";
import { fillHoles, type FilledHole } from "#mesh/repair/fill-holes.ts";
import { partFar } from "#mesh/repair/far.ts";
import { largestPart, mainPart } from "#mesh/repair/main-part.ts";
import { triangleCount, type Mesh } from "./mesh.ts";
import { CROWDED, edgePartners } from "./neighbours.ts";
import { cappedVolume, orientAlike, turnTriangles } from "#mesh/repair/orient.ts";
import { outerWall } from "#mesh/repair/outer-wall.ts";
import { resample } from "#mesh/repair/resample.ts";
import { sew } from "#mesh/repair/sew.ts";
import { dropTable } from "#mesh/repair/table.ts";
import { thin } from "#mesh/repair/thin.ts";
import { uncross } from "#mesh/repair/uncross.ts";
import { untangle } from "#mesh/repair/untangle.ts";
import { partOfTriangle } from "./topology.ts";
import { compact, keepTriangles, weld } from "./weld.ts";

/** Points nearer than this share of the scan's diagonal are one point: 3 µm on a last of 300 mm. */
const WELD = 1e-5;
/** A piece hanging on an edge that others share is a flap when it is smaller than this share of the largest. */
const FLAP = 0.05;
/** Volume against area^1.5 below which a body is a sheet: a ball has 0.094, a last about 0.056, a plate 1 mm thick of its size 0.002. */
const THINNEST = 0.003;
/** Holes wider than this share of the scan's length are told one by one, and those wider than the second must be looked at. */
const TOLD = 0.03;
const LOOKED_AT = 0.12;
const MOST_TOLD = 6;
/** More triangles than this share that fit in no surface mean that there is no order to mend. */
const MESSY = 0.003;
/** Fewer triangles than this are no scan from which a surface could be made anew. */
const FEWEST = 200;
/** Finer scans are thinned: 250 000 triangles on a last are edges of 0.7 mm. */
const FINE = 300_000;
const THINNED = 250_000;

/**
 * Makes one closed, outward, manifold surface of a scan that nowhere runs through itself, in its own unit and place. What can be mended where
 * it is wrong is mended there: welded, sewn, copies, flaps, debris and table left out, turned, parted, holes closed, crossings cut out; the
 * rest of the scan stays to the last digit. Where that does not do (torn into several, two skins that cross, crossings everywhere) the whole
 * surface is made anew from what the scan winds around. Says what it did, and where in the scan's own coordinates
 * where that is one place. Throws a Refusal when no body can be made of it. A ring or other
 * body with handles passes; that is for others to judge (topology.ts). Method and limits: docs/method/scan.md.
 */
export function cleanScan(mesh: Mesh, watch: Watch): { mesh: Mesh; repairs: Finding[] } {
  watch("clean", 0);
  const parted = partFar(mesh);
  const near = parted?.near ?? mesh;
  const size = diagonal(near);
  if (!(size > 0)) throw new Refusal(finding("mesh-no-body", { why: "all its points lie in one place" }));
  const repairs: Finding[] = parted ? [finding("far-dropped", { triangles: parted.count })] : [];
  const welded = withoutCopies(weld(near, WELD * size), repairs);
  if (triangleCount(welded) < 4) throw new Refusal(finding("mesh-no-body", { why: "its triangles have no area" }));
  const before = repairs.length;
  const mended = mendedInPlace(welded, size, repairs, watch);
  if (typeof mended === "string") repairs.length = before; // what was tried in vain was not done
  const closed = withoutInside(typeof mended === "string" ? madeAnew(welded, mended, size, repairs, watch) : mended, size, repairs);
  if (!(volume(closed) > THINNEST * area(closed) ** 1.5)) throw new Refusal(finding("mesh-no-body", { why: "for its surface it holds next to no volume, like a sheet" }));
  watch("clean", 1);
  return { mesh: compact(closed), repairs };
}

/** The scan mended where it is wrong, or in words why that does not do. */
function mendedInPlace(welded: Mesh, size: number, repairs: Finding[], watch: Watch): Mesh | string {
  watch("clean", 0.2);
  const surface = oneSurface(welded, size, repairs, watch);
  if (surface.messy > MESSY * triangleCount(welded)) return "its triangles do not hang together in an orderly way";
  const main = mainPart(surface.mesh, size);
  if (!main.whole) return "it is torn into several sheets or lies in skins one over another";
  repairs.push(...main.repairs);
  return closedBody(main.mesh, size, repairs, watch) ?? "it runs through itself";
}

/** Sewn, turned alike, at most two triangles at each edge. `messy`: triangles and edges that fit in no surface. */
function oneSurface(welded: Mesh, size: number, repairs: Finding[], watch: Watch): { mesh: Mesh; messy: number } {
  let now = welded;
  const sewn = sew(now, size);
  if (sewn.points > 0) {
    repairs.push(finding("cracks-sewn", { points: sewn.points, share: sewn.widest / size }));
    now = withoutCopies(sewn.mesh, repairs);
  }
  watch("clean", 0.3);
  const alike = turnedAlike(now, repairs);
  watch("clean", 0.4);
  const parted = untangle(alike.mesh);
  if (parted.crowded > 0) repairs.push(finding("touching-parted", { edges: parted.crowded, dropped: parted.dropped }));
  watch("clean", 0.5);
  return { mesh: parted.mesh, messy: alike.misfits + parted.dropped };
}

/** One part that hangs together, closed; undefined when it runs through itself more than can be cut out. */
function closedBody(mesh: Mesh, size: number, repairs: Finding[], watch: Watch): Mesh | undefined {
  let now = mesh;
  if (cappedVolume(now) < 0) {
    now = turnTriangles(now, () => true);
    repairs.push(finding("mesh-turned", {}));
  }
  const table = dropTable(now);
  if (table.share > 0) {
    repairs.push(finding("table-dropped", { share: table.share }));
    now = largestPart(untangle(table.mesh).mesh);
  }
  now = notTooFine(now, size, repairs, watch);
  watch("clean", 0.7);
  const filled = fillHoles(now);
  watch("clean", 0.8);
  const { mesh: plain, triangles, at } = uncross(filled.mesh);
  watch("clean", 0.95);
  if (plain) tellHoles(filled.holes, now, repairs);
  if (plain && triangles > 0) repairs.push(finding("crossings-cut", { triangles }, at));
  return plain && duplicateTriangles(plain).count === 0 ? plain : undefined;
}

/** The whole surface made anew from everything the scan holds. */
function madeAnew(welded: Mesh, why: string, size: number, repairs: Finding[], watch: Watch): Mesh {
  const anew = triangleCount(welded) < FEWEST ? undefined : resample(welded, size, watch);
  if (!anew) throw new Refusal(finding("mesh-in-bits", { parts: partOfTriangle(welded).count }));
  repairs.push(finding("made-anew", { why, triangles: triangleCount(anew.mesh), open: 1 - anew.covered }));
  return anew.mesh;
}

/** Of a shell with an open mouth the outer wall, its mouth closed; any other body, and a shell of which that makes none, as it is. */
function withoutInside(mesh: Mesh, size: number, repairs: Finding[]): Mesh {
  const wall = outerWall(mesh, size);
  if (!wall) return mesh;
  const { mesh: filled, holes } = fillHoles(wall);
  const { mesh: plain } = uncross(filled);
  if (!plain || duplicateTriangles(plain).count > 0) return mesh;
  repairs.push(finding("outer-wall-kept", {}));
  tellHoles(holes, wall, repairs);
  return plain;
}

function withoutCopies(mesh: Mesh, repairs: Finding[]): Mesh {
  const { duplicate, count } = duplicateTriangles(mesh);
  if (count === 0) return mesh;
  repairs.push(finding("duplicates-dropped", { triangles: count }));
  return keepTriangles(mesh, (t) => !duplicate[t]);
}

/** Turns neighbours alike, after small pieces were taken off that hang on an edge which two others share already. */
function turnedAlike(mesh: Mesh, repairs: Finding[]): { mesh: Mesh; misfits: number } {
  let oriented = orientAlike(mesh);
  let flaps = 0;
  for (let round = 0; round < 4; round++) {
    const hanging = hangingSheets(oriented);
    if (hanging.size === 0) break;
    const { sheet } = oriented;
    const left = keepTriangles(oriented.mesh, (t) => !hanging.has(sheet[t]!));
    flaps += sheet.length - triangleCount(left);
    const turned = oriented.turned;
    oriented = orientAlike(left);
    oriented.turned += turned;
  }
  if (flaps > 0) repairs.push(finding("flaps-dropped", { triangles: flaps }));
  if (oriented.turned > 0) repairs.push(finding("triangles-turned", { triangles: oriented.turned }));
  if (oriented.clashes > 0) repairs.push(finding("one-sided", { edges: oriented.clashes }));
  return { mesh: oriented.mesh, misfits: flaps + oriented.clashes };
}

function hangingSheets({ mesh, sheet, sheetAreas }: ReturnType<typeof orientAlike>): Set<number> {
  const hanging = new Set<number>();
  const { partner, crowdedEdges } = edgePartners(mesh);
  if (crowdedEdges === 0) return hanging;
  const small = FLAP * Math.max(...sheetAreas);
  for (let h = 0; h < partner.length; h++) {
    const own = sheet[(h - (h % 3)) / 3]!;
    if (partner[h] === CROWDED && sheetAreas[own]! < small) hanging.add(own);
  }
  return hanging;
}

function notTooFine(mesh: Mesh, size: number, repairs: Finding[], watch: Watch): Mesh {
  const from = triangleCount(mesh);
  if (from <= FINE) return mesh;
  const { mesh: thinned, error } = thin(mesh, THINNED, (_, f) => watch("clean", 0.5 + 0.2 * f));
  repairs.push(finding("mesh-thinned", { from, to: triangleCount(thinned), share: error / size }));
  return thinned;
}

function tellHoles(holes: readonly FilledHole[], mesh: Mesh, repairs: Finding[]): void {
  const { low, high } = bounds(mesh);
  const length = Math.max(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
  // a sieve is told as one thing, not hole by hole
  const sieve = holes.filter((h) => h.across > TOLD * length && h.across <= LOOKED_AT * length).length > MOST_TOLD;
  const small = holes.filter((h) => h.across <= (sieve ? LOOKED_AT : TOLD) * length);
  if (small.length > 0) {
    const widest = small.reduce((a, b) => (b.across > a.across ? b : a));
    repairs.push(finding("holes-closed", { holes: small.length, across: widest.across / length }, widest.middle));
  }
  for (const h of holes) {
    if (small.includes(h)) continue;
    const data = { edges: h.edges, across: h.across / length, shape: h.shape };
    repairs.push(h.across > LOOKED_AT * length ? finding("big-hole-closed", data, h.middle) : finding("hole-closed", data, h.middle));
  }
}
