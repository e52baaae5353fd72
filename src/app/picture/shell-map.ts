import type { LastPair } from "#job/pair.ts";
import type { Proof } from "#job/proof.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { TriangleLocator } from "#plane/triangle-locator.ts";
import { say } from "../state/numbers.ts";
import { liftedOff } from "./drawn-lines.ts";
import { mapColour } from "./map-scale.ts";
import { lay, levelLines, levelsFor, scaleEnd, scaleEndMm, stretchAtVertices, worstOf, type LevelLine, type MapOf } from "./strain.ts";

/** What one shell asks of the leather, or how far its card stands off, ready to be laid on the last and on the card. */
export interface ShellMap {
  readonly of: MapOf;
  /** End of the scale: a share (0.06 means ± 6 %), or mm for what stands off. */
  readonly end: number;
  /** The surface that it is laid on: its places on the last, and x0 y0 … on the card. */
  readonly mesh: Mesh;
  readonly uv: Float64Array;
  /** Colour of each vertex, r g b 0 … 255. */
  readonly colours: Uint8Array;
  readonly onLast: readonly Float64Array[];
  readonly onCard: readonly Float64Array[];
  readonly numbers: readonly { readonly key: string; readonly text: string; readonly onLast: readonly number[]; readonly onCard: readonly number[] }[];
  readonly worst: { readonly value: number; readonly onLast: readonly number[]; readonly onCard: readonly number[] };
}

/** Nothing where the card has not been laid back on the last yet. */
export function shellMap({ flat }: Pick<LastPair, "flat">, proof: Proof | undefined, of: MapOf): ShellMap | undefined {
  if (of !== "stand-off") {
    const stretch = stretchAtVertices(flat, of);
    return mapOn(flat.onLast.mesh, flat.uv, stretch, of, scaleEnd(stretch));
  }
  if (!proof) return undefined;
  const standOff = spread(proof, flat.uv);
  return mapOn(flat.onLast.mesh, flat.uv, standOff, of, scaleEndMm(standOff));
}

/** How far a place of the card's rim may lie outside the coarse card, as a share of its triangle. */
const outside = 0.5;

/** What the coarse card that was laid back stands off, at the places of the fine one: its own triangles would cut through the last. */
function spread({ check: { mesh: { triangles }, standOff }, checkedUv }: Proof, uv: Float64Array): Float64Array {
  const locator = new TriangleLocator(checkedUv, triangles);
  return Float64Array.from({ length: uv.length / 2 }, (_, v) => {
    const hit = locator.find(uv[2 * v]!, uv[2 * v + 1]!, outside);
    if (!hit) return 0;
    return Math.max(0, hit.weights.reduce((sum, w, k) => sum + w * standOff[triangles[3 * hit.triangle + k]!]!, 0));
  });
}

function mapOn(mesh: Mesh, uv: Float64Array, values: Float64Array, of: MapOf, end: number): ShellMap {
  const colours = new Uint8Array(values.length * 3);
  values.forEach((value, v) => colours.set(mapColour(value / end), 3 * v));
  const lifted = liftedOff(mesh);
  const lines = levelLines(mesh.triangles, values, levelsFor(end)).filter((l) => l.points.length > 12);
  const worst = worstOf(values, of);
  return {
    of,
    end,
    mesh,
    uv,
    colours,
    onLast: lines.map((l) => lay(l.points, lifted, 3)),
    onCard: lines.map((l) => lay(l.points, uv, 2)),
    numbers: numbersFor(lines, mesh.positions, uv, of),
    worst: { value: worst.value, onLast: [...mesh.positions.subarray(3 * worst.vertex, 3 * worst.vertex + 3)], onCard: [...uv.subarray(2 * worst.vertex, 2 * worst.vertex + 2)] },
  };
}

/** A value of the map as it is written in picture and legend: percent with its sign, or plain mm. */
export function mapNumber(of: MapOf, value: number, decimals = 1): string {
  return of === "stand-off" ? say(value, Math.max(decimals, 2)) : `${value > 0 ? "+" : ""}${say(value * 100, decimals)}`;
}

/** Numbers nearer to each other than this on the card would cover one another, mm. */
const apartMm = 17;

/** One number on each of the longer lines, at the place nearest to its middle that is free. */
function numbersFor(lines: readonly LevelLine[], positions: Float64Array, uv: Float64Array, of: MapOf): ShellMap["numbers"] {
  const out: ShellMap["numbers"][number][] = [];
  for (const l of lines.filter((line) => line.points.length > 24).sort((a, b) => b.points.length - a.points.length)) {
    const n = l.points.length;
    for (const share of [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95]) {
      const place = [l.points[Math.floor((n - 1) * share)]!];
      const onCard = [...lay(place, uv, 2)];
      if (out.some((o) => Math.hypot(o.onCard[0]! - onCard[0]!, o.onCard[1]! - onCard[1]!) < apartMm)) continue;
      out.push({ key: `${out.length}`, text: mapNumber(of, l.level), onLast: [...lay(place, positions, 3)], onCard });
      break;
    }
  }
  return out;
}
