import type { DraftGauge } from "#lasting/gauge-drafts.ts";
import type { GaugeMark } from "#lasting/gauges.ts";
import { brokenIntoLines, textWidth } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { draftWord, foldDash, tabMm } from "./paper-strip.ts";
import { half, tickName, zeroName, type Strip } from "./strips.ts";

/** A tongue of paper whose fold is laid on the feather line; its end is where the mark comes, or how far the margin must reach. */
interface Tongue {
  readonly key: string;
  readonly lengthMm: number;
  /** Words on it from its end down: the first large. */
  readonly words: readonly string[];
  /** Words up its length, where there is room. */
  readonly along?: string;
}

/** Tongues side by side below their heading; `draw` puts the lower left corner of their tabs at a place and returns what they are read back by. */
export interface Tongues {
  readonly wideMm: number;
  readonly highMm: number;
  readonly draw: (ink: PageInk, x: number, y: number) => readonly Strip[];
}

const headingMm = 2.5;

function tonguesOf(tongues: readonly Tongue[], each: number, heading: string, tab: string): Tongues {
  const tallest = Math.max(0, ...tongues.map((t) => t.lengthMm));
  return {
    wideMm: Math.max(each * tongues.length, textWidth(heading, headingMm, true)),
    highMm: tabMm + tallest + 1.6 + headingMm,
    draw: (ink, x, y) => {
      const fold = y + tabMm;
      ink.text(heading, x, fold + tallest + 1.6, headingMm, { bold: true });
      return tongues.map((tongue, i) => inkTongue(ink, tongue, x + i * each, fold, each, tab));
    },
  };
}

function inkTongue(ink: PageInk, { key, lengthMm, words, along }: Tongue, left: number, fold: number, wideMm: number, tab: string): Strip {
  const centred = (text: string, y: number, high: number, bold = false) => ink.text(text, left + (wideMm - textWidth(text, high, bold)) / 2, y, high, { bold });
  ink.style(0.35);
  ink.stroke([left, fold + lengthMm, left, fold - tabMm, left + wideMm, fold - tabMm, left + wideMm, fold + lengthMm]);
  ink.named(tickName({ key }), () => ink.line(left, fold + lengthMm, left + wideMm, fold + lengthMm));
  ink.style(0.25, foldDash);
  ink.named(zeroName(key), () => ink.line(left, fold, left + wideMm, fold));
  tab.split(" ").forEach((word, k) => centred(word, fold - 3.6 - 2.6 * k, 1.8));
  let down = fold + lengthMm - 1.2;
  words.forEach((text, k) => {
    const high = k === 0 ? 4 : 2.2;
    centred(text, (down -= high), high, k === 0);
    down -= 1.2;
  });
  if (along && down - fold > textWidth(along, 1.8) + 1) ink.text(along, left + wideMm / 2 + 0.9, fold + 1, 1.8, { angleDeg: 90 });
  return { name: key, zero: "", title: [], marks: [{ key, tick: words[0] ?? "", words: "", lengthMm }] };
}

const heightTongueMm = 11;

/** The heights of one half, from left to right as they follow on the last seen from that side. */
export function heightTongues(marks: readonly GaugeMark[], prefix: string, where: string, toeRight: boolean): Tongues {
  const heights = marks.filter(({ letter }) => "CDEF".includes(letter)).map((m): Tongue => ({ key: `${prefix}${m.key}-height`, lengthMm: m.lengthMm!, words: [m.letter, half(m.lengthMm!)], along: where }));
  return tonguesOf(toeRight ? heights : [...heights].reverse(), heightTongueMm, `Heights, ${where}`, "fold under");
}

const marginTongueMm = 16;
/** No gauge of margins is wider than the room beside the upright strips on the narrowest paper, mm. */
const mostGaugeMm = 112;

/** Drafts that need the same margin share a tongue; the widest first. */
function marginGroups(drafts: readonly DraftGauge[], of: (draft: DraftGauge) => number): readonly { readonly mm: number; readonly drafts: readonly DraftGauge[] }[] {
  const widths = [...new Set(drafts.map(of).filter((mm) => mm > 0))].sort((a, b) => b - a);
  return widths.map((mm) => ({ mm, drafts: drafts.filter((d) => of(d) === mm) }));
}

/** The margin gauge of upper or lining: held with its fold on the feather line and its tongues on the bottom. */
export function marginTongues(drafts: readonly DraftGauge[], what: "upper" | "lining", prefix: string): Tongues {
  const groups = marginGroups(drafts, (d) => (what === "upper" ? d.upperMm : d.liningMm));
  const each = Math.min(marginTongueMm, mostGaugeMm / Math.max(1, groups.length));
  const tongues = groups.map(({ mm, drafts: own }, i): Tongue => {
    const numbers = brokenIntoLines(own.map((d) => draftWord(d.number)).join(" "), 2.2, each - 1);
    const rows = Math.max(0, Math.floor((mm - 6) / 3.4));
    return { key: `${prefix}margin-${what}-${i}`, lengthMm: mm, words: [half(mm), ...numbers.slice(0, rows)] };
  });
  return tonguesOf(tongues, each, `Margin of the ${what}`, "fold up");
}
