import type { Piece } from "#pieces/piece.ts";

/** Pieces of one name, with their mirrored twins. */
export interface PieceKind {
  readonly name: string;
  readonly net: boolean;
  readonly material: string;
  /** How many one pair needs, both feet together. */
  readonly count: number;
  readonly areaMm2: number;
  /** One to show: of the right foot where there is one. */
  readonly shown: Piece;
}

export function kindsOf(pieces: readonly Piece[]): readonly PieceKind[] {
  const byName = new Map<string, Piece[]>();
  for (const p of pieces) byName.set(p.name, [...(byName.get(p.name) ?? []), p]);
  return [...byName].map(([name, all]) => {
    const shown = all.find((p) => p.side === "right") ?? all[0]!;
    return { name, net: shown.net, material: shown.material, count: all.reduce((n, p) => n + p.perPair, 0), areaMm2: shown.areaMm2, shown };
  });
}
