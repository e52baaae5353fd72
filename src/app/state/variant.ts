import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import type { Piece } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";
import { mm, say } from "./numbers.ts";
import { listed } from "#base/listed.ts";
import { listedPieces } from "./listed.ts";
import { greatestApart, type Apart } from "./outline-apart.ts";
import { kindsOf, type PieceKind } from "./piece-kinds.ts";

/** What the maker keeps to hold the next against: all that is compared of it, and the work to go back to. */
export interface Variant {
  readonly job: Job;
  readonly pieces: readonly Piece[];
  /** Of both halves on the flat, mm. */
  readonly toplineMm: number;
}

export const variantOf = ({ job, pieces, ...pair }: Pick<Pair, "job" | "pieces"> & Pick<Pair, "from">): Variant => ({ job, pieces, toplineMm: toplineOf(pair as Pair) });

function toplineOf(pair: Pair): number {
  return pair.from === "last" ? pair.toplineMm.flat : pair.tape.medial.lengths.topline + pair.tape.lateral.lengths.topline;
}

/** One piece of both variants. */
export interface PieceApart {
  readonly name: string;
  readonly apart: Apart;
  readonly perimeterMm: number;
  readonly areaMm2: number;
}

/** How the pieces at hand differ from A's. All differences are those of now against A. */
export interface Compared {
  readonly toplineMm: number;
  /** Only those that are another, the farthest apart first. */
  readonly pieces: readonly PieceApart[];
  readonly onlyNow: readonly string[];
  readonly onlyInA: readonly string[];
}

/** Less is not to be seen on the bench, mm. */
const leastMm = 0.05;

export function comparedWith(a: Variant, now: Variant): Compared {
  const was = new Map(kindsOf(a.pieces).map((k) => [k.name, k]));
  const is = kindsOf(now.pieces);
  const both = is.flatMap((k) => {
    const old = was.get(k.name);
    return old ? [{ name: k.name, apart: greatestApart(old.shown.outline, k.shown.outline), perimeterMm: k.perimeterMm - old.perimeterMm, areaMm2: k.areaMm2 - old.areaMm2 }] : [];
  });
  const here = new Set(is.map((k) => k.name));
  return {
    toplineMm: now.toplineMm - a.toplineMm,
    pieces: both.filter((p) => p.apart.mm >= leastMm).sort((p, q) => q.apart.mm - p.apart.mm),
    onlyNow: is.filter((k) => !was.has(k.name)).map((k) => k.name),
    onlyInA: [...was.keys()].filter((name) => !here.has(name)),
  };
}

const signed = (value: number, more: string, less: string, decimals: number, unit: string): string => `${say(Math.abs(value), decimals)}\u00a0${unit} ${value > 0 ? more : less}`;

/** The whole in one sentence. */
export function comparedWords({ toplineMm, pieces, onlyNow, onlyInA }: Compared): string {
  const topline = Math.abs(toplineMm) < leastMm ? "The topline is as long as A’s." : `The topline is ${signed(toplineMm, "longer", "shorter", 1, "mm")} than A’s.`;
  const same = pieces.length === 0 ? "Every piece that both have is the same." : `${pieces.length === 1 ? "One piece differs" : `${pieces.length} pieces differ`}: ${listed(pieces.map((p) => `${p.name.replace(", net", " (net)")} by up to ${mm(p.apart.mm)}`))}.`;
  return [topline, same, onlyNow.length > 0 && `A has no ${listedPieces(onlyNow)}.`, onlyInA.length > 0 && `Only A has ${listedPieces(onlyInA)}.`].filter(Boolean).join(" ");
}

/** One piece in a sentence, with the place by the nearest mark that has a name. */
export function pieceApartWords({ apart, perimeterMm, areaMm2 }: PieceApart, kind: PieceKind): string {
  const round = Math.abs(perimeterMm) < leastMm ? "as far round" : `${signed(perimeterMm, "farther", "less far", 1, "mm")} round`;
  const area = Math.abs(areaMm2) < 5 ? "as large" : signed(areaMm2 / 100, "larger", "smaller", 1, "cm²");
  return `At most ${mm(apart.mm)} from A, ${placeWords(apart.at, kind)}. It is ${round} and ${area}.`;
}

/** Where on a piece, as the maker calls it: at a named mark, or else by its sides. */
export function placeWords([x, y]: readonly [number, number], { shown }: PieceKind): string {
  let best: { readonly name: string; readonly far: number } | undefined;
  for (const m of shown.marks) {
    if (m.kind === "text" || m.kind === "arrow") continue;
    // The grips of lasting are numbers; a maker looks for the line, the corner, the notch.
    if (m.kind === "line" && m.as === "grip") continue;
    for (const [px, py] of m.kind === "line" ? ends(m.line.xy) : [m.at]) {
      const far = Math.hypot(px - x, py - y);
      if (!best || far < best.far) best = { name: m.name.replace(/, (in|out)side$/, ""), far };
    }
  }
  if (best && best.far < 12) return `at the ${best.name}`;
  if (best) return `${mm(best.far, 0)} from the ${best.name}`;
  const { minX, maxX, minY, maxY } = bounds(shown.outline);
  return `${mm(maxX - x, 0)} from its front end, ${mm(Math.min(maxY - y, y - minY), 0)} from its ${maxY - y < y - minY ? "inner" : "outer"} edge${maxX - x > x - minX ? ", toward the back" : ""}`;
}

const ends = (xy: Float64Array): readonly (readonly [number, number])[] => [[xy[0]!, xy[1]!], [xy.at(-2)!, xy.at(-1)!]];
