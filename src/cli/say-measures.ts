// What `measure` says: a last, its shape, two lasts beside each other, a foot, and what all of it means.
import { pairLimits, type LastComparison } from "#last/compare.ts";
import type { LastDescription } from "#last/describe.ts";
import type { FootMeasures } from "#last/foot-measures.ts";
import type { Foot } from "#last/foot.ts";
import { landmarkHelp, measureHelp, type Help } from "#last/help.ts";
import type { Landmarks, Last, Measures } from "#last/last.ts";
import { mm, percent } from "./say-numbers.ts";

const degrees = (value: number): string => `${value.toFixed(1)}°`;
const unitWords = { m: "metres", dm: "decimetres", cm: "centimetres", mm: "millimetres", in: "inches" } as const;

/** Rows of a name and what stands in its columns, lined up. */
function table(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)));
  return rows.map((row) => `  ${row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join("  ")}`.trimEnd()).join("\n");
}

const told = Object.keys(measureHelp).filter((m) => m !== "featherMedial" && m !== "featherLateral") as (keyof Measures)[];

/** The last in one sentence and its measures as a list. */
export function sayLast(last: Last): string {
  const from = last.source === "scan" ? `from a scan in ${unitWords[last.placement.unit]}` : "from measurements";
  const said = last.placed.length > 0 ? `\nPlaced by you: ${last.placed.map((name) => landmarkHelp[name].name).join(", ")}.` : "";
  return `${last.name}: a ${last.side} last, ${from}.\n${table(told.map((m) => [measureHelp[m].name, mm(last.measures[m])]))}${said}`;
}

/** Its shape in numbers. */
export function sayDescription(d: LastDescription): string {
  const { heelCurve: h } = d;
  const rows: string[][] = [
    ["joint line, to the axis", degrees(d.jointLineDegrees)],
    ["joints from the seat, of the length: inside", percent(d.jointMedialShare)],
    ["  outside", percent(d.jointLateralShare)],
    ["heel pitch, seat over tread", mm(d.heelPitchMm)],
    ["  its slope", degrees(d.heelPitchDegrees)],
    ["heel curve, farthest behind the seat point", mm(h.bulgeMm)],
    ["  at a height of", mm(h.bulgeHeightMm)],
    ["  from there forward again to the comb", mm(h.hookMm)],
    ...d.toeHeights.map(({ behindMm, heightMm }) => [`toe height ${behindMm} mm behind the toe point`, mm(heightMm)]),
    ...(d.comb ? [["comb, height", mm(d.comb.heightMm)], ["comb, length", mm(d.comb.lengthMm)]] : []),
  ];
  const head = ["across, at", "bottom width", "hollow (+) or round (−)", "wall inside", "wall outside"];
  const across = d.stations.map((s) => [`${(100 * s.share).toFixed(0)} % of the length`, mm(s.bottom.widthMm), mm(s.bottom.hollowMm), mm(s.medial.surfaceMm), mm(s.lateral.surfaceMm)]);
  return `Shape:\n${table(rows)}\n${across.length > 0 ? table([head, ...across]) : ""}`.trimEnd();
}

/** Two values and the second less the first, in the fewest decimals in which the printed numbers agree with each other; never "-0.0". */
export function differing(one: number, other: number): [string, string, string] {
  const at = (decimals: number): [string, string, string] => {
    const by = Number((other - one).toFixed(decimals));
    return [`${one.toFixed(decimals)} mm`, `${other.toFixed(decimals)} mm`, `${by > 0 ? "+" : ""}${(by || 0).toFixed(decimals)} mm`];
  };
  const agree = ([a, b, by]: readonly string[]): boolean => Math.abs(parseFloat(b!) - parseFloat(a!) - parseFloat(by!)) < 1e-6;
  return [1, 2, 3].map(at).find(agree) ?? at(1);
}

/** The verdict on two lasts, then what they differ by. */
export function sayComparison(a: Last, b: Last, c: LastComparison): string {
  const verdict = { pair: "a pair", "same side": "the same last twice, no pair", "no pair": "no pair" }[c.verdict];
  const rows = told.map((m) => [measureHelp[m].name, ...differing(a.measures[m], b.measures[m])]);
  return [
    `${a.name} beside ${b.name}${c.mirrored ? ", mirrored" : ""}: ${verdict}.`,
    `95 % of the surface lies within ${c.surface.p95Mm.toFixed(2)} mm (${mm(pairLimits.surfaceMm)} for a pair), the farthest ${mm(Math.abs(c.surface.maxMm))} ${c.surface.maxMm > 0 ? "out" : "in"}, ${c.surface.where}.`,
    `The feather lines lie ${c.feather.rmsMm.toFixed(2)} mm apart on average, at most ${mm(c.feather.maxMm)}, ${c.feather.where}.`,
    table([["", "this", "other", "differs"], ...rows]),
  ].join("\n");
}

/** What every measure and landmark is, how it was found here and how to find it by hand. */
export function sayHelp(last: Last): string {
  const one = (help: Help, placed = false): string =>
    [`${help.name}: ${help.meaning}`, `  Here: ${placed ? "placed by you. Otherwise: " : ""}${help.found}`, `  By hand: ${help.byHand}`, `  Source: ${help.source}.`].join("\n");
  const marks = (Object.keys(landmarkHelp) as (keyof Landmarks)[]).map((name) => one(landmarkHelp[name], last.placed.includes(name)));
  const measures = (Object.keys(measureHelp) as (keyof Measures)[]).map((name) => one(measureHelp[name]));
  return ["Landmarks", ...marks, "Measures", ...measures].join("\n");
}

const footNames: readonly (readonly [keyof FootMeasures, string])[] = [
  ["footLength", "foot length, heel to longest toe"],
  ["footBreadth", "foot breadth, across the ball"],
  ["ballGirth", "ball girth"],
  ["ballLength", "heel to inner ball"],
  ["heelBreadth", "heel breadth"],
  ["planLength", "length of the whole scan from above"],
  ["planBreadth", "breadth of the whole scan from above"],
  ["girthAt70", "girth at 70 % of that length"],
];

/** A foot in one sentence and its measures as a list. */
export function sayFoot(name: string, { side, placement, measures }: Foot): string {
  return `${name}: a ${side} foot, from a scan in ${unitWords[placement.unit]}.\n${table(footNames.map(([key, words]) => [words, mm(measures[key])]))}`;
}
