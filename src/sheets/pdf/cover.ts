import type { Strip } from "#pieces/piece.ts";
import type { CommonSheet } from "../arrange.ts";
import { indexEntries } from "../index-entries.ts";
import { leftStripMm, marginMm, topStripMm } from "../paper.ts";
import { pageSize, type PageSize, type PrintPaper } from "../print-paper.ts";
import type { PrintSet } from "../print-plan.ts";
import type { Profile } from "../shoe-picture.ts";
import type { Tiling } from "../tiling.ts";
import { howToMm, inkHowTo, inkLegend, legendMm } from "./how-to.ts";
import { entryItem, headingItem, pictureWidth, stripItem, type IndexItem } from "./index-items.ts";
import { flowed, type Flowed } from "./index-flow.ts";
import { PageInk } from "./page-ink.ts";
import { inkFrame } from "./page-frame.ts";

export interface Cover {
  readonly heading: string;
  readonly title: string;
  readonly size?: string;
  readonly paper: PrintPaper;
  readonly sheet: CommonSheet;
  readonly tiling: Tiling;
  readonly strips: readonly Strip[];
  /** Without one no little pictures of the shoe are drawn. */
  readonly profile?: Profile | undefined;
}

const setHeadings: Readonly<Record<PrintSet, string>> = {
  card: "Card set: net, to check on the last",
  cutting: "Cutting set: as it is cut",
};
/** Scales of the little pictures, the largest that lets all stand on one page, else the least. */
const smallness = [6, 8, 10] as const;
/** Least width of a column of the index, and the gap between two, mm. */
const columnMm = 118;
const gutterMm = 8;

/** The pages before the pattern: how to print, check and join, and the index of all pieces and strips, over as many pages as it needs. */
export function inkCovers(cover: Cover): readonly PageInk[] {
  const { pages, flow, covers } = planned(cover);
  return pages.map((page, i) => {
    const ink = new PageInk(page);
    inkFrame(ink, { title: cover.title, size: cover.size ?? "", page: i + 1, pages: cover.tiling.tiles.length + covers, shows: i === 0 ? "how to print; index" : "index of the pieces" });
    if (i === 0) {
      inkHowTo(ink, cover, covers);
      inkLegend(ink);
    }
    for (const { item, x, y, width } of flow.filter((f) => f.page === i)) item.ink(ink, x, y, width);
    return ink;
  });
}

interface Planned {
  readonly pages: readonly PageSize[];
  readonly flow: readonly Flowed[];
  readonly covers: number;
}

/** Where every block of the index stands. Page numbers in it depend on how many pages it takes itself: found by asking again. */
function planned(cover: Cover): Planned {
  for (const one of smallness) {
    const plan = settled(cover, 1 / one);
    if (plan.covers === 1 || one === smallness[smallness.length - 1]) return plan;
  }
  return settled(cover, 0.1);
}

function settled(cover: Cover, scale: number): Planned {
  let covers = 1;
  for (let tries = 0; ; tries++) {
    const plan = flowOf(cover, scale, covers);
    if (plan.covers === covers || tries > 3) return plan;
    covers = plan.covers;
  }
}

function flowOf(cover: Cover, scale: number, covers: number): Planned {
  const page = pageSize(cover.paper, coverWindowMm);
  const left = marginMm + leftStripMm;
  const width = page.widthMm - marginMm - left;
  const columns = Math.max(1, Math.floor((width + gutterMm) / (columnMm + gutterMm)));
  const columnWidth = (width - (columns - 1) * gutterMm) / columns;
  const top = page.heightMm - marginMm - topStripMm;
  const room = { columns, left, step: columnWidth + gutterMm, width: columnWidth, low: marginMm };
  const flow = flowed(itemsOf(cover, scale, covers, columnWidth), { ...room, top: top - 3, firstTop: top - howToMm, firstLow: marginMm + legendMm });
  const count = 1 + Math.max(0, ...flow.map((f) => f.page));
  return { pages: Array.from({ length: count }, () => page), flow, covers: count };
}

/** Height of the window of a cover from a roll, mm. */
const coverWindowMm = 400;

function itemsOf({ title, profile, sheet, tiling, strips }: Cover, scale: number, covers: number, widthMm: number): readonly IndexItem[] {
  const entries = indexEntries(sheet, tiling);
  const pictureMm = pictureWidth(entries, scale);
  const look = { title, profile, covers, scale, widthMm };
  const small = `. Little pictures 1 : ${Math.round(1 / scale)}`;
  const sets = (["card", "cutting"] as const).flatMap((set, i) => {
    const of = entries.filter((e) => e.set === set);
    const first = i === 0 || !entries.some((e) => e.set === "card");
    return of.length === 0 ? [] : [headingItem(setHeadings[set] + (first ? small : "")), ...of.map((e) => entryItem(e, pictureMm, look))];
  });
  return strips.length === 0 ? sets : [...sets, headingItem("By length, for the whole pair"), ...strips.map((s) => stripItem(s, pictureMm, look))];
}
