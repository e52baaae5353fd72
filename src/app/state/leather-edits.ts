import type { Job } from "#job/job.ts";
import type { LeatherSaid, Strip, StripReading, StripWay, UpperLayer } from "#leather/leather.ts";
import type { Spot } from "./spot.ts";

/** How a strip is cut and marked unless the maker did it otherwise, mm; as the drawing of the test says. */
export const usualStrip = { widthMm: 20, gaugeMm: 100 } as const;

/** Says something about one leather; each edit gives a new job and leaves the old one alone. */
export function setLeather(job: Job, layer: UpperLayer, said: LeatherSaid): Job {
  return { ...job, leather: { ...job.leather, [layer]: { ...job.leather[layer], ...said } } };
}

/** Takes back what was said of one thing. */
export function forgetOfLeather(job: Job, layer: UpperLayer, key: keyof LeatherSaid): Job {
  const { [key]: _, ...rest } = job.leather[layer] ?? {};
  return { ...job, leather: { ...job.leather, [layer]: rest } };
}

export const stripsOf = (job: Job, layer: UpperLayer): readonly Strip[] => job.leather[layer]?.strips ?? [];

const setStrips = (job: Job, layer: UpperLayer, strips: readonly Strip[]): Job => (strips.length === 0 ? forgetOfLeather(job, layer, "strips") : setLeather(job, layer, { strips }));

/** One more strip, without readings yet; cut as the one before it. */
export function addStrip(job: Job, layer: UpperLayer, way: StripWay): Job {
  const strips = stripsOf(job, layer);
  const { widthMm, gaugeMm } = strips.at(-1) ?? usualStrip;
  return setStrips(job, layer, [...strips, { way, widthMm, gaugeMm, readings: [] }]);
}

export function addStrips(job: Job, layer: UpperLayer, more: readonly Strip[]): Job {
  return setStrips(job, layer, [...stripsOf(job, layer), ...more]);
}

export function removeStrip(job: Job, layer: UpperLayer, at: number): Job {
  return setStrips(job, layer, stripsOf(job, layer).filter((_, i) => i !== at));
}

export function setStrip(job: Job, layer: UpperLayer, at: number, part: Partial<Strip>): Job {
  return setStrips(job, layer, stripsOf(job, layer).map((s, i) => (i === at ? { ...s, ...part } : s)));
}

const withReadings = (job: Job, layer: UpperLayer, at: number, edit: (readings: readonly StripReading[]) => readonly StripReading[]): Job => setStrip(job, layer, at, { readings: edit(stripsOf(job, layer)[at]?.readings ?? []) });

/** One more reading, put in its place by the load. */
export function addReading(job: Job, layer: UpperLayer, at: number, reading: StripReading): Job {
  return withReadings(job, layer, at, (readings) => {
    const next = readings.findIndex((r) => r.loadN > reading.loadN);
    return next < 0 ? [...readings, reading] : readings.toSpliced(next, 0, reading);
  });
}

export function removeReading(job: Job, layer: UpperLayer, at: number, row: number): Job {
  return withReadings(job, layer, at, (readings) => readings.filter((_, i) => i !== row));
}

export function setReading(job: Job, layer: UpperLayer, at: number, row: number, part: Partial<StripReading>): Job {
  return withReadings(job, layer, at, (readings) => readings.map((r, i) => (i === row ? { ...r, ...part } : r)));
}

/** The length after a minute was not read after all. */
export function forgetAfter(job: Job, layer: UpperLayer, at: number, row: number): Job {
  return withReadings(job, layer, at, (readings) => readings.map((r, i) => (i === row ? { loadN: r.loadN, lengthMm: r.lengthMm } : r)));
}

/** What the work holds at "leather upper" (its thickness), "strip upper 0 widthMm" or "strip upper 0 2 loadN". */
export function leatherNumberAt(job: Job, spot: Spot): number | undefined {
  const [part, layer, at, ...rest] = spot.split(" ") as [string, UpperLayer, string | undefined, ...string[]];
  if (part === "leather") return job.leather[layer]?.thicknessMm;
  const strip = stripsOf(job, layer)[Number(at)];
  const [first, second] = rest;
  if (second === undefined) return first === "widthMm" || first === "gaugeMm" ? strip?.[first] : undefined;
  return strip?.readings[Number(first)]?.[second as keyof StripReading];
}
