import type { Material, Piece } from "#pieces/piece.ts";
import type { GoodId } from "../goods.ts";
import type { Need, Waste } from "../need.ts";
import { countOf, largestOf, netOf, partsByArea, piecesOf } from "./part-areas.ts";
import { smallestBox } from "./smallest-box.ts";
import { grossOf } from "./waste.ts";

export type About = Pick<Need, "kind" | "reason" | "source"> & { readonly thicknessMm?: number };

/** A need cut from sheet or board, where a pair has such pieces. */
export const fromSheet = (good: GoodId & Material, pieces: readonly Piece[], waste: Waste, about: About): readonly Need[] => cutFrom(good, piecesOf(pieces, good), waste, about);

/** Room for the largest piece, and for all of its name in a pair. */
export const holdsOf = (cut: readonly Piece[], largest: Piece): NonNullable<Need["holds"]> => ({ ...smallestBox(largest.outline), count: countOf(cut.filter(({ name }) => name === largest.name)) });

/** The same of some pieces, whatever their material is called. */
export function cutFrom(good: GoodId, cut: readonly Piece[], waste: Waste, about: About): readonly Need[] {
  const largest = largestOf(cut);
  if (!largest) return [];
  const parts = partsByArea(cut), net = netOf(parts);
  return [{ good, measure: "area", parts, net, gross: grossOf(net, waste), waste, holds: holdsOf(cut, largest), ...about }];
}
