import type { Material } from "#pieces/piece.ts";
import { bondOf, coatsOf } from "./bond.ts";
import type { MakingInput } from "../input.ts";
import type { Bond } from "../need.ts";
import { areaOf, marginOf, partsByArea, piecesOf } from "./part-areas.ts";

const { leather, board, steel, cork } = coatsOf;

/** What is stuck from the insole down, with contact cement, and the sock with latex. */
export function bottomBonds({ pieces }: MakingInput): readonly Bond[] {
  const area = (material: Material): number => areaOf(piecesOf(pieces, material));
  const filler = area("filler"), margin = marginOf(pieces), from = "insole less bottom filler, which lies between the margins";
  const cement = (name: string, areaMm2: number, coats: readonly [number, number], from: string): Bond => bondOf(name, "contact cement", areaMm2, coats, from);
  return [
    cement("second board to the insole", area("second board"), [board, board], "second board"),
    cement("shank between the boards", area("shank"), [steel, steel], "shank, both its faces"),
    cement("lasting margin to the insole", margin, [leather, board], from),
    cement("upper to the lining in the margin", margin, [leather, leather], from),
    cement("bottom filler", filler, [cork, board], "bottom filler"),
    cement("outsole", area("sole leather"), [leather, leather], "outsole"),
    ...heel(pieces),
    bondOf("sock", "latex", area("sock leather"), [1, 1], "sock"),
  ].filter(({ areaMm2 }) => areaMm2 > 0);
}

/** Every layer of the heel is stuck to what lies above it. */
const heel = (pieces: MakingInput["pieces"]): readonly Bond[] =>
  partsByArea(piecesOf(pieces, "heel leather")).map(({ name, net }) => bondOf(name, "contact cement", net, [leather, leather], name));
