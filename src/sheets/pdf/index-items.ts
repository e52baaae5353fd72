import { capital } from "#base/listed.ts";
import type { Strip } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";
import { areaInWords, countsInWords, type IndexEntry } from "../index-entries.ts";
import { brokenIntoLines, shortenedTo, textWidth } from "../lettering.ts";
import { edgeNote } from "../name-plate.ts";
import { shoePicture, type Profile } from "../shoe-picture.ts";
import type { PageInk } from "./page-ink.ts";

/** One block of the index: drawn with its upper left corner at (x, y), `width` wide. */
export interface IndexItem {
  readonly heightMm: number;
  /** A heading never stands last in a column. */
  readonly heading: boolean;
  readonly ink: (ink: PageInk, x: number, y: number, width: number) => void;
}

/** What all entries of one index share. */
export interface IndexLook {
  readonly title: string;
  readonly profile?: Profile | undefined;
  /** Pages before the pattern. */
  readonly covers: number;
  /** One scale for all little pictures: drawn size over true size. */
  readonly scale: number;
  readonly widthMm: number;
}

const letterMm = 2.5;
const stepMm = 4;
const nameMm = 3.5;
/** Width of the picture of the shoe, mm. */
export const shoeMm = 22;
export const headingItem = (text: string): IndexItem => ({
  heightMm: 7.5,
  heading: true,
  ink: (ink, x, y, width) => ink.text(shortenedTo(width, text, nameMm, true), x, y - 5.6, nameMm, { bold: true }),
});

/** A heading with words below it over the whole column. */
export function wordyHeading(text: string, words: string, widthMm: number): IndexItem {
  const heading = headingItem(text), lines = brokenIntoLines(words, letterMm, widthMm);
  return {
    heightMm: heading.heightMm + 2.4 + stepMm * lines.length,
    heading: true,
    ink: (ink, x, y, width) => {
      heading.ink(ink, x, y, width);
      lines.forEach((line, i) => ink.text(line, x, y - heading.heightMm - 3 - stepMm * i, letterMm));
    },
  };
}

/** Size of a piece lying on its longer side, mm. */
function lying({ piece: { outline } }: IndexEntry): { readonly wide: number; readonly high: number; readonly turned: boolean } {
  const b = bounds(outline);
  const [w, h] = [b.maxX - b.minX, b.maxY - b.minY];
  return { wide: Math.max(w, h), high: Math.min(w, h), turned: h > w };
}

/** Room for the little pictures of some entries, mm wide. */
export const pictureWidth = (entries: readonly IndexEntry[], scale: number): number => Math.max(12, ...entries.map((e) => scale * lying(e).wide)) + 4;

/** Little picture, place on the shoe, name and area, material and edge, how many and on which pages. */
export function entryItem(entry: IndexEntry, pictureMm: number, { title, profile, covers, scale, widthMm }: IndexLook): IndexItem {
  const { piece } = entry;
  const words = pictureMm + (profile ? shoeMm + 4 : 0);
  const width = widthMm - words;
  const told = [...brokenIntoLines(`${piece.material}: ${edgeNote(piece, title)}`, letterMm, width).slice(0, 3), ...brokenIntoLines(countsInWords(entry, covers), letterMm, width)];
  const textMm = 6.4 + stepMm * told.length;
  const shoeHigh = profile ? (shoeMm * profile.heightMm) / profile.widthMm : 0;
  const heightMm = Math.max(textMm, scale * lying(entry).high + 3, shoeHigh + 3);
  return {
    heightMm,
    heading: false,
    ink: (ink, x, y, wide) => {
      ink.style(0.18);
      ink.line(x, y, x + wide, y);
      inkSmall(ink, entry, x, y - 1.5, scale);
      if (profile) inkPlace(ink, profile, piece.name, x + pictureMm, y - 1.5 - shoeHigh);
      const area = areaInWords(piece);
      const name = shortenedTo(width - textWidth(area, letterMm) - 3, capital(piece.name), nameMm, true);
      ink.text(name, x + words, y - 5, nameMm, { bold: true });
      ink.text(area, x + wide - textWidth(area, letterMm), y - 5, letterMm);
      told.forEach((line, i) => ink.text(line, x + words, y - 5 - stepMm * (i + 1), letterMm));
    },
  };
}

/** A length off a roll: place on the shoe, how many, how wide and long, of what and where it is laid. */
export function stripItem({ name, material, widthMm, lengthMm, perPair, where }: Strip, pictureMm: number, { profile, widthMm: itemMm }: IndexLook): IndexItem {
  const size = `cut ${perPair}, ${tenths(widthMm)} mm wide, ${Math.round(lengthMm)} mm long`;
  const words = profile ? pictureMm + shoeMm + 4 : 0;
  const told = [size, ...brokenIntoLines(`${material}: ${where}`, letterMm, itemMm - words)];
  const shoeHigh = profile ? (shoeMm * profile.heightMm) / profile.widthMm : 0;
  return {
    heightMm: Math.max(6.4 + stepMm * told.length, shoeHigh + 3),
    heading: false,
    ink: (ink, x, y, wide) => {
      ink.style(0.18);
      ink.line(x, y, x + wide, y);
      if (profile) inkPlace(ink, profile, name, x + pictureMm, y - 1.5 - shoeHigh);
      ink.text(shortenedTo(wide - words, capital(name), nameMm, true), x + words, y - 5, nameMm, { bold: true });
      told.forEach((line, i) => ink.text(line, x + words, y - 5 - stepMm * (i + 1), letterMm));
    },
  };
}

const tenths = (mm: number): string => String(Math.round(mm * 10) / 10);

/** Where on the shoe the piece lies, the picture's lower left corner at (x, y). */
function inkPlace(ink: PageInk, profile: Profile, name: string, x: number, y: number): void {
  const picture = shoePicture(profile, name, true, [x, y], shoeMm);
  ink.style(0.18);
  for (const xy of picture.thin) ink.stroke(xy);
  ink.style(0.5);
  for (const xy of picture.bold) ink.stroke(xy);
}

/** The outline of a piece, longer side along, its upper left corner at (x, y); about as many points as the eye can tell apart. */
function inkSmall(ink: PageInk, entry: IndexEntry, x: number, y: number, scale: number): void {
  const { xy } = entry.piece.outline;
  const box = bounds({ xy });
  const { turned } = lying(entry);
  const every = 2 * Math.max(1, Math.floor(xy.length / 400));
  const out: number[] = [];
  for (let i = 0; i < xy.length; i += every) {
    if (turned) out.push(x + scale * (box.maxY - xy[i + 1]!), y - scale * (box.maxX - xy[i]!));
    else out.push(x + scale * (xy[i]! - box.minX), y - scale * (box.maxY - xy[i + 1]!));
  }
  ink.style(0.25);
  ink.stroke(out, true);
}
