// Time of the check on the last: the example's card laid back on it, against laying the same shell flat once. Run by
// `npm run bench -- wrap`. Milliseconds: best (… worst; best of the processor's own time) of three medians of five.
import { layCardBack } from "#shell/check-card.ts";
import { layFree } from "#shell/lay-flat.ts";
import { demoBoard } from "../test/support/demo-shell.ts";
import { readyToCheck } from "../test/support/laid-back.ts";
import { growth, shown, timed } from "./support/timing.ts";

const { last } = demoBoard();
const sizes = [1_500, 3_000, 6_000];

console.log("triangles  laid back on the last     laid flat once            ratio  steps  rest");
const times = sizes.map((size) => {
  const { coarse, flat } = readyToCheck(last, {}, { cut: 12_000, wrapped: size });
  const lay = () => layCardBack(coarse, flat.shell.mesh, () => {});
  const back = timed(lay);
  const once = timed(() => layFree(coarse.shell));
  const { steps, settled } = lay();
  const triangles = coarse.shell.mesh.triangles.length / 3;
  console.log(`${String(triangles).padStart(9)}  ${shown(back)}${shown(once)}${(back.processor / once.processor).toFixed(1).padStart(5)}  ${String(steps.length).padStart(5)}  ${settled ? "yes" : "no"}`);
  return back.processor;
});
console.log(`growth: n^${growth(sizes, times).toFixed(2)}`);
