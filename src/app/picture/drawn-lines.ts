import type { LastPair } from "#job/pair.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { vertexNormals } from "#mesh/normals.ts";

export type LineKey = "topline" | "feather" | "centre" | "back";

/** One line of the design on both pictures: the same vertices of the shell, on the last (x y z) and on the card (u v). */
export interface DrawnLine {
  readonly key: LineKey;
  readonly name: string;
  /** Lifted a hair off the surface, so that it is seen on top of it. */
  readonly onLast: readonly Float64Array[];
  readonly onCard: readonly Float64Array[];
  readonly lengthOnLastMm: number;
  readonly lengthOnCardMm: number;
}

const names: Readonly<Record<LineKey, string>> = { topline: "topline", feather: "feather line", centre: "front centre", back: "back seam" };

/** How far lines are drawn above the last, mm. */
const liftMm = 1;

/** The shell's vertices moved outward by a hair, for what is drawn on it. */
export function liftedOff(mesh: Mesh): Float64Array {
  const normals = vertexNormals(mesh);
  return mesh.positions.map((x, i) => x + liftMm * normals[i]!);
}

export function drawnLines({ shell, flat }: Pick<LastPair, "shell" | "flat">): readonly DrawnLine[] {
  const lifted = liftedOff(shell.mesh);
  const e = shell.edges;
  const runs: Readonly<Record<LineKey, readonly Uint32Array[]>> = {
    feather: [e.featherMedial, e.featherLateral],
    centre: [e.centre],
    back: [e.backMedial, e.backLateral],
    topline: [e.toplineMedial, e.toplineLateral],
  };
  return (Object.keys(runs) as LineKey[]).map((key) => {
    const onLast = runs[key].map((run) => pick(shell.mesh.positions, run, 3));
    const onCard = runs[key].map((run) => pick(flat.uv, run, 2));
    // The two banks of the back seam are one line on the last.
    const once = key === "back" ? onLast.slice(0, 1) : onLast;
    const onceCard = key === "back" ? onCard.slice(0, 1) : onCard;
    const drawn = (key === "back" ? runs[key].slice(0, 1) : runs[key]).map((run) => pick(lifted, run, 3));
    return { key, name: names[key], onLast: drawn, onCard, lengthOnLastMm: lengthOf(once, 3), lengthOnCardMm: lengthOf(onceCard, 2) };
  });
}

/** Topline, back and feather edge of the outer half on the card, folded over the centre line on to the inner one. */
export function outerFolded({ flat: { shell, uv } }: Pick<LastPair, "flat">): readonly Float64Array[] {
  const { toplineLateral, backLateral, featherLateral } = shell.edges;
  return [toplineLateral, backLateral, featherLateral].map((run) => pick(uv, run, 2).map((x, i) => (i % 2 === 1 ? -x : x)));
}

function pick(from: Float64Array, run: Uint32Array, size: number): Float64Array {
  const out = new Float64Array(run.length * size);
  run.forEach((v, i) => out.set(from.subarray(v * size, v * size + size), i * size));
  return out;
}

function lengthOf(lines: readonly Float64Array[], size: number): number {
  let sum = 0;
  for (const line of lines)
    for (let i = size; i < line.length; i += size) {
      let square = 0;
      for (let k = 0; k < size; k++) square += (line[i + k]! - line[i + k - size]!) ** 2;
      sum += Math.sqrt(square);
    }
  return sum;
}

/** The card's outline, once round: feather to the toe and back, up one bank of the back, along the topline, down the other. */
export function cardOutline({ shell, flat }: Pick<LastPair, "shell" | "flat">): Float64Array {
  const e = shell.edges;
  const round = [...e.featherMedial, ...[...e.featherLateral].reverse(), ...e.backLateral, ...e.toplineLateral, ...[...e.toplineMedial].reverse(), ...[...e.backMedial].reverse()];
  return pick(flat.uv, Uint32Array.from(round), 2);
}
