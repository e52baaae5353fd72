import { indexEntries, type IndexEntry } from "../index-entries.ts";
import { leftStripMm, marginMm, topStripMm } from "../paper.ts";
import { pageSize, type PageSize } from "../print-paper.ts";
import type { PrintSet } from "../print-plan.ts";
import type { Cover } from "./cover-input.ts";
import { howToHeight, inkHowTo, inkLegend, legendMm } from "./how-to.ts";
import { entryItem, headingItem, pictureWidth, shoeMm, stripItem, wordyHeading, type IndexItem } from "./index-items.ts";
import { flowed, type Flowed } from "./index-flow.ts";
import { PageInk } from "./page-ink.ts";
import { inkFrame } from "./page-frame.ts";

const setHeadings: Readonly<Record<PrintSet, string>> = {
  card: "Card set: net, to check on the last",
  cutting: "Cutting set: as it is cut",
};
/** Scales of the little pictures, one to so many: the largest that needs no more pages than the least. */
const smallness = [6, 8, 10, 12] as const;
/** Least width of an entry's words, and the gap between two columns, mm. */
const wordsMm = 67;
const gutterMm = 6;
/** Windows of a cover from a roll that are tried, mm. */
const rolledMm = [0, 340, 400] as const;

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

/** Where every block of the index stands: on the fewest pages, the pictures as large as those allow, a page from a roll as short as it can be. */
function planned(cover: Cover): Planned {
  const windows = cover.paper.name === "roll" ? rolledMm : [0];
  let best: Planned | undefined;
  for (const one of smallness) {
    for (const windowMm of windows) {
      const plan = settled(cover, 1 / one, windowMm);
      if (plan.covers === 1) return plan;
      if (!best || plan.covers < best.covers) best = plan;
    }
  }
  return best!;
}

/** Page numbers in the index depend on how many pages it takes itself: found by asking again. */
function settled(cover: Cover, scale: number, windowMm: number): Planned {
  let covers = 1;
  for (let tries = 0; ; tries++) {
    const plan = flowOf(cover, scale, windowMm, covers);
    if (plan.covers === covers || tries > 3) return plan;
    covers = plan.covers;
  }
}

function flowOf(cover: Cover, scale: number, windowMm: number, covers: number): Planned {
  const page = pageSize(cover.paper, windowMm);
  const left = marginMm + leftStripMm;
  const width = page.widthMm - marginMm - left;
  const entries = indexEntries(cover.sheet, cover.tiling);
  const least = pictureWidth(entries, scale) + (cover.profile ? shoeMm + 4 : 0) + wordsMm;
  const columns = Math.max(1, Math.floor((width + gutterMm) / (least + gutterMm)));
  const columnWidth = (width - (columns - 1) * gutterMm) / columns;
  const top = page.heightMm - marginMm - topStripMm;
  const room = { columns, left, step: columnWidth + gutterMm, width: columnWidth, low: marginMm };
  const flow = flowed(itemsOf(cover, entries, scale, covers, columnWidth), { ...room, top: top - 3, firstTop: top - howToHeight(cover, page), firstLow: marginMm + legendMm });
  const count = 1 + Math.max(0, ...flow.map((f) => f.page));
  return { pages: Array.from({ length: count }, () => page), flow, covers: count };
}

function itemsOf({ title, profile, strips, corrected }: Cover, entries: readonly IndexEntry[], scale: number, covers: number, widthMm: number): readonly IndexItem[] {
  const pictureMm = pictureWidth(entries, scale);
  const look = { title, profile, covers, scale, widthMm };
  const small = ` (pictures 1 : ${Math.round(1 / scale)})`;
  const sets = (["card", "cutting"] as const).flatMap((set, i) => {
    const of = entries.filter((e) => e.set === set);
    const first = i === 0 || !entries.some((e) => e.set === "card");
    const heading = setHeadings[set] + (first ? small : "");
    return of.length === 0 ? [] : [corrected && set === "cutting" ? wordyHeading(heading, corrected, widthMm) : headingItem(heading), ...of.map((e) => entryItem(e, pictureMm, look))];
  });
  if (entries.length === 0) return [headingItem("No piece belongs to the set that was chosen.")];
  // Strips are cut; to cards alone they do not belong.
  return strips.length === 0 || !entries.some((e) => e.set === "cutting") ? sets : [...sets, headingItem("By length, for the whole pair"), ...strips.map((s) => stripItem(s, pictureMm, look))];
}
