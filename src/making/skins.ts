import { finding, type Finding } from "#base/findings.ts";
import type { KnownLeather } from "#leather/leather.ts";
import { measureOf } from "./good-measures.ts";
import { goodIds, type GoodId } from "./goods.ts";
import type { MakingSaid } from "./said.ts";
import { ofUnit, readAmount } from "./units.ts";

/** Sizes of whole skins as they are sold, ft²: common practice, no source. A side of a cow is half of it. */
export const usualSkinFt2: Readonly<Record<KnownLeather, number>> = { goat: 5, calf: 12, nappa: 7, cow: 22, pig: 10, "lining goat": 5 };
/** A shoulder tanned with vegetable matter, from which stiffeners are cut, ft²: common practice, no source. */
export const usualShoulderFt2 = 8;

/** Sizes of one skin or sheet in mm², as far as the maker said them so that they can be read. */
export type SkinSizes = Readonly<Partial<Record<GoodId, number>>>;

/** Reads what is said of sizes of skins and sheets. Sizes of what is no leather and no sheet are left to what buys it. */
export function readSkins({ skins = {} }: Pick<MakingSaid, "skins">, findings: Finding[]): SkinSizes {
  const sizes: Partial<Record<GoodId, number>> = {};
  for (const [key, written] of Object.entries(skins)) {
    const good = goodIds.find((id) => id === key);
    if (good === undefined) findings.push(finding("skin-of-unknown", { good: key }));
    else if (measureOf[good] === "area") {
      const read = readAmount(written, "area");
      if ("wrong" in read) findings.push(finding("skin-unread", { good, wrong: read.wrong }));
      else if (read.value === 0) findings.push(finding("skin-unread", { good, wrong: "a skin of 0 holds nothing" }));
      else sizes[good] = read.value;
    }
  }
  return sizes;
}

export interface SkinSize {
  readonly mm2: number;
  /** By the maker, not the usual one. */
  readonly said: boolean;
}

export const skinSize = (sizes: SkinSizes, good: GoodId, usualFt2: number): SkinSize => {
  const said = sizes[good];
  return said === undefined ? { mm2: ofUnit(usualFt2, "ft2"), said: false } : { mm2: said, said: true };
};
