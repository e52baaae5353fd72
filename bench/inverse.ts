// Time of the pattern corrected for its leather, against laying the same shell flat once. Run by `npm run bench -- inverse`. Cold: from the
// uncorrected pattern, all set up anew. Warm: after a pull, or the direction of the upper, was changed. Milliseconds: best (… worst; best
// of the processor's own time) of three medians of five.
import { correctFlat } from "#lasting/correct.ts";
import { fabricOf } from "#lasting/fabric.ts";
import { lastingFrom, type LastingChoices } from "#lasting/settings.ts";
import { leatherFrom } from "#leather/leather-from.ts";
import type { KnownLeather } from "#leather/leather.ts";
import { layFree } from "#shell/lay-flat.ts";
import { lastOf, tableOf } from "../test/support/laid-panels.ts";
import { growth, shown, timed } from "./support/timing.ts";

const usual = lastingFrom();
const fabricFor = (known: KnownLeather, settings: LastingChoices) => fabricOf(leatherFrom({ known }, "upper", 1), leatherFrom(undefined, "lining", 0.8), settings, "taped");
const sizes = [2_500, 5_000, 10_000, 20_000, 40_000];

for (const known of ["goat", "nappa"] as const) {
  console.log(`${known}\ntriangles  cold                      after a pull              after a direction         laid flat once             cold/flat  steps`);
  const cold: number[] = [];
  for (const size of sizes) {
    const { last, flat, over } = tableOf(lastOf(), { triangles: size });
    const run = (settings: LastingChoices, like?: ReturnType<typeof correctFlat>) => correctFlat(flat, fabricFor(known, settings), settings, { last, like });
    const before = run(usual);
    const times = [() => run(usual), () => run({ ...usual, pullJointN: usual.pullJointN + 3 }, before), () => run({ ...usual, upperTurnDeg: 5 }, before), () => layFree(over)].map((work) => timed(work));
    cold.push(times[0]!.processor);
    console.log(`${String(over.mesh.triangles.length / 3).padStart(9)}  ${times.map(shown).join("")}${(times[0]!.processor / times[3]!.processor).toFixed(1).padStart(9)}  ${String(before.steps).padStart(5)}`);
  }
  console.log(`growth: n^${growth(sizes, cold).toFixed(2)}`);
}
