import { marksOf, type Gauges } from "#lasting/gauges.ts";
import type { Half } from "#lines/feather.ts";
import { leftStripMm, marginMm, topStripMm } from "../paper.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import type { PageSize } from "../print-paper.ts";
import { draftTableHigh, inkDraftTable } from "./draft-table.ts";
import { paragraph, paragraphHigh } from "./paragraph.ts";
import { afterMm, beforeMm, flankStripMm, inkPaperStrip, lengthOf, lowStripMm, partsWithin, type PaperStrip } from "./paper-strip.ts";
import { shelved, type Block } from "./shelves.ts";
import { shoeStrips } from "./shoe-strips.ts";
import { StripInk, type StripLie } from "./strip-ink.ts";
import type { Strip } from "./strips.ts";
import { heightTongues, marginTongues, type Tongues } from "./tongues.ts";

const intro =
  "Cut out on the full lines. The zero of a strip is where it says so; the edge with the ticks lies on the feather line, or along the centre. Fold or stick its end, lay it on without pulling, mark at every letter with silver pen, and prick the drafts' numbers beside the feather line. Where a strip will not lie on a round place, snip its upper edge. Heights: cut the tongues apart, fold each under the feather line at its place, mark at its end. Margins: with the upper at its marks, so much must show inside the feather line at each draft; hold the gauge with its fold on the feather line, its tab up the wall.";
const gapMm = 2;
const betweenMm = 4;
/** On wide paper table and words stay where the eye can follow a row, mm. */
const mostWideMm = 140;

/** What is drawn on one page; gives back what it is read back by. */
export type DrawnPage = (ink: PageInk) => readonly Strip[];

/** A block of what is cut out; `ink` draws it with its lower left corner at a place of the page. */
interface CutBlock extends Block {
  readonly ink: (ink: PageInk, x: number, y: number) => readonly Strip[];
}

/** Everything that is cut out for one of the two lasts, on a page of its own, and on a further one where that is too small; with what else is to be known of the margins. */
export function shoePages(page: PageSize, gauges: Gauges, ofMargins = ""): readonly DrawnPage[] {
  const { side } = gauges;
  const strips = shoeStrips(gauges);
  const [left, right] = [marginMm + leftStripMm - 4, page.widthMm - marginMm];
  const [low, top] = [marginMm + 0.5, page.heightMm - marginMm - topStripMm];
  const room = top - 3 - low;
  const columns = new Columns(right, low, room);
  const lieOf = (half: Half, fromToe: boolean): StripLie => (((side === "right") === (half === "lateral")) !== fromToe ? "up, edge right" : "up, edge left");
  const sides = ["lateral", "medial"] as const;
  for (const half of sides) for (const strip of partsWithin(strips.fromSeat[half], room)) columns.put(strip, lieOf(half, false));
  for (const half of sides) columns.put(strips.fromToe[half], lieOf(half, true));
  const wide = columns.left() - gapMm - left;
  const told = Math.min(wide, mostWideMm), words = [intro, ofMargins].filter(Boolean).join(" ");
  const headMm = 12 + paragraphHigh(words, told) + draftTableHigh(gauges) + betweenMm;
  const placed = shelved(blocksOf(gauges, strips.lying), { wideMm: wide, firstHighMm: top - headMm - low, highMm: top - 14 - low, gapMm: betweenMm });
  return Array.from({ length: 1 + Math.max(...placed.map((p) => p.page)) }, (_, number): DrawnPage => (ink) => {
    ink.text(`Strips for the ${side} last${number > 0 ? ", more" : ""}`, left, top - 10, 5, { bold: true });
    if (number === 0) inkDraftTable(ink, gauges, left, paragraph(ink, words, left, top - 12, told), told);
    const from = top - (number === 0 ? headMm : 14);
    const blocks = placed.filter((p) => p.page === number).flatMap(({ block, xMm, downMm }) => block.ink(ink, left + xMm, from - downMm));
    return number === 0 ? [...columns.ink(ink), ...blocks] : blocks;
  });
}

function blocksOf(gauges: Gauges, lying: readonly PaperStrip[]): readonly CutBlock[] {
  const { side, drafts } = gauges;
  const of = ({ wideMm, highMm, draw }: Tongues): CutBlock => ({ wideMm, highMm, ink: draw });
  const heights = (half: Half) => of(heightTongues(marksOf(gauges, half), `${side}-`, `${half === "medial" ? "inside" : "outside"}, ${side}`, (side === "right") === (half === "lateral")));
  // Side by side as the last is seen from behind: the outer side of a right one to the right.
  const seen = side === "right" ? (["medial", "lateral"] as const) : (["lateral", "medial"] as const);
  const pairs = [lying.slice(0, 2), lying.slice(2)].filter((strips) => strips.length > 0);
  const both = seen.map(heights), highMm = Math.max(...both.map((b) => b.highMm));
  return [...both.map((b) => ({ ...b, highMm })), of(marginTongues(drafts, "upper", `${side}-`)), of(marginTongues(drafts, "lining", `${side}-`)), ...pairs.map(stacked)];
}

/** Strips one above the other. */
function stacked(strips: readonly PaperStrip[]): CutBlock {
  return {
    wideMm: Math.max(...strips.map((s) => beforeMm(s) + lengthOf(s) + afterMm(s))),
    highMm: strips.length * (lowStripMm + gapMm) - gapMm,
    ink: (ink, x, y) => strips.map((s, i) => inkPaperStrip(new StripInk(ink, x + beforeMm(s), y + (strips.length - 1 - i) * (lowStripMm + gapMm), "right"), s)),
  };
}

/** Upright strips in columns from the right edge; a short one stands on another's column where it fits. */
class Columns {
  readonly #columns: { readonly left: number; high: number }[] = [];
  readonly #placed: { readonly strip: PaperStrip; readonly lie: StripLie; readonly x: number; readonly y: number }[] = [];
  readonly #right: number;
  readonly #low: number;
  readonly #room: number;

  constructor(right: number, low: number, room: number) {
    this.#right = right;
    this.#low = low;
    this.#room = room;
  }

  put(strip: PaperStrip, lie: StripLie): void {
    const high = beforeMm(strip) + lengthOf(strip) + afterMm(strip);
    let column = this.#columns.find((c) => c.high + gapMm + high <= this.#room);
    if (!column) {
      const left = this.#right - (this.#columns.length + 1) * flankStripMm - this.#columns.length * gapMm;
      column = { left, high: -gapMm };
      this.#columns.push(column);
    }
    this.#placed.push({ strip, lie, x: lie === "up, edge right" ? column.left + flankStripMm : column.left, y: this.#low + column.high + gapMm + beforeMm(strip) });
    column.high += gapMm + high;
  }

  ink(ink: PageInk): readonly Strip[] {
    return this.#placed.map(({ strip, lie, x, y }) => inkPaperStrip(new StripInk(ink, x, y, lie), strip));
  }

  /** The left edge of all columns. */
  left(): number {
    return Math.min(this.#right, ...this.#columns.map((c) => c.left));
  }
}
