import { finding, type Finding } from "#base/findings.ts";
import type { KnownLeather } from "#leather/leather.ts";
import { measureOf } from "../amounts/good-measures.ts";
import { goodIds, type GoodId } from "../goods.ts";
import { goodMeant } from "../money/good-meant.ts";
import type { MakingSaid } from "../said.ts";
import { inUnit, ofUnit, readAmount } from "../amounts/units.ts";

/** Sizes of whole skins as they are sold, ft²: common practice, no source. A side of a cow is half of it. */
export const usualSkinFt2: Readonly<Record<KnownLeather, number>> = { goat: 5, calf: 12, nappa: 7, cow: 22, pig: 10, "lining goat": 5 };
/** A shoulder tanned with bark, from which stiffeners are cut, ft²: common practice, no source. */
export const usualShoulderFt2 = 8;

/** Size of one skin or sheet in mm², as far as the maker said it so that it can be read. */
export interface SkinSaid {
  readonly mm2: number;
  readonly words: string;
}
export type SkinSizes = ReadonlyMap<GoodId, SkinSaid>;

/** Reads what is said of sizes of skins and sheets. Spools, tins and packs are left to what buys them; an empty field says nothing. */
export function readSkins({ skins = {} }: Pick<MakingSaid, "skins">, findings: Finding[]): SkinSizes {
  const sizes = new Map<GoodId, SkinSaid>();
  for (const [name, written] of Object.entries(skins)) {
    const good = goodIds.find((id) => id === name), words = String(written).trim();
    if (good === undefined) findings.push(finding("skin-of-unknown", { name, ...goodMeant(name) }));
    else if (measureOf[good] === "area" && words !== "") {
      const read = readAmount(written, "area");
      const wrong = "wrong" in read ? read.wrong : read.value === 0 ? `"${words}" is nothing; write how large one is` : undefined;
      if (wrong !== undefined) findings.push(finding("skin-unread", { good, wrong }));
      else if ("value" in read) sizes.set(good, { mm2: read.value, words });
    }
  }
  return sizes;
}

export interface SkinSize {
  readonly mm2: number;
  /** By the maker, not the usual one. */
  readonly said: boolean;
}

/** A skin so many times smaller or larger than usual is a slip of the unit, or the size of several. */
const oddTimes = 5;

/** The size of a skin to reckon with: the maker's, or the usual one. A maker's that is far from any is told. */
export function skinSize(sizes: SkinSizes, good: GoodId, usualFt2: number, findings: Finding[]): SkinSize {
  const said = sizes.get(good);
  if (said === undefined) return { mm2: ofUnit(usualFt2, "ft2"), said: false };
  const ft2 = inUnit(said.mm2, "ft2");
  if (ft2 > oddTimes * usualFt2 || oddTimes * ft2 < usualFt2) findings.push(finding("skin-odd", { good, got: said.words, ft2, usualFt2, many: ft2 > usualFt2 }));
  return { mm2: said.mm2, said: true };
}
