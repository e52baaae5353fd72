import { stripWays, type StripWay } from "./leather.ts";
import type { StripFit } from "./strip-fit.ts";

/** Where a plot lies in its picture; y downward. */
export interface PlotFrame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface PlotTick {
  readonly text: string;
  /** x of a tick of the load, y of one of the stretch. */
  readonly at: number;
}

export interface PlottedWay {
  readonly way: StripWay;
  /** The fitted curve, x0 y0 x1 y1 …; the rim of its band of nine in ten, closed. */
  readonly line: Float64Array;
  readonly band: Float64Array;
  /** Where its name may stand: the end of its curve. */
  readonly end: { readonly x: number; readonly y: number };
}

export interface PlottedReading {
  readonly way: StripWay;
  readonly strip: number;
  readonly reading: number;
  readonly x: number;
  readonly y: number;
}

/** Load on a strip 20 mm wide, in N, to the right; stretch in % upward. */
export interface StripPlot {
  readonly loads: readonly PlotTick[];
  readonly stretches: readonly PlotTick[];
  readonly ways: readonly PlottedWay[];
  readonly readings: readonly PlottedReading[];
}

/** Places of all that is drawn of a fit. Ways without a reading are left out where others have one. */
export function plotStrips({ curves, readings }: Pick<StripFit, "curves" | "readings">, { left, top, width, height }: PlotFrame): StripPlot {
  const shown = stripWays.filter((way) => readings.length === 0 || readings.some((r) => r.way === way));
  const drawn = curves.filter(({ way }) => shown.includes(way));
  const mostPull = Math.max(...drawn.map(({ pull }) => pull[pull.length - 1]!));
  const mostStretch = Math.max(...drawn.map(({ high, stretch }) => Math.min(high[high.length - 1]!, 2 * stretch[stretch.length - 1]!)), ...readings.map((r) => r.stretch));
  const steps = ticksTo(100 * mostStretch), loadSteps = ticksTo(20 * mostPull, false);
  const topStretch = steps[steps.length - 1]! / 100;
  const x = (pull: number): number => left + (width * pull) / mostPull;
  const y = (stretch: number): number => top + height * (1 - Math.max(0, Math.min(topStretch, stretch)) / topStretch);
  return {
    loads: loadSteps.map((n) => ({ text: String(n), at: x(n / 20) })),
    stretches: steps.map((percent) => ({ text: String(percent), at: y(percent / 100) })),
    ways: drawn.map(({ way, pull, stretch, low, high }) => {
      const upper = points(pull, high, x, y), lower = points(pull, low, x, y);
      const line = points(pull, stretch, x, y).flat();
      return { way, line: Float64Array.from(line), band: Float64Array.from([...upper, ...lower.reverse()].flat()), end: { x: line[line.length - 2]!, y: line[line.length - 1]! } };
    }),
    readings: readings.map((r) => ({ way: r.way, strip: r.strip, reading: r.reading, x: x(r.pull), y: y(r.stretch) })),
  };
}

function points(pull: Float64Array, stretch: Float64Array, x: (v: number) => number, y: (v: number) => number): number[][] {
  return Array.from(pull, (p, i) => [x(p), y(stretch[i]!)]);
}

/** Even round numbers from 0, up to or (`over`) just beyond the most, four to eight of them. */
function ticksTo(most: number, over = true): number[] {
  let step = 1;
  for (let next = 0; most / step > 7; next++) step *= next % 3 === 1 ? 2.5 : 2;
  const count = over ? Math.ceil(most / step - 1e-9) : Math.floor(most / step + 1e-9);
  return Array.from({ length: Math.max(1, count) + 1 }, (_, i) => i * step);
}
