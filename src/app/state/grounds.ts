import { medialSign } from "#last/last.ts";
import type { LastPair, Pair } from "#job/pair.ts";
import type { Ground, Piece } from "#pieces/piece.ts";

/** The flat sheets of a pair that have a place on the last: those that the pair brings, else upper and bottom. */
export function groundsOf(pair: LastPair): readonly Ground[] {
  const given = (pair as { readonly grounds?: readonly Ground[] }).grounds;
  if (given) return given;
  const { last, flat, bottom } = pair;
  // Flat pieces are drawn as right ones.
  const asRight = (uv: Float64Array): Float64Array => (medialSign(last.side) === 1 ? uv : uv.map((v, i) => (i % 2 === 1 ? -v : v)));
  const { mesh } = flat.shell;
  const onBottom = bottom.bottom.mesh;
  return [
    { name: "upper", positions: mesh.positions, triangles: mesh.triangles, uv: asRight(flat.uv) },
    { name: "bottom", positions: onBottom.positions, triangles: onBottom.triangles, uv: asRight(bottom.uv) },
  ];
}

/** The ground that a piece is drawn on, if it has one. */
export function groundOf(pair: Pair, piece: Piece): Ground | undefined {
  if (pair.from !== "last") return undefined;
  const name = piece.ground ?? usual(piece);
  return name && groundsOf(pair).find((g) => g.name === name);
}

/** Of pieces that do not say it themselves. */
function usual({ name }: Piece): Ground["name"] | undefined {
  if (/^upper\b/.test(name)) return "upper";
  return /^(insole|outsole|sock)$/.test(name) ? "bottom" : undefined;
}
