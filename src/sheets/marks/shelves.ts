/** Something that takes up a box on a page. */
export interface Block {
  readonly wideMm: number;
  readonly highMm: number;
}

/** A block with the place of its lower left corner, counted from the room's left edge and downward from its top, and the page it stands on. */
export interface Shelved<B extends Block> {
  readonly block: B;
  readonly page: number;
  readonly xMm: number;
  readonly downMm: number;
}

interface Shelf {
  readonly page: number;
  readonly top: number;
  readonly high: number;
  used: number;
}

/**
 * Blocks in rows from the top down, the highest first, each in the first row that has room for it; what finds none on a page begins the next.
 * The first page's room is `firstHighMm` high, the others' `highMm`. A block too large for any page is placed all the same, and stands out.
 */
export function shelved<B extends Block>(blocks: readonly B[], { wideMm, firstHighMm, highMm, gapMm }: { readonly wideMm: number; readonly firstHighMm: number; readonly highMm: number; readonly gapMm: number }): readonly Shelved<B>[] {
  const shelves: Shelf[] = [];
  const order = blocks.map((block, i) => ({ block, i })).sort((a, b) => b.block.highMm - a.block.highMm || a.i - b.i);
  return order.map(({ block }) => {
    let shelf = shelves.find((s) => s.high >= block.highMm && s.used + gapMm + block.wideMm <= wideMm);
    if (!shelf) {
      const before = shelves[shelves.length - 1];
      const [page, below] = before ? [before.page, before.top + before.high + gapMm] : [0, 0];
      const fits = below + block.highMm <= (page === 0 ? firstHighMm : highMm);
      shelf = { page: fits ? page : page + 1, top: fits ? below : 0, high: block.highMm, used: -gapMm };
      shelves.push(shelf);
    }
    const xMm = shelf.used + gapMm;
    shelf.used = xMm + block.wideMm;
    return { block, page: shelf.page, xMm, downMm: shelf.top + block.highMm };
  });
}
