import type { LastPair } from "#job/pair.ts";
import { say } from "../state/numbers.ts";
import { liftedOff } from "./drawn-lines.ts";
import { mapColour } from "./map-scale.ts";
import { lay, levelLines, levelsFor, scaleEnd, stretchAtVertices, worstOf, type LevelLine, type MapOf } from "./strain.ts";

/** The stretch of one flat shell, ready to be laid on the last and on the card. */
export interface StretchMap {
  readonly of: MapOf;
  /** End of the scale as a share: 0.06 means ± 6 %. */
  readonly end: number;
  /** Colour of each vertex, r g b 0 … 255. */
  readonly colours: Uint8Array;
  readonly onLast: readonly Float64Array[];
  readonly onCard: readonly Float64Array[];
  readonly numbers: readonly { readonly key: string; readonly text: string; readonly onLast: readonly number[]; readonly onCard: readonly number[] }[];
  readonly worst: { readonly value: number; readonly onLast: readonly number[]; readonly onCard: readonly number[] };
}

export function stretchMap({ flat }: Pick<LastPair, "flat">, of: MapOf): StretchMap {
  const { positions, triangles } = flat.shell.mesh;
  const stretch = stretchAtVertices(flat, of);
  const end = scaleEnd(stretch);
  const colours = new Uint8Array(stretch.length * 3);
  stretch.forEach((value, v) => colours.set(mapColour(value / end), 3 * v));
  const lifted = liftedOff(flat.shell.mesh);
  const lines = levelLines(triangles, stretch, levelsFor(end)).filter((l) => l.points.length > 12);
  const worst = worstOf(stretch, of);
  return {
    of,
    end,
    colours,
    onLast: lines.map((l) => lay(l.points, lifted, 3)),
    onCard: lines.map((l) => lay(l.points, flat.uv, 2)),
    numbers: numbersFor(lines, positions, flat.uv),
    worst: {
      value: worst.value,
      onLast: [...positions.subarray(3 * worst.vertex, 3 * worst.vertex + 3)],
      onCard: [...flat.uv.subarray(2 * worst.vertex, 2 * worst.vertex + 2)],
    },
  };
}

/** Numbers nearer to each other than this on the card would cover one another, mm. */
const apartMm = 17;

/** One number on each of the longer lines, at the place nearest to its middle that is free. */
function numbersFor(lines: readonly LevelLine[], positions: Float64Array, uv: Float64Array): StretchMap["numbers"] {
  const out: StretchMap["numbers"][number][] = [];
  for (const l of lines.filter((line) => line.points.length > 24).sort((a, b) => b.points.length - a.points.length)) {
    const n = l.points.length;
    for (const share of [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95]) {
      const place = [l.points[Math.floor((n - 1) * share)]!];
      const onCard = [...lay(place, uv, 2)];
      if (out.some((o) => Math.hypot(o.onCard[0]! - onCard[0]!, o.onCard[1]! - onCard[1]!) < apartMm)) continue;
      out.push({ key: `${out.length}`, text: `${l.level > 0 ? "+" : ""}${say(l.level * 100, 1)}`, onLast: [...lay(place, positions, 3)], onCard });
      break;
    }
  }
  return out;
}
