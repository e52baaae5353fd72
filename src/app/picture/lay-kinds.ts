import { bounds } from "#plane/measure.ts";
import { mm, say } from "../state/numbers.ts";
import { fromWords, type PieceKind } from "../state/piece-kinds.ts";
import { inRows } from "../state/rows.ts";

/** A kind of piece where it stands in the picture, px. */
export interface PlacedKind {
  readonly kind: PieceKind;
  readonly x: number;
  readonly y: number;
  readonly pxPerMm: number;
  readonly left: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
}

/** Room under each piece for its name, px. */
export const nameHeight = 46;
const gap = 14;

/** From so many kinds on they are looked at group by group, and all of them with smaller words. */
export const manyKinds = 9;

/** What stands under a piece, in two lines. */
export const underWords = ({ name, count, material }: PieceKind): readonly [name: string, what: string] => [name, `${count} of ${fromWords(material)}`];

/** Its length and width as well, for one shown large. */
export function sizedWords(kind: PieceKind): readonly [name: string, what: string] {
  const { minX, maxX, minY, maxY } = bounds(kind.shown.outline);
  const [name, what] = underWords(kind);
  return [name, `${what}, ${say(maxX - minX, 0)} by ${mm(maxY - minY, 0)}`];
}

/** Roughly how wide that is, px: bold letters above, smaller ones below. */
function underWidth(kind: PieceKind): number {
  const [name, what] = underWords(kind);
  return Math.max(8.9 * name.length, 7.1 * what.length) + 6;
}

/** Stands the kinds in rows at one scale; `forWords` px stay free on either side. */
export function layOut(kinds: readonly PieceKind[], width: number, height: number, forWords: number): readonly PlacedKind[] {
  if (width < 50 || height < 50 || kinds.length === 0) return [];
  const boxes = kinds.map((k) => bounds(k.shown.outline));
  const sizes = boxes.map((b, i) => ({ wide: b.maxX - b.minX, high: b.maxY - b.minY, least: (kinds.length > manyKinds ? 0.86 : 1) * underWidth(kinds[i]!) }));
  const { scale, places } = inRows(sizes, { width: Math.max(200, width - 2 * forWords), height, gap, below: nameHeight, leastWide: 96 });
  return kinds.map((kind, i) => {
    const b = boxes[i]!;
    const p = places[i]!;
    const wide = Math.max(96, sizes[i]!.least, sizes[i]!.wide * scale);
    return {
      kind,
      pxPerMm: scale,
      x: forWords + p.x + wide / 2 - ((b.minX + b.maxX) / 2) * scale,
      y: p.y + b.maxY * scale,
      left: forWords + p.x,
      top: p.y,
      wide,
      high: sizes[i]!.high * scale + nameHeight,
    };
  });
}
