import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import type { Piece } from "#pieces/piece.ts";
import { greatestApart } from "./outline-apart.ts";
import { listedPieces } from "./listed.ts";

/** What an edit brought about. */
export interface Followed {
  /** The numbers and words that differ: "pieces backSeamMm", "parts cut". */
  readonly keys: readonly string[];
  /** Names of the pieces whose outline changed, of those that are new, and of those that are gone. */
  readonly changed: readonly string[];
  readonly come: readonly string[];
  readonly gone: readonly string[];
}

/** Less than a knife can follow, mm: what moved by no more stayed. */
const stayedMm = 0.01;

/** What the pieces of one pair have become in the next. */
export function followed(before: Pick<Pair, "job" | "pieces">, after: Pick<Pair, "job" | "pieces">): Followed {
  const was = firstOf(before.pieces);
  const is = firstOf(after.pieces);
  return {
    keys: keysThatDiffer(before.job, after.job),
    changed: [...is].filter(([name, p]) => was.has(name) && !sameOutline(was.get(name)!, p)).map(([name]) => name),
    come: [...is.keys()].filter((name) => !was.has(name)),
    gone: [...was.keys()].filter((name) => !is.has(name)),
  };
}

const firstOf = (pieces: readonly Piece[]): ReadonlyMap<string, Piece> => new Map([...pieces].reverse().sort((a, b) => Number(a.side === "right") - Number(b.side === "right")).map((p) => [p.name, p]));

function sameOutline(a: Piece, b: Piece): boolean {
  if (a.outline === b.outline) return true;
  if (Math.abs(a.perimeterMm - b.perimeterMm) > 0.05 || Math.abs(a.areaMm2 - b.areaMm2) > a.perimeterMm * stayedMm) return false;
  const [p, q] = [a.outline.xy, b.outline.xy];
  if (p.length === q.length && p.every((v, i) => Math.abs(v - q[i]!) <= stayedMm)) return true;
  return greatestApart(a.outline, b.outline).mm <= stayedMm;
}

const asked = ["lines", "shell", "pieces", "parts"] as const;

function keysThatDiffer(before: Job, after: Job): readonly string[] {
  return asked.flatMap((part) => {
    const [was, is] = [before[part] as Readonly<Record<string, unknown>>, after[part] as Readonly<Record<string, unknown>>];
    return [...new Set([...Object.keys(was), ...Object.keys(is)])].filter((key) => was[key] !== is[key]).map((key) => `${part} ${key}`);
  });
}

/** In words: "Changed with it: lining, inner quarter. New: vamp. No more: upper." Nothing where no piece is another one. */
export function followedWords({ changed, come, gone }: Followed): string | undefined {
  const said = [changed.length > 0 && `Changed with it: ${listedPieces(changed)}.`, come.length > 0 && `New: ${listedPieces(come)}.`, gone.length > 0 && `No more: ${listedPieces(gone)}.`].filter(Boolean);
  return said.length > 0 ? said.join(" ") : undefined;
}
