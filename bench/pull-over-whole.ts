// Time of a whole pull-over: laid on, all drafts, at rest; and memory. Run by `npm run bench -- pull-over-whole`. Against laying the same
// shell flat once in the same run. Milliseconds: best (… worst; best of the processor's own time) of three runs, flat: of three medians of five.
import { pullOver } from "#lasting/pull-over.ts";
import { layFree } from "#shell/lay-flat.ts";
import { exampleTable, readyToPull } from "../test/support/ready-to-pull.ts";
import { growth, shown, timed } from "./support/timing.ts";

const sizes = [1_200, 5_000, 10_000];
const taken: number[] = [];
console.log("triangles  pulled over               laid flat once            over/flat  steps  settled  memory MB");
for (const triangles of sizes) {
  const input = readyToPull({ triangles }), { over } = exampleTable(triangles);
  const { steps, settled } = pullOver(input);
  const times = [timed(() => pullOver(input), 1), timed(() => layFree(over))];
  taken.push(times[0]!.processor);
  console.log(`${String(input.cut.triangles.length / 3).padStart(9)}  ${times.map(shown).join("")}${(times[0]!.processor / times[1]!.processor).toFixed(0).padStart(9)}  ${String(steps).padStart(5)}  ${settled ? "yes" : "no "}      ${(process.memoryUsage().rss / 1e6).toFixed(0).padStart(9)}`);
}
console.log(`growth: n^${growth(sizes, taken).toFixed(2)}`);
