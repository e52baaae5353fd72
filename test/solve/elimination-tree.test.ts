import { expect, test } from "vitest";
import { adjacencyOf } from "#solve/adjacency.ts";
import { eliminationTree, inverseOrder, postorder } from "#solve/elimination-tree.ts";

test("the tree of a small matrix, found by hand", () => {
  // Edges 0-3, 1-2, 1-4, 2-3: eliminating 1 joins 2 and 4, so 2 has 3 and 4; 3 then has 4.
  const graph = adjacencyOf(5, new Uint32Array([0, 1, 1, 2]), new Uint32Array([3, 2, 4, 3]));
  const natural = Uint32Array.from([0, 1, 2, 3, 4]);
  expect([...eliminationTree(graph, natural, natural)]).toEqual([3, 2, 3, 4, -1]);
});

test("postorder puts every subtree in one run with its root last", () => {
  const parent = Int32Array.from([4, 3, 4, 5, 5, -1, -1]);
  const order = postorder(parent);
  expect([...order]).toEqual([1, 3, 0, 2, 4, 5, 6]);
  expect([...inverseOrder(order)].map((at) => order[at])).toEqual([0, 1, 2, 3, 4, 5, 6]);
});
