import type { Watch } from "#base/watch.ts";
import type { Card } from "#wrap/card.ts";
import { Ground } from "#wrap/ground.ts";
import { wrap, type Wrapped } from "#wrap/wrap.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { FlatShell } from "./shell.ts";

/** How fine a shell is cut for the check: the worst stand-off then comes within some tenths of that on twice as many. */
export const checkTriangles = 1_500;

/**
 * Pattern card of about 250 g/m² by its bending; softer against pull than card, as the leather that it stands for, which also keeps its
 * folds from locking. Pressed on by a hand: 0.02 N/mm² is 6 N under a thumb. All three are our own choice, and how far the card stands off
 * hangs on them: half or twice the pull or the press take 2 mm to 0.4 or 4 mm (docs/method/check.md). So it is told for three hands.
 */
export const checkCard: Card = { stretch: 100, bend: 3, press: 0.02, ground: 20 };

/** A firm hand presses so much more than the usual one, a light one so much less; twice the stiffness against pull does as a light hand. */
export const handFactor = 2;

/** How far nicks run up from the feather edge, and how far from the back edges and the centre line they stay away, mm: there no card is cut. */
const nickMm = 18;
const clearMm = 12;
/** Share of its stiffness with which nicked card resists being pushed together along the edge: its tongues slide over one another. */
const nickedShare = 0.02;

/** The flat card of a coarse shell laid back on the surface it should lie on, its back edges taped, toe and seat points held. */
export function layCardBack({ shell: { mesh, edges }, uv }: FlatShell, over: Mesh, watch: Watch, card: Card = checkCard, nicks = { mm: nickMm, share: nickedShare }): Wrapped {
  const taped = Uint32Array.from(Array.from(edges.backMedial).flatMap((v, i) => [v, edges.backLateral[i]!]));
  const held = Uint32Array.of(edges.centre[0]!, edges.backMedial[0]!);
  // The fold line is kept on the last's centre line, whose plane is the last's own, y = 0.
  const guided = { vertices: edges.centre, across: Float64Array.from({ length: 3 * edges.centre.length }, (_, k) => (k % 3 === 1 ? 1 : 0)) };
  return wrap({ triangles: mesh.triangles, flat: uv, taped, held, guided, pushed: nickedTriangles(mesh.triangles, uv, edges, nicks) }, mesh.positions, new Ground(over), { card, watch });
}

function nickedTriangles(triangles: Uint32Array, uv: Float64Array, edges: FlatShell["shell"]["edges"], { mm, share }: { readonly mm: number; readonly share: number }): Float64Array {
  const feather = [...edges.featherMedial, ...edges.featherLateral];
  const clear = [...edges.backMedial, ...edges.backLateral, ...edges.centre];
  return Float64Array.from({ length: triangles.length / 3 }, (_, t) => {
    let x = 0, y = 0;
    for (let k = 3 * t; k < 3 * t + 3; k++) {
      x += uv[2 * triangles[k]!]! / 3;
      y += uv[2 * triangles[k]! + 1]! / 3;
    }
    const from = (ids: readonly number[]): number => Math.sqrt(ids.reduce((least, v) => Math.min(least, (uv[2 * v]! - x) ** 2 + (uv[2 * v + 1]! - y) ** 2), Infinity));
    return from(feather) < mm && from(clear) > clearMm ? share : 1;
  });
}
