// Time of the mechanics of pulling over: a strip dragged round a cylinder against friction in four increments, each to rest, against
// laying a cap of as many triangles flat once. Run by `npm run bench -- pull-over`. Milliseconds: best (… worst; best of the processor's
// own time) of three medians of five.
import { Flattener } from "#flatten/flatten.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import { beltRound, dragged } from "../test/support/belts.ts";
import { capMesh } from "../test/support/formula-surfaces.ts";
import { growth, shown, timed } from "./support/timing.ts";

const law = new ToeLaw({ along: 60, across: 30, bias: 28, poisson: 0.4, toe: 0.03, early: 0.25 });
const edges = [1, 0.5, 0.25];

console.log("triangles  dragged                   laid flat once            ratio  at rest");
const sizes: number[] = [];
const times = edges.map((edge) => {
  const belt = beltRound({ radius: 40, degrees: 120, tail: 20, width: 10, edge });
  const triangles = belt.sheet.triangles.length / 3, cap = capMesh(40, 60, Math.round(Math.sqrt(triangles / 6)));
  const drag = () => dragged(belt, { law, friction: 0.3, load: 2, way: 4, increments: 4 });
  const pulled = timed(drag), flat = timed(() => new Flattener(cap.positions.length / 3, cap.triangles).run(cap.positions));
  console.log(`${String(triangles).padStart(9)}  ${shown(pulled)}${shown(flat)}${(pulled.processor / flat.processor).toFixed(1).padStart(5)}  ${drag().settled ? "yes" : "no"}`);
  sizes.push(triangles);
  return pulled.processor;
});
console.log(`growth: n^${growth(sizes, times).toFixed(2)}; memory ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB`);
