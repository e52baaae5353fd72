import type { LastPair } from "#job/pair.ts";
import type { LineSettings } from "#lines/lines.ts";

type Vec = readonly number[];
export type HandleKey = "throat" | "back" | "inner" | "outer";

/** One setting that a handle moves, and how far one unit of it moves the handle: mm on the last, mm on the card. */
export interface HandleMove {
  readonly setting: keyof LineSettings;
  readonly onLast: Vec;
  readonly onCard: readonly Vec[];
}

/** A place on the lines that can be dragged. On the card a back point stands on both banks, hence a list. */
export interface Handle {
  readonly key: HandleKey;
  readonly name: string;
  readonly onLast: Vec;
  readonly onCard: readonly Vec[];
  readonly moves: readonly HandleMove[];
}

export function handlesOf({ last, shell, flat, lines }: LastPair): readonly Handle[] {
  const { positions } = shell.mesh;
  const e = shell.edges;
  const p = (v: number): Vec => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!];
  const q = (v: number): Vec => [flat.uv[2 * v]!, flat.uv[2 * v + 1]!];

  const atEnd = (key: HandleKey, name: string, setting: keyof LineSettings, edges: readonly Uint32Array[]): Handle => {
    const ends = edges.map((edge) => ({ end: edge.at(-1)!, before: edge.at(-4) ?? edge[0]! }));
    const first = ends[0]!;
    const move = {
      setting,
      onLast: toward(p(first.before), p(first.end)),
      onCard: ends.map(({ end, before }) => toward(q(before), q(end))),
    };
    return { key, name, onLast: p(first.end), onCard: ends.map(({ end }) => q(end)), moves: [move] };
  };

  const seatX = last.landmarks.seatPoint[0];
  const length = last.landmarks.toePoint[0] - seatX;
  const low = (key: HandleKey, name: string, height: keyof LineSettings, place: keyof LineSettings, topline: Uint32Array, feather: Uint32Array): Handle => {
    const i = nearest(topline, (v) => Math.abs(positions[3 * v]! - seatX - lines.settings[place] * length));
    const v = topline[i]!;
    const foot = feather[nearest(feather, (f) => distance(p(f), p(v)))]!;
    const heel = topline[Math.max(0, i - 3)]!;
    const toe = topline[Math.min(topline.length - 1, i + 3)]!;
    const along = scale(toward(p(heel), p(toe)), length / Math.max(0.3, toward(p(heel), p(toe))[0]!));
    const onCard = scale(toward(q(heel), q(toe)), norm(along));
    const moves = [
      { setting: height, onLast: toward(p(foot), p(v)), onCard: [toward(q(foot), q(v))] },
      { setting: place, onLast: along, onCard: [onCard] },
    ];
    return { key, name, onLast: p(v), onCard: [q(v)], moves };
  };

  return [
    atEnd("throat", "throat", "throatDepthMm", [e.centre]),
    atEnd("back", "back point", "backHeightMm", [e.backMedial, e.backLateral]),
    low("inner", "lowest place, inner side", "sideHeightMedialMm", "lowestAtMedial", e.toplineMedial, e.featherMedial),
    low("outer", "lowest place, outer side", "sideHeightLateralMm", "lowestAtLateral", e.toplineLateral, e.featherLateral),
  ];
}

function nearest(list: Uint32Array, cost: (v: number) => number): number {
  let best = 0;
  for (let i = 1; i < list.length; i++) if (cost(list[i]!) < cost(list[best]!)) best = i;
  return best;
}

const distance = (a: Vec, b: Vec): number => norm(a.map((x, i) => x - b[i]!));
const norm = (a: Vec): number => Math.sqrt(a.reduce((s, x) => s + x * x, 0));
const scale = (a: Vec, by: number): Vec => a.map((x) => x * by);

/** Unit vector from `a` to `b`; zero where they are one. */
function toward(a: Vec, b: Vec): Vec {
  const d = b.map((x, i) => x - a[i]!);
  return scale(d, 1 / (norm(d) || 1));
}
