import Flatbush from "flatbush";
import { must } from "#base/bug.ts";
import { selfCrossing } from "#plane/crossing.ts";
import type { Adjacency } from "#solve/adjacency.ts";
import { distanceInSpace } from "./distance.ts";

/** Whether the rim of a flat piece crosses or touches itself. A map without folds whose rim does not is one-to-one. */
export function rimCrosses(rim: Uint32Array, uv: Float64Array): boolean {
  const xy = new Float64Array(2 * rim.length);
  for (let k = 0; k < rim.length; k++) {
    xy[2 * k] = uv[2 * rim[k]!]!;
    xy[2 * k + 1] = uv[2 * rim[k]! + 1]!;
  }
  return selfCrossing({ xy }) !== undefined;
}

/** Places of the rim that lie near each other on the surface: they are neighbours, not parts that must be kept apart. */
export interface NearPlaces {
  has(k: number, l: number): boolean;
}

/** Pairs of places of the rim (counted along it) that are joined by a way along edges of at most `reachMm`. */
export function nearPlaces(graph: Adjacency, rim: Uint32Array, positions: Float64Array, reachMm: number): NearPlaces {
  const placeOf = new Map<number, number>();
  rim.forEach((i, k) => placeOf.set(i, k));
  const near = new Set<number>();
  rim.forEach((from, k) => {
    for (const i of within(graph, positions, from, reachMm)) {
      const l = placeOf.get(i);
      if (l !== undefined) near.add(k * rim.length + l);
    }
  });
  return { has: (k, l) => near.has(k * rim.length + l) };
}

/** Vertices within a way of `reachMm` along edges (Dijkstra 1959; few enough to look through for the next). */
function within({ start, list }: Adjacency, positions: Float64Array, from: number, reachMm: number): Iterable<number> {
  const far = new Map<number, number>([[from, 0]]);
  const open = new Set<number>([from]);
  while (open.size > 0) {
    let here = -1;
    for (const i of open) if (here < 0 || far.get(i)! < far.get(here)!) here = i;
    open.delete(here);
    for (let q = start[here]!; q < start[here + 1]!; q++) {
      const there = list[q]!;
      const way = far.get(here)! + distanceInSpace(positions, here, there);
      if (way > reachMm || way >= (far.get(there) ?? Infinity)) continue;
      far.set(there, way);
      open.add(there);
    }
  }
  return far.keys();
}

/** A rim vertex closer to an edge of the rim than allowed; (nu, nv) points from the edge's nearest point, `along` of the way from a to b, to it. */
export interface Contact {
  readonly vertex: number;
  readonly a: number;
  readonly b: number;
  readonly along: number;
  readonly distance: number;
  readonly nu: number;
  readonly nv: number;
  /** Place of the vertex along the rim. */
  readonly place: number;
}

/** All pairs of rim vertex and rim edge closer than `clearMm`, those near on the surface left out. */
export function contactsOf(rim: Uint32Array, near: NearPlaces, uv: Float64Array, clearMm: number): Contact[] {
  const count = rim.length;
  const index = new Flatbush(count);
  for (let k = 0; k < count; k++) {
    const [a, b] = [2 * rim[k]!, 2 * rim[k + 1 === count ? 0 : k + 1]!];
    index.add(Math.min(uv[a]!, uv[b]!), Math.min(uv[a + 1]!, uv[b + 1]!), Math.max(uv[a]!, uv[b]!), Math.max(uv[a + 1]!, uv[b + 1]!));
  }
  index.finish();
  const contacts: Contact[] = [];
  for (let place = 0; place < count; place++) {
    const vertex = rim[place]!;
    const [x, y] = [uv[2 * vertex]!, uv[2 * vertex + 1]!];
    const found = index.search(x - clearMm, y - clearMm, x + clearMm, y + clearMm).sort((k, l) => k - l);
    for (const k of found) {
      const next = k + 1 === count ? 0 : k + 1;
      if (near.has(place, k) || near.has(place, next)) continue;
      const contact = contactOf(vertex, place, rim[k]!, rim[next]!, uv);
      if (contact.distance < clearMm) contacts.push(contact);
    }
  }
  return contacts;
}

function contactOf(vertex: number, place: number, a: number, b: number, uv: Float64Array): Contact {
  const [ex, ey] = [uv[2 * b]! - uv[2 * a]!, uv[2 * b + 1]! - uv[2 * a + 1]!];
  const [px, py] = [uv[2 * vertex]! - uv[2 * a]!, uv[2 * vertex + 1]! - uv[2 * a + 1]!];
  const along = Math.min(1, Math.max(0, (ex * px + ey * py) / (ex * ex + ey * ey)));
  const [dx, dy] = [px - along * ex, py - along * ey];
  const distance = Math.sqrt(dx * dx + dy * dy);
  must(distance > 0, "a rim that does not touch itself");
  return { vertex, place, a, b, along, distance, nu: dx / distance, nv: dy / distance };
}
