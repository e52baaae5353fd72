interface Size {
  readonly wide: number;
  readonly high: number;
  /** It takes at least this width, px: its name stands under it. */
  readonly least?: number;
}
interface Room {
  readonly width: number;
  readonly height: number;
  readonly gap: number;
  /** Free height under each thing, px, not scaled. */
  readonly below: number;
  /** Each thing takes at least this width, px. */
  readonly leastWide: number;
}
export interface Rows {
  /** px per unit. */
  readonly scale: number;
  /** Upper left corner of each thing, px, in the order given. */
  readonly places: readonly { readonly x: number; readonly y: number }[];
}

/** Stands things of given sizes in centred rows, in their order, at the largest common scale at which all fit. */
export function inRows(sizes: readonly Size[], room: Room): Rows {
  let [low, high] = [0, Math.min(room.width, room.height)];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (fits(sizes, room, middle)) low = middle;
    else high = middle;
  }
  return { scale: low, places: place(sizes, room, low) };
}

function fits(sizes: readonly Size[], room: Room, scale: number): boolean {
  const rows = rowsAt(sizes, room, scale);
  return rows !== undefined && heightOf(rows, sizes, room, scale) <= room.height;
}

const widthAt = (s: Size, room: Room, scale: number): number => Math.max(room.leastWide, s.least ?? 0, s.wide * scale);

function rowsAt(sizes: readonly Size[], room: Room, scale: number): number[][] | undefined {
  const rows: number[][] = [];
  let used = Infinity;
  for (let i = 0; i < sizes.length; i++) {
    const wide = widthAt(sizes[i]!, room, scale) + room.gap;
    if (wide + room.gap > room.width) return undefined;
    if (used + wide > room.width) {
      rows.push([]);
      used = room.gap;
    }
    rows.at(-1)!.push(i);
    used += wide;
  }
  return rows;
}

const rowHeight = (row: readonly number[], sizes: readonly Size[], room: Room, scale: number): number => Math.max(...row.map((i) => sizes[i]!.high * scale)) + room.below + room.gap;

function heightOf(rows: readonly (readonly number[])[], sizes: readonly Size[], room: Room, scale: number): number {
  return rows.reduce((h, row) => h + rowHeight(row, sizes, room, scale), room.gap);
}

function place(sizes: readonly Size[], room: Room, scale: number): Rows["places"] {
  const rows = rowsAt(sizes, room, scale) ?? [];
  const out = sizes.map(() => ({ x: 0, y: 0 }));
  const spare = Math.max(0, room.height - heightOf(rows, sizes, room, scale));
  let y = room.gap + spare / 2;
  for (const row of rows) {
    const wide = row.reduce((w, i) => w + widthAt(sizes[i]!, room, scale) + room.gap, -room.gap);
    const tallest = Math.max(...row.map((i) => sizes[i]!.high * scale));
    let x = (room.width - wide) / 2;
    for (const i of row) {
      out[i] = { x, y: y + tallest - sizes[i]!.high * scale };
      x += widthAt(sizes[i]!, room, scale) + room.gap;
    }
    y += rowHeight(row, sizes, room, scale);
  }
  return out;
}
