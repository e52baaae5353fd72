import { markOf, marksOf, type GaugeMark, type Gauges } from "#lasting/gauges.ts";
import { halves, type Half } from "#lines/feather.ts";
import type { PaperStrip, StripPlace } from "./paper-strip.ts";

export interface ShoeStrips {
  /** Along the feather line: from the seat point to the joint, and from the toe point to the joint. */
  readonly fromSeat: Readonly<Record<Half, PaperStrip>>;
  readonly fromToe: Readonly<Record<Half, PaperStrip>>;
  /** Throat, back, and the joint lines. */
  readonly lying: readonly PaperStrip[];
}

const halfWord: Readonly<Record<Half, string>> = { medial: "Inside", lateral: "Outside" };

/** The strips of one last; each name carries its side, so that all are told apart in one file. */
export function shoeStrips(gauges: Gauges): ShoeStrips {
  const { side } = gauges;
  const by = <T>(of: (half: Half) => T): Readonly<Record<Half, T>> => ({ medial: of("medial"), lateral: of("lateral") });
  const centre = (key: string): readonly StripPlace[] => placed(markOf(gauges, key), side);
  return {
    fromSeat: by((half) => alongFeather(gauges, half, "seat")),
    fromToe: by((half) => alongFeather(gauges, half, "toe")),
    lying: [
      { name: `${side}-throat`, title: "Throat, along the centre", zero: "N toe", start: "fold", end: "rest", places: [...centre("puff"), ...centre("throat")] },
      { name: `${side}-back`, title: "Back, up the centre", zero: "P seat", start: "fold", end: "rest", places: [...centre("stiffener-top"), ...centre("back")] },
      ...halves.flatMap((half): readonly PaperStrip[] => {
        const line = placed(markOf(gauges, `${half}-joint-line`), side);
        return line.length === 0 ? [] : [{ name: `${side}-${half}-joint`, title: `Joint line, ${halfWord[half].toLowerCase()}`, zero: "G joint", start: "fold", end: "rest", places: line }];
      }),
    ],
  };
}

function placed(mark: GaugeMark | undefined, side: string): readonly StripPlace[] {
  return mark?.lengthMm === undefined ? [] : [{ key: `${side}-${mark.key}`, letter: mark.letter, lengthMm: mark.lengthMm }];
}

/** The strip of one half from one end of the feather line to its joint point, where both meet. */
function alongFeather(gauges: Gauges, half: Half, from: "seat" | "toe"): PaperStrip {
  const { side } = gauges;
  const jointMm = markOf(gauges, `${half}-joint`)!.alongMm!;
  const toeMm = gauges.featherMm[half];
  const own = from === "seat" ? (mm: number) => mm : (mm: number) => toeMm - mm;
  const within = (mm: number): boolean => (from === "seat" ? mm <= jointMm : mm >= jointMm);
  const marks = marksOf(gauges, half)
    .filter((m) => m.alongMm !== undefined && m.letter !== "H" && within(m.alongMm))
    .map((m): StripPlace => ({ key: `${side}-${from}-${m.key}`, letter: m.letter, lengthMm: own(m.alongMm!) }));
  const drafts = gauges.drafts.flatMap((d): readonly StripPlace[] => {
    const mm = d.half === undefined ? (d.alongMm === 0 ? 0 : toeMm) : d.alongMm;
    if ((d.half !== undefined && d.half !== half) || !within(mm)) return [];
    return [{ key: `${side}-${from}-${half}-draft-${d.number}`, draft: d.number, lengthMm: own(mm) }];
  });
  return {
    name: `${side}-${half}-${from}`,
    title: `${halfWord[half]} of the ${side} last, from the ${from}`,
    zero: from === "seat" ? "P" : "N",
    start: "stick",
    end: from === "seat" ? "stick" : "cut",
    places: [...marks, ...drafts].sort((a, b) => a.lengthMm - b.lengthMm || (a.draft ?? 0) - (b.draft ?? 0)),
  };
}
