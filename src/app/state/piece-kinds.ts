import type { Material, Piece } from "#pieces/piece.ts";

/** Where the pieces of a pair lie on the bench. */
export const kindGroups = ["card to try on the last", "upper", "lining", "stiffening", "bottom", "heel", "extras"] as const;
export type KindGroup = (typeof kindGroups)[number];

/** Pieces of one name, with their mirrored twins. */
export interface PieceKind {
  readonly name: string;
  readonly net: boolean;
  readonly material: Material;
  readonly group: KindGroup;
  /** How many one pair needs, both feet together. */
  readonly count: number;
  readonly areaMm2: number;
  readonly perimeterMm: number;
  /** One to show: of the right foot where there is one. */
  readonly shown: Piece;
}

export function kindsOf(pieces: readonly Piece[]): readonly PieceKind[] {
  const byName = new Map<string, Piece[]>();
  for (const p of pieces) byName.set(p.name, [...(byName.get(p.name) ?? []), p]);
  return [...byName].map(([name, all]) => {
    const shown = all.find((p) => p.side === "right") ?? all[0]!;
    const { net, material, areaMm2, perimeterMm } = shown;
    return { name, net, material, group: groupOf(shown), count: all.reduce((n, p) => n + p.perPair, 0), areaMm2, perimeterMm, shown };
  });
}

const groupByMaterial: Partial<Record<Material, KindGroup>> = {
  card: "card to try on the last",
  "lining leather": "lining",
  stiffener: "stiffening",
  "toe puff": "stiffening",
  "side lining": "stiffening",
  tape: "stiffening",
  "insole board": "bottom",
  "second board": "bottom",
  shank: "bottom",
  filler: "bottom",
  "sole leather": "bottom",
  "sock leather": "bottom",
  "heel leather": "heel",
  elastic: "extras",
};

/** What a piece is cut from, where the material is called as the piece is. */
const materialWords: Partial<Record<Material, string>> = { shank: "shank steel", stiffener: "stiffener board", "toe puff": "puff sheet", "side lining": "woven lining", filler: "filler sheet" };
export const fromWords = (material: Material): string => materialWords[material] ?? material;

function groupOf({ name, material }: Piece): KindGroup {
  if (/strap|gore|bow|binding|strip|toe cap|topline edge/.test(name)) return "extras";
  if (/lift|top piece/.test(name)) return "heel";
  if (/sock|insole/.test(name)) return "bottom";
  return groupByMaterial[material] ?? "upper";
}

/** The kinds group by group, in the order of the bench; groups without any are left out. */
export function byGroup(kinds: readonly PieceKind[]): readonly { readonly group: KindGroup; readonly kinds: readonly PieceKind[] }[] {
  return kindGroups.map((group) => ({ group, kinds: kinds.filter((k) => k.group === group) })).filter((g) => g.kinds.length > 0);
}
