import { capital } from "#base/listed.ts";
import type { Piece } from "#pieces/piece.ts";
import type { PlacedPiece } from "./arrange.ts";
import { brokenIntoLines, textWidth } from "./lettering.ts";
import type { Lettering, Stroke } from "./pen.ts";
import type { Box, Room } from "./room.ts";
import { shoePicture, type Profile } from "./shoe-picture.ts";

/** What is written large on a piece. */
export interface NamePlate {
  readonly title: string;
  readonly size: string;
  /** Without one no little picture is drawn. */
  readonly profile?: Profile | undefined;
}

/** Words centred on a point, turned about it. */
export function setMiddle(text: string, [x, y]: readonly [number, number], heightMm: number, angleDeg: number, bold: boolean): Lettering {
  const half = textWidth(text, heightMm, bold) / 2;
  const turn = (angleDeg * Math.PI) / 180;
  const ux = Math.cos(turn), uy = Math.sin(turn);
  return { text, xMm: x - ux * half + (uy * heightMm) / 2, yMm: y - uy * half - (ux * heightMm) / 2, heightMm, angleDeg, bold };
}

/** Words that tell the piece's edge: with or without allowances. */
const edgeWords = (piece: Piece): string => (piece.net ? "net: no allowances" : "allowances included");

/** What a piece's own label says beyond its name, side and material, less the title: of its edge, its thickness, how it is seen. */
export function edgeNote(piece: Piece, title: string): string {
  // On a narrow piece the title may stand in one line with what is told.
  const own = toldBy(piece).map((text) => (title && text.endsWith(`, ${title}`) ? text.slice(0, -title.length - 2) : text));
  const told = own.filter((text) => !text.startsWith(piece.material) && !title.includes(text));
  return told.length > 0 ? inOneLine(told) : edgeWords(piece);
}

/** Lines as one, a comma between any two. */
const inOneLine = (lines: readonly string[]): string => lines.map((t, i) => (i + 1 < lines.length && !t.endsWith(",") ? `${t},` : t)).join(" ");

interface Line {
  readonly text: string;
  readonly heightMm: number;
  readonly bold: boolean;
}

/**
 * The texts of a piece's own label: the first ones say its name, which may run over two or three, the others follow closely in
 * the same direction. They are set anew, as large as there is room for. Returns their places among the marks.
 */
export function ownLabel({ name, marks }: Piece): readonly number[] {
  const first = marks.findIndex((_, i) => nameEnd(name, marks, i) !== undefined);
  if (first < 0) return [];
  const block = [first];
  for (let i = first + 1; i < marks.length; i++) {
    const before = marks[i - 1]!, here = marks[i]!;
    if (before.kind !== "text" || here.kind !== "text" || here.angleDeg !== before.angleDeg) break;
    if (Math.hypot(here.at[0] - before.at[0], here.at[1] - before.at[1]) > 2.2 * Math.max(here.heightMm, before.heightMm)) break;
    block.push(i);
  }
  return block;
}

/** Where the texts end that say a name beginning with the i-th mark: "shank, right", or "second" and "insole board". */
function nameEnd(name: string, marks: Piece["marks"], i: number): number | undefined {
  let said = "";
  for (let k = i; k < i + 3; k++) {
    const mark = marks[k];
    if (mark?.kind !== "text") return undefined;
    said = said ? `${said} ${mark.text}` : mark.text;
    if (said === name || said.startsWith(`${name}, `) || said.startsWith(`${name} `)) return k + 1;
    if (!name.startsWith(`${said} `)) return undefined;
  }
  return undefined;
}

/** What the label says after the name and the side with its size. */
function toldBy(piece: Piece): readonly string[] {
  const label = ownLabel(piece);
  if (label.length === 0) return [];
  const after = nameEnd(piece.name, piece.marks, label[0]!)!;
  return label.filter((i) => i >= after).flatMap((i) => {
    const mark = piece.marks[i]!;
    const text = mark.kind === "text" ? mark.text : "";
    const [side, ...rest] = text.split(", ");
    if (side !== piece.side) return [text];
    const more = rest.filter((part) => !part.startsWith("size ")).join(", ");
    return more ? [more] : [];
  });
}

/** How large a plate is written: heights of capitals from the ISO 3098 series (from memory), and where it is broken; mm. */
interface PlateSize {
  readonly nameMm: number;
  readonly sideMm: number;
  readonly smallMm: number;
  readonly pictureMm: number;
  readonly breakMm: number;
}
const plateSizes: readonly PlateSize[] = [
  { nameMm: 14, sideMm: 7, smallMm: 3.5, pictureMm: 50, breakMm: 80 },
  { nameMm: 10, sideMm: 5, smallMm: 3.5, pictureMm: 42, breakMm: 64 },
  { nameMm: 10, sideMm: 5, smallMm: 3.5, pictureMm: 34, breakMm: 48 },
  { nameMm: 10, sideMm: 5, smallMm: 3.5, pictureMm: 0, breakMm: 64 },
  { nameMm: 10, sideMm: 5, smallMm: 2.5, pictureMm: 0, breakMm: 100 },
  { nameMm: 10, sideMm: 5, smallMm: 2.5, pictureMm: 0, breakMm: 74 },
  { nameMm: 10, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 56 },
  { nameMm: 7, sideMm: 5, smallMm: 2.5, pictureMm: 0, breakMm: 130 },
  { nameMm: 7, sideMm: 5, smallMm: 2.5, pictureMm: 0, breakMm: 74 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 28, breakMm: 56 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 28, breakMm: 38 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 56 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 48 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 38 },
  { nameMm: 5, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 130 },
  { nameMm: 5, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 56 },
  { nameMm: 5, sideMm: 2.5, smallMm: 2.5, pictureMm: 0, breakMm: 38 },
  { nameMm: 3.5, sideMm: 2.5, smallMm: 1.8, pictureMm: 0, breakMm: 38 },
];
/** For a piece too small for all of it: name, side and size in two lines or in one, with its material or without; the index says the rest. */
const shortSizes = [
  { nameMm: 5, sideMm: 3.5, whatMm: 2.5 },
  { nameMm: 3.5, sideMm: 3.5, whatMm: 2.5 },
  { nameMm: 3.5, sideMm: 2.5, whatMm: 2.5 },
  { nameMm: 3.5, sideMm: 2.5, whatMm: 0 },
  { nameMm: 2.5, sideMm: 2.5, whatMm: 1.8 },
  { nameMm: 2.5, sideMm: 1.8, whatMm: 0 },
  { nameMm: 1.8, sideMm: 1.8, whatMm: 0 },
] as const;

const cutWords = ({ perPair, material }: Piece): string => `cut ${perPair} in ${material}`;
const sideWords = ({ side }: Piece, size: string): string => (size ? `${side}, size ${size}` : side);

/** The sizes of a piece's plate, the largest first: full ones, or those that leave out what the index says too. */
function platesOf(piece: Piece, plate: NamePlate, full: boolean): readonly { readonly lines: readonly Line[]; readonly pictureMm: number }[] {
  if (full) return plateSizes.map((size) => ({ lines: plateLines(piece, plate, size), pictureMm: size.pictureMm }));
  const side = sideWords(piece, plate.size);
  return shortSizes.map(({ nameMm, sideMm, whatMm }) => {
    const bold = (text: string, heightMm: number): Line => ({ text, heightMm, bold: true });
    // Name and side of one size stand in one line.
    const named = nameMm === sideMm ? [bold(`${capital(piece.name)}, ${side}`, nameMm)] : [bold(capital(piece.name), nameMm), bold(side, sideMm)];
    return { lines: whatMm > 0 ? [...named, { text: cutWords(piece), heightMm: whatMm, bold: false }] : named, pictureMm: 0 };
  });
}

/** The lines of the name plate: the name, side and size, and the rest broken into lines. */
function plateLines(piece: Piece, { title, size }: NamePlate, { nameMm, sideMm, smallMm, breakMm }: PlateSize): readonly Line[] {
  const told = toldBy(piece);
  const what = told.some((text) => text.startsWith(piece.material)) ? [] : [cutWords(piece)];
  const rest = inOneLine(told.length > 0 ? [...what, ...told] : [edgeWords(piece), ...what, ...(title ? [title] : [])]);
  return [
    { text: capital(piece.name), heightMm: nameMm, bold: true },
    { text: sideWords(piece, size), heightMm: sideMm, bold: true },
    ...brokenIntoLines(rest, smallMm, breakMm).map((text) => ({ text, heightMm: smallMm, bold: false })),
  ];
}

/** From one line's base to the next: clear of what hangs below the upper one. */
const leading = (lines: readonly Line[], i: number): number => (i === 0 ? lines[0]!.heightMm : Math.max(1.75 * lines[i]!.heightMm, lines[i]!.heightMm + 0.32 * lines[i - 1]!.heightMm + 0.8));
const padMm = 1.2;
/** Writes the piece's name as large as there is room for, off the joints if it can, with a little picture of its place. */
export function placeNamePlate(plate: NamePlate, full: boolean, room: Room, placed: PlacedPiece, offJoints: (box: Box) => boolean): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } | undefined {
  const middle = [(placed.bounds.minX + placed.bounds.maxX) / 2, (placed.bounds.minY + placed.bounds.maxY) / 2] as const;
  const plates = platesOf(placed.piece, plate, full);
  // No use to look for more room than the whole piece has.
  const { minX, maxX, minY, maxY } = placed.bounds;
  const [most, least] = [Math.max(maxX - minX, maxY - minY), Math.min(maxX - minX, maxY - minY)];
  for (const clear of [true, false]) {
    for (const { lines, pictureMm } of plates) {
      const block = blockOf(lines, pictureMm, plate.profile);
      if (Math.max(block.width, block.height) > most || Math.min(block.width, block.height) > least) continue;
      for (const upright of [false, true]) {
        const needed = { width: (upright ? block.height : block.width) + 2 * padMm, height: (upright ? block.width : block.height) + 2 * padMm };
        const box = room.nearestFree(needed, middle, (b) => !clear || offJoints(b));
        if (!box) continue;
        room.takeWords(box);
        return setBlock(lines, block, box, upright, placed.piece, plate.profile, pictureMm);
      }
    }
  }
  return undefined;
}

/** Where no plate finds room: name and side in the smallest letters in the middle of the piece, over whatever lies there. */
export function leastPlate({ piece, bounds: b }: PlacedPiece): Lettering {
  return setMiddle(`${capital(piece.name)}, ${piece.side}`, [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2], 1.8, b.maxX - b.minX < b.maxY - b.minY ? 90 : 0, true);
}

interface Block {
  readonly width: number;
  readonly height: number;
}

function blockOf(lines: readonly Line[], pictureMm: number, profile: Profile | undefined): Block {
  const picture = pictureMm > 0 && profile ? 3 + (pictureMm * profile.heightMm) / profile.widthMm : 0;
  return {
    width: Math.max(profile ? pictureMm : 0, ...lines.map((l) => textWidth(l.text, l.heightMm, l.bold))),
    height: lines.reduce((sum, _, i) => sum + leading(lines, i), 0) + picture + 1,
  };
}

/** Lays out the block in its own x to the right, y up, then turns it into the box. */
function setBlock(lines: readonly Line[], block: Block, box: Box, upright: boolean, piece: Piece, profile: Profile | undefined, pictureMm: number): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } {
  const turn = (x: number, y: number): readonly [number, number] =>
    upright ? [box.x + box.width - padMm - y, box.y + padMm + x] : [box.x + padMm + x, box.y + padMm + y];
  const words: Lettering[] = [];
  let y = block.height;
  lines.forEach((l, i) => {
    y -= leading(lines, i);
    const [xMm, yMm] = turn(0, y);
    words.push({ text: l.text, xMm, yMm, heightMm: l.heightMm, angleDeg: upright ? 90 : 0, bold: l.bold });
  });
  if (pictureMm === 0 || !profile) return { strokes: [], words };
  const picture = shoePicture(profile, piece.name, piece.side === "right", [0, 0], pictureMm);
  const set = (kind: "picture" | "pictured") => (xy: Float64Array): Stroke => {
    const out = new Float64Array(xy.length);
    for (let i = 0; i < xy.length; i += 2) [out[i], out[i + 1]] = turn(xy[i]!, xy[i + 1]!) as [number, number];
    return { kind, xy: out, closed: false };
  };
  return { strokes: [...picture.thin.map(set("picture")), ...picture.bold.map(set("pictured"))], words };
}

