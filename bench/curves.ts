// Curves for the sheets: 36 outlines of a thousand points each, as the pieces of a pair have. Medians of 9, after one that is not counted.
// Aim on one thread of a 2-core machine: all fitted and turned into arcs in under 150 ms.
// The peer is what curves replace: the same outlines written point by point.
import { pushArcs } from "#plane/biarc.ts";
import { fitCurves } from "#plane/curve-fit.ts";
import type { CurvePath } from "#plane/curve-path.ts";

const runs = 9;
const count = 1000;
/** A fair outline by formula, each a little other than the last. */
const outlines = Array.from({ length: 36 }, (_, k) =>
  Float64Array.from(Array.from({ length: count }, (_, i) => {
    const a = (2 * Math.PI * i) / count;
    const r = (70 + k) * (1 + 0.05 * Math.cos(2 * a + k) + 0.03 * Math.cos(3 * a));
    return [r * Math.cos(a), 1.7 * r * Math.sin(a)];
  }).flat()),
);

function median(work: () => number): readonly [ms: number, result: number] {
  const result = work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return [times[runs >> 1]!, result];
}

function arcsOf({ xy, straight }: CurvePath): number {
  const arcs: number[] = [];
  straight.forEach((_, k) => pushArcs(arcs, xy[6 * k]!, xy[6 * k + 1]!, xy[6 * k + 2]!, xy[6 * k + 3]!, xy[6 * k + 4]!, xy[6 * k + 5]!, xy[6 * k + 6]!, xy[6 * k + 7]!, 0.001));
  return arcs.length / 3;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
const [written, letters] = median(() => sum(outlines.map((xy) => Array.from(xy, (v) => v.toFixed(4)).join(" ").length)));
const [fitted, pieces] = median(() => sum(outlines.map((xy) => fitCurves(xy, true).straight.length)));
const paths = outlines.map((xy) => fitCurves(xy, true));
const [bent, arcs] = median(() => sum(paths.map(arcsOf)));
const say = (what: string, ms: number, result: string): void => console.log(`${what.padEnd(40)} ${ms.toFixed(1).padStart(7)} ms ${(ms / written).toFixed(2).padStart(6)} x  ${result}`);
say(`${36 * count} points written as text (peer)`, written, `${letters} letters`);
say("fitted with cubics", fitted, `${pieces} pieces`);
say("cubics turned into arcs", bent, `${arcs} arcs`);
console.log(`both together ${(fitted + bent).toFixed(0)} ms; aim: under 150 ms`);
