import type { Measure } from "#making/goods.ts";
import type { Making } from "#making/making.ts";
import type { Need } from "#making/need.ts";
import { rounded } from "./report-number.ts";

/** The unit an amount is in, by how it is counted. */
const unitOf: Readonly<Record<Measure, string>> = { area: "mm2", length: "mm", volume: "mm3", mass: "g", count: "pieces" };

/** What to buy, what it costs and the steps, as plain data. Field by field: docs/report.md. */
export function makingReport({ pairs, needs, bonds, thread, toBuy, tools, cost, steps, calendar, cautions }: Making) {
  return {
    pairs,
    materials: needs.map(materialReport),
    ...rounded({ bonds, thread, toBuy }),
    tools: tools.map(({ tool, use, standIn, must, steps: at }) => ({ name: tool, use, ...(standIn && { standIn }), must, steps: at })),
    cost: rounded(cost),
    steps,
    ...(calendar && { calendar }),
    cautions: cautions.map(({ hazard, title, limits = [], steps: at }) => ({ hazard, title, limits, steps: at })),
  };
}

function materialReport({ good, measure, parts, net, gross, waste, ...about }: Need) {
  return { name: good, unit: unitOf[measure], ...rounded({ parts, net, gross, ...(waste && { waste }), ...about }) };
}
