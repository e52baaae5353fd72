import { finding, type Finding } from "#base/findings.ts";
import { leastPerTenthMm } from "./log-update.ts";
import type { ShoeEntry } from "./log.ts";

/** Why a pair that is written down teaches nothing about the leather that is cut now; nothing where it teaches. */
export function teachesNot(shoes: readonly ShoeEntry[], leatherNow: string): Finding | undefined {
  const first = shoes[0];
  if (!first) return undefined;
  const { pair, leather } = first, told = shoes.find(({ foretold }) => foretold)?.foretold;
  if (leather !== leatherNow) return finding("log-teaches-not", { pair, leather, why: "other leather" });
  if (!told) return finding("log-teaches-not", { pair, leather, why: "not foretold" });
  if (Math.abs(told.perTenthMm) < leastPerTenthMm) return finding("log-teaches-not", { pair, leather, why: "hardly moves", perTenthMm: told.perTenthMm });
  if (!shoes.some(({ foretold, measured }) => foretold && measured.throatDepthMm !== undefined)) return finding("log-teaches-not", { pair, leather, why: "no throat" });
  return undefined;
}
