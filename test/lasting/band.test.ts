import { expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { Cancelled } from "#base/watch.ts";
import { bandOf, quantile } from "#lasting/band.ts";
import { swapped } from "#lasting/swap.ts";
import { layingOf, turned } from "#lasting/turn.ts";
import { leatherFrom } from "#leather/leather-from.ts";
import { givingMore } from "#leather/toe-law.ts";
import { standIn, standInCase } from "./stand-in.ts";

const pattern = (() => {
  const pull = standIn().puller(standInCase.fine, standInCase);
  return { uv: standInCase.fine.uv, lasted: pull(standInCase, standInCase.fine.uv, () => {}) };
})();
const options = { mechanics: standIn(), seed: 7 };

test("the band is that of the drawn leathers, laid about the fine prediction", () => {
  const { banded, draws, centre, perTenth } = bandOf(standInCase, pattern, options);
  expect(draws.length).toBe(30);
  const off = draws.map((ends) => ends.throatDepthMm - centre.throatDepthMm).sort((a, b) => a - b);
  const { throatDepthMm: t } = banded;
  expect(t.predicted).toBe(pattern.lasted.ends.throatDepthMm);
  // 80 of 100: of 30 draws 3 or fewer lie outside on either side.
  expect(off.filter((mm) => t.predicted + mm < t.low).length).toBe(3);
  expect(off.filter((mm) => t.predicted + mm > t.high).length).toBe(3);
  expect(banded.backHeightMm.high - banded.backHeightMm.low).toBeCloseTo(0, 9);
  // The stand-in's throat comes 4 mm nearer a leather of the usual give: 0.4 mm for a tenth more.
  expect(perTenth.throatDepthMm).toBeCloseTo(-0.4, 6);
});

test("a leather that is known better has a narrower band, and a seed always gives the same", () => {
  const width = (share: number): number => {
    const { along, across, bias, common } = standInCase.upper.spread, upper = { ...standInCase.upper, spread: { along: along * share, across: across * share, bias: bias * share, common: common * share } };
    const { low, high } = bandOf({ ...standInCase, upper }, pattern, options).banded.throatDepthMm;
    return high - low;
  };
  expect(width(0.5)).toBeLessThan(0.7 * width(1));
  expect(bandOf(standInCase, pattern, options)).toEqual(bandOf(standInCase, pattern, options));
  expect(bandOf(standInCase, pattern, options).draws.slice(0, 10)).toEqual(bandOf(standInCase, pattern, { ...options, draws: 10 }).draws);
  expect(bandOf(standInCase, pattern, { ...options, seed: 8 }).draws).not.toEqual(bandOf(standInCase, pattern, options).draws);
});

test("drawing can be followed and stopped", () => {
  const told: number[] = [];
  bandOf(standInCase, pattern, { ...options, watch: (_, fraction) => told.push(fraction) });
  expect([...told].sort((a, b) => a - b)).toEqual(told);
  const stop = (_: string, fraction: number) => {
    if (fraction > 0.5) throw new Cancelled();
  };
  expect(() => bandOf(standInCase, pattern, { ...options, watch: stop })).toThrow(Cancelled);
});

test("draws that do not come to rest are left out and told; where most do not, all of them make a rough band instead of none", () => {
  const base = standIn(), restless = (every: (k: number) => boolean) => {
    let k = 0;
    return { ...base, puller: (...on: Parameters<typeof base.puller>) => (...of: Parameters<ReturnType<typeof base.puller>>) => ({ ...base.puller(...on)(...of), settled: !every(k++) }) };
  };
  const some = bandOf(standInCase, pattern, { ...options, mechanics: restless((k) => k % 5 === 4) });
  expect([some.draws.length, some.unsettled]).toEqual([24, 6]);
  expect(explain(some.findings[0]!)).toBe("6 of the 30 leathers that were tried did not come to rest on the last and are left out.");
  const none = bandOf(standInCase, pattern, { ...options, mechanics: restless(() => true) }), all = bandOf(standInCase, pattern, options);
  expect(none.banded).toEqual(all.banded);
  expect(explain(none.findings[0]!)).toMatch(/^30 of the 30 leathers that were tried did not come to rest on the last, so where the ends lie between is told only roughly\./);
  expect(all.findings).toEqual([]);
});

// Worked by hand: of 1 … 5 the first decile lies 0.4 of the way from 1 to 2.
test("quantiles lie between the sorted values in proportion", () => {
  expect(quantile([1, 2, 3, 4, 5], 0.1)).toBeCloseTo(1.4, 12);
  expect([quantile([1, 2, 3, 4, 5], 0), quantile([1, 2, 3, 4, 5], 1), quantile([2], 0.9), quantile([], 0.5)]).toEqual([1, 5, 2, 0]);
});

test("each layer is turned both ways, and what that does is told against how it lies now", () => {
  const { effects, findings } = turned(standInCase, pattern, options);
  expect(effects.map(({ layer, byDeg }) => [layer, byDeg])).toEqual([["upper", 15], ["upper", -15], ["lining", 15], ["lining", -15]]);
  expect(effects.map(({ ends }) => Math.round(ends.throatDepthMm * 1e6) / 1e6)).toEqual([1, -1, 0, 0]);
  expect(explain(findings[1]!)).toBe("The upper turned 15 degrees clockwise: throat 1.0 mm nearer to the toe, back as now, inner side as now, outer side as now.");
  expect(turned({ ...standInCase, lining: undefined as never }, pattern, options).effects.length).toBe(2);
  expect(layingOf(true).map(explain)[0]).toMatch(/^Upper, vamp and quarters: least stretch from heel to toe/);
});

test("another leather on the same pattern ends elsewhere by what it gives more, with its own band", () => {
  const more = { ...standInCase.upper, name: "soft goat", numbers: givingMore(standInCase.upper.numbers, 1.5) };
  const { from, to, finding } = swapped(standInCase, pattern, more, options);
  expect(to.predicted - from.predicted).toBeCloseTo(-2, 6);
  expect(to.high - to.low).toBeGreaterThan(1.2 * (from.high - from.low));
  expect(explain(finding)).toMatch(/^The same pattern in soft goat instead of goat: the throat ends at \d+\.\d mm instead of \d+\.\d mm, 2\.0 mm nearer to the toe; between \d+\.\d mm and \d+\.\d mm in 80 of 100 such leathers\.$/);
  const known = bandOf(standInCase, pattern, options);
  expect(swapped(standInCase, pattern, more, { ...options, known })).toEqual(swapped(standInCase, pattern, more, options));
  expect(swapped(standInCase, pattern, leatherFrom({ known: "nappa" }, "upper", 1), options).to.predicted).toBeLessThan(from.predicted);
});
