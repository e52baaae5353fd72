import type { Calendar } from "#making/calendar/calendar.ts";
import type { Cost } from "#making/money/cost.ts";
import type { Measure } from "#making/goods.ts";
import type { Making } from "#making/making.ts";
import type { Bond, Need } from "#making/need.ts";
import type { ThreadNeed } from "#making/thread/thread-need.ts";
import type { Stitched } from "#pieces/stitching.ts";
import { round, rounded } from "./report-number.ts";

/** The unit an amount is in, by how it is counted. */
const unitOf: Readonly<Record<Measure, string>> = { area: "mm2", length: "mm", volume: "mm3", mass: "g", count: "pieces" };

/** Lines of stitches on one shoe. */
export const stitchingReport = (stitching: readonly Stitched[]) => stitching.map((line) => rounded(line));

/** What to buy, what it costs and the steps, as plain data. Field by field: docs/report.md. */
export function makingReport({ pairs, needs, bonds, thread, toBuy, tools, cost, steps, calendar, cautions }: Making) {
  return {
    pairs,
    materials: needs.map(materialReport),
    bonds: bonds.map((bond: Bond) => rounded(bond)),
    thread: threadReport(thread),
    toBuy: toBuy.map((one) => rounded(one)),
    tools: tools.map(({ tool, use, standIn, must, steps: at }) => ({ name: tool, use, ...(standIn && { standIn }), must, steps: at })),
    cost: costReport(cost),
    steps,
    ...(calendar && { calendar: calendarReport(calendar) }),
    cautions: cautions.map(({ hazard, title, limits = [], steps: at }) => ({ hazard, title, limits, steps: at })),
  };
}

function materialReport({ good, measure, parts, net, gross, waste, ...about }: Need) {
  return {
    name: good,
    unit: unitOf[measure],
    parts: parts.map((part) => rounded(part)),
    net: round(net),
    gross: round(gross),
    ...(waste && { waste: rounded(waste) }),
    ...rounded(about),
  };
}

const threadReport = (thread: ThreadNeed) => rounded(thread);
const costReport = (cost: Cost) => rounded(cost);
const calendarReport = ({ sessions, ready }: Calendar) => ({ sessions, ready });
