import type { Material } from "#pieces/piece.ts";
import { bondOf, coatsOf } from "./bond.ts";
import { corkFor } from "./bottom.ts";
import { cementOf } from "./cement-choice.ts";
import type { MakingInput } from "../input.ts";
import type { Bond } from "../need.ts";
import { areaOf, marginOf, partsByArea, piecesOf } from "./part-areas.ts";

const { leather, board, steel, cork } = coatsOf;

/** What is stuck from the insole down, with the cement that the maker chose, and the sock with latex. */
export function bottomBonds({ pieces, said, made }: MakingInput): readonly Bond[] {
  const area = (material: Material): number => areaOf(piecesOf(pieces, material));
  const filler = area("filler"), margin = marginOf(pieces), from = "insole less bottom filler, which lies between the margins";
  const depth = made?.filler?.depth, between = depth ? corkFor(depth.mostMm).layers - 1 : 0;
  const glue = cementOf(said);
  const cement = (name: string, areaMm2: number, coats: readonly [number, number], from: string): Bond => bondOf(name, glue, areaMm2, coats, from);
  return [
    cement("second board to the insole", area("second board"), [board, board], "second board"),
    cement("shank between the boards", area("shank"), [steel, steel], "shank, both its faces"),
    cement("lasting margin to the insole", margin, [leather, board], from),
    cement("upper to the lining in the margin", margin, [leather, leather], from),
    cement("bottom filler", filler, [cork, board], "bottom filler"),
    cement("layers of the filler", between * filler, [cork, cork], "bottom filler, between each two sheets"),
    cement("outsole", area("sole leather"), [leather, leather], "outsole"),
    ...partsByArea(piecesOf(pieces, "heel leather")).map(({ name, net }) => cement(name, net, [leather, leather], `${name}; every layer of the heel is stuck to what lies above it`)),
    bondOf("sock", "latex", area("sock leather"), [1, 0], "sock, its flesh side alone"),
  ].filter(({ areaMm2 }) => areaMm2 > 0);
}
