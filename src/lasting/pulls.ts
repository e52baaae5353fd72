import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import { curveLength, curveOf, pointOn } from "#last/surface-curve.ts";
import { halves, type Half } from "#lines/feather.ts";
import { draftOrder, type Draft } from "#pieces/draft-order.ts";
import type { Shell } from "#shell/shell.ts";
import { eased, type ByHalf } from "#shell/tension.ts";
import type { Mark } from "./ends.ts";
import { draftAlong, draftHalf } from "./draft-place.ts";
import { jawsMm, type LastingChoices } from "./settings.ts";

/** Where a draft is taken on the last, and how hard. */
export interface DraftPlace {
  /** Number and name in the order in which drafts are taken, as on the pieces. */
  readonly number: number;
  readonly name: string;
  /** The half it lies in; toe centre and back have none. */
  readonly half?: Half;
  readonly at: Point3;
  /** Running length from the seat point along its half (along the inner one where it has none), mm. */
  readonly alongMm: number;
  /** How hard it is pulled; before it is taken, at most. */
  readonly pullN: number;
  /** How far the topline then still stood above its mark, mm, where it did not come down to it. */
  readonly shortMm?: number;
}

/** The pulls along the whole feather line. */
export interface Pulls {
  /** In the order in which they are taken. */
  readonly drafts: readonly DraftPlace[];
  /** Whether the drafts that have a mark stop at it. */
  readonly stopAtMarks: boolean;
  /**
   * N per mm of feather line at each vertex of the shell's feather halves, seat → toe; both agree at seat and toe. A draft that stops at its
   * mark counts as pulled just past tight, since what it takes is not known before.
   */
  readonly perMm: ByHalf<Float64Array>;
}

type Pulled = Pick<LastingChoices, "pullToeN" | "pullToeCornerN" | "pullBackN" | "pullSeatSideN" | "pullJointN" | "pullWaistN" | "stopAtMarks">;

/** "Just past tight": a pull that only takes up the slack, N (ours: two fingers). No draft is pulled less. */
export const tightN = 3;

/** The drafts with their places on the shell on the last itself, and what the pincers pull on each mm of the feather line. */
export function pullsAlong(onLast: Shell, last: Pick<Last, "landmarks">, settings: Pulled): Pulls {
  const feather = Object.fromEntries(halves.map((half) => [half, featherOf(onLast, half)])) as Record<Half, SurfaceCurve>;
  const drafts = draftOrder.map((draft): DraftPlace => {
    const half = draftHalf(draft), on = feather[half ?? "medial"], along = draftAlong(draft, half ?? "medial", on, last);
    return { number: draft.number, name: draft.name, ...(half && { half }), at: pointOn(on, along), alongMm: along, pullN: pullOf(draft, settings) };
  });
  const { stopAtMarks } = settings;
  const sure = drafts.map((draft) => (stopAtMarks && draftMark(draft) ? { ...draft, pullN: Math.min(tightN, draft.pullN) } : draft));
  return { drafts, stopAtMarks, perMm: perMmOf(onLast, sure) };
}

/**
 * N per mm of feather line: a draft's pull over the breadth of the jaws at its place, between two drafts a blend that is level at both (so
 * that it has no step, kink or jump of its bend anywhere round the feather line, and never leaves the range of the two).
 */
export function perMmOf(onLast: Shell, drafts: readonly DraftPlace[]): ByHalf<Float64Array> {
  const along = (half: Half): Float64Array => {
    const feather = featherOf(onLast, half), end = curveLength(feather);
    const stations = drafts
      .filter((draft) => draft.half === undefined || draft.half === half)
      .map(({ half: own, number, alongMm, pullN }) => ({ s: own ? alongMm : draftOrder[number - 1]!.place === "toe" ? end : 0, perMm: pullN / jawsMm }))
      .sort((a, b) => a.s - b.s);
    return feather.arc.map((s) => between(stations, s));
  };
  return { medial: along("medial"), lateral: along("lateral") };
}

/**
 * How far above its mark the topline is left at seat side and waist, mm: joints and the row of light pulls between the drafts draw it down
 * by so much later on (ours: what they did on three lasts in three leathers, rounded up). At the back nothing moves any more.
 */
const sinksLaterMm = { seat: 0, breast: 1.2, waist: 0.8 } as const;

/**
 * The mark that a draft can be pulled to: the back's height, the topline's height above seat side and waist. Above the joints of a pump is
 * no topline, and the toe is drawn by feel.
 */
export function draftMark({ number, half, at }: Pick<DraftPlace, "number" | "half" | "at">): Mark | undefined {
  const { place } = draftOrder[number - 1]!;
  if (place === "toe" || place === "joint") return undefined;
  return half ? { half, x: at[0], stopAboveMm: sinksLaterMm[place] } : { stopAboveMm: sinksLaterMm[place] };
}

/** Whether a draft has a mark to stop at, by its number. */
export const hasMark = (number: number): boolean => draftOrder[number - 1]!.place in sinksLaterMm;

/** A half of the feather line on the shell, seat → toe. */
export function featherOf({ mesh: { positions: p }, edges }: Shell, half: Half): SurfaceCurve {
  const ids = half === "medial" ? edges.featherMedial : edges.featherLateral;
  return curveOf(Array.from(ids).flatMap((v) => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!]));
}

function pullOf({ place, onMm }: Draft, s: Pulled): number {
  if (place === "toe") return onMm === undefined ? s.pullToeN : s.pullToeCornerN;
  return { seat: s.pullBackN, breast: s.pullSeatSideN, joint: s.pullJointN, waist: s.pullWaistN }[place];
}

interface Station {
  readonly s: number;
  readonly perMm: number;
}

function between(stations: readonly Station[], s: number): number {
  const next = stations.findIndex((station) => station.s >= s);
  if (next <= 0) return stations.at(next)!.perMm;
  const [a, b] = [stations[next - 1]!, stations[next]!];
  return a.perMm + (b.perMm - a.perMm) * eased((s - a.s) / (b.s - a.s));
}
