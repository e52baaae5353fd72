// Threads, needles and stitches against published numberings, worked examples and closed forms; each names its source.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bladeMm, needleForTicket } from "#making/thread/needle-sizes.ts";
import { handRatio, lockstitchRatio, perInch, stitchMm, zigzagRatio } from "#making/thread/stitch-thread.ts";
import { denierOfTex, texToCottonTicket, threadDiameter, ticketToTex } from "#making/thread/thread-numbers.ts";
import { threadFor, usualThread } from "#making/thread/thread.ts";
import { sewingNeeds } from "#making/needs/sewing.ts";
import { stitchesWords } from "#making/steps/stitches.ts";
import type { Stitched } from "#pieces/stitching.ts";
import { pairOf } from "../support/sewn.ts";

describe("thread numbers", () => {
  test("ISO 1139: tex is grams to 1000 m, denier to 9000 m, and the metric number is metres to the gram", () => {
    // 9000 m of tex 50 weigh nine times 50 g.
    expect(denierOfTex(50)).toBe(450);
    // A thread of three plies of Nm 60: each has 60 m to the gram, so 1000 m of all weigh 3 × 1000 / 60 g; that is number 60.
    expect(ticketToTex(60)).toBe((3 * 1000) / 60);
  });

  test("metric tickets are 3 × 1000 / tex, cotton ones 3 × 590.54 / tex, 0.59 of the metric (a blog on apparel merchandising, 2017)", () => {
    expect([10, 20, 30, 40, 60, 80, 120].map(ticketToTex)).toEqual([300, 150, 100, 75, 50, 37.5, 25]);
    expect([20, 40, 60].map((ticket) => denierOfTex(ticketToTex(ticket)))).toEqual([1350, 675, 450]);
    expect(texToCottonTicket(50)).toBeCloseTo(35.4324, 12);
    // English cotton count: 840 yards of a pound; 1000 m of Ne 1 weigh 453.59237 g × 1000 / (840 × 0.9144 m).
    expect(texToCottonTicket(1)).toBeCloseTo((3 * 453.59237 * 1000) / (840 * 0.9144), 1);
    for (const ticket of [10, 60, 180]) expect(texToCottonTicket(ticketToTex(ticket)) / ticket).toBeCloseTo(0.59, 2);
  });

  test("tickets by construction: Nm 80/2 is 120, 80/4 is 60, 60/1 is 180, 60/2 is 90, 20/3 is 20 (a page on garment merchandising; the same blog); 60/3 is number 60", () => {
    // So many plies of so many metres to the gram each, weighed.
    for (const [nm, plies, ticket] of [[80, 2, 120], [80, 4, 60], [60, 1, 180], [60, 2, 90], [20, 3, 20], [60, 3, 60]] as const) expect(ticketToTex(ticket)).toBeCloseTo((plies * 1000) / nm, 12);
  });

  test("diameters of a round thread of 1.38 g/cm³ that fills 0.6 of its round: closed form of the cylinder", () => {
    // 1000 m of tex 75 weigh 75 g: 54.35 cm³ of polyester, 90.58 cm³ with air, over 100 000 cm.
    const byVolume = 10 * Math.sqrt((4 * 75) / 1.38 / 0.6 / 100_000 / Math.PI);
    expect(threadDiameter(75)).toBeCloseTo(byVolume, 12);
    for (const [ticket, mm] of [[40, 0.34], [20, 0.481], [60, 0.277]] as const) expect(Math.abs(threadDiameter(ticketToTex(ticket)) - mm)).toBeLessThan(0.002);
  });

  test("spools are labelled by a round tex near their ticket's (common practice, no source); a chart on the web that pairs tex 8 with ticket 30 mixes numberings up", () => {
    for (const [tex, ticket] of [[50, 60], [40, 80], [40, 75], [80, 40], [105, 30], [27, 120]] as const) expect(Math.abs(ticketToTex(ticket) / tex - 1), `${tex}, ${ticket}`).toBeLessThan(0.1);
    for (const [tex, ticket] of [[8, 30], [12, 50], [20, 80], [30, 120], [40, 140]] as const) expect(Math.abs(ticketToTex(ticket) / tex - 1), `${tex}, ${ticket}`).toBeGreaterThan(0.15);
  });

  test("the shop reads the thread by all three numberings on the list", () => {
    const { tex, ticket } = threadFor([]);
    expect([tex, ticket]).toEqual([50, 60]);
    const { kind } = sewingNeeds(threadFor([row({})])).find(({ good }) => good === "thread")!;
    expect(kind).toContain("number 60 (tex 50, 450 denier, cotton ticket about 35)");
  });
});

describe("needles", () => {
  test("a blade of 0.9 mm is Nm 90: hundredths of a millimetre (a footwear institute's notes on needles)", () => {
    expect(bladeMm({ nm: 90 })).toBe(0.9);
    expect(sewingNeeds(threadFor([row({})])).find(({ good }) => good === "needles")!.reason).toContain("Its blade is 0.90 mm thick");
  });

  test("metric and American numbers stand in pairs (needle tables on the web; some have 65/9, 70/10 too, which no thread here takes)", () => {
    const table = new Map([[75, 11], [80, 12], [90, 14], [100, 16], [110, 18], [120, 19]]);
    const picked = new Map(Array.from({ length: 300 }, (_, k) => needleForTicket(k + 1)).map(({ nm, us }) => [nm, us]));
    expect(new Map([...picked].sort(([a], [b]) => a - b))).toEqual(table);
  });

  test("thread picks its needle in upper leather, within one size (from memory, a habit of the trade), at least twice as thick as it", () => {
    const usual = { 120: [70, 80], 80: [80, 90], 60: [90, 100], 40: [100, 110], 30: [110, 120], 20: [120, 140] } as const;
    for (const [ticket, [from, to]] of Object.entries(usual)) {
      const { nm } = needleForTicket(Number(ticket));
      expect(nm >= from && nm <= to, `ticket ${ticket}: ${nm}`).toBe(true);
      expect(nm / 100).toBeGreaterThan(2 * threadDiameter(ticketToTex(Number(ticket))));
    }
    // One workshop of fine heels sews with 90/14 and 60/3.
    expect(needleForTicket(60)).toEqual({ nm: 90, us: 14 });
    fc.assert(fc.property(fc.integer({ min: 5, max: 300 }), fc.integer({ min: 5, max: 300 }), (a, b) => a > b || needleForTicket(a).nm >= needleForTicket(b).nm));
  });
});

describe("thread of a seam", () => {
  test("type 301 by a textile handbook's C = 2 + 2TS: 0.01 in thick, 10 stitches to the inch take 2.2 in an inch", () => {
    expect(lockstitchRatio(1 / 10, 0.01)).toBeCloseTo(2.2, 12);
    fc.assert(fc.property(fc.double({ min: 0.3, max: 8, noNaN: true }), fc.double({ min: 0, max: 8, noNaN: true }), (L, t) => {
      expect(Math.abs(lockstitchRatio(L, t) - (2 + (2 * t) / L))).toBeLessThan(1e-9);
    }));
  });

  test("closed forms: 2.4 mm of leather at 2.5 mm 3.92 m a metre; 1.6 at 1.5 mm 4.1333", () => {
    expect(lockstitchRatio(2.5, 2.4)).toBeCloseTo(3.92, 9);
    expect(lockstitchRatio(1.5, 1.6)).toBeCloseTo(4.1333, 4);
  });

  test("a crafts page's table: 220 cm of 301 in cloth at ratio 2.5 take 550 cm, half above and half below", () => {
    expect(220 * lockstitchRatio(2.5, 0.625)).toBeCloseTo(550, 9);
    const thread = threadFor([row({ lengthMm: 1100, stackMm: 0.625 })], { stitchesPerCm: { ...usualThread.stitchesPerCm, closing: 4 }, endMm: 0, wasteShare: 0 });
    expect([thread.totalMm, thread.topMm, thread.bobbinMm]).toEqual([5500, 2750, 2750]);
  });

  test("an apparel-science page's worked example with 15 % waste: 19.5 and 62 cm pulled out of 15 cm of seam are 621 cm for a metre", () => {
    // The page rounds 62 / 15 to 4.1, so a metre takes 1.3 + 4.1 m; of a lockstitch that is a stack of 1.7 stitches.
    expect(lockstitchRatio(2.5, 1.7 * 2.5)).toBeCloseTo(19.5 / 15 + 4.1, 9);
    const thread = threadFor([row({ lengthMm: 500, stackMm: 4.25 })], { stitchesPerCm: { ...usualThread.stitchesPerCm, closing: 4 }, endMm: 0, wasteShare: 0.15 });
    expect(thread.totalMm).toBeCloseTo(6210, 6);
    expect(usualThread.wasteShare).toBeGreaterThanOrEqual(0.1);
    expect(usualThread.wasteShare).toBeLessThanOrEqual(0.15);
  });

  test("2.5 mm stitches are 10.16 to the inch (the crafts page: 25.4 / L)", () => {
    expect(perInch(2.5)).toBeCloseTo(10.16, 12);
    expect(stitchMm(4)).toBe(2.5);
    expect(stitchesWords("trimming")).toBe("4 stitches to the centimetre (2.5 mm each, 10 to the inch)");
  });

  test("a zigzag that goes nowhere aside is a lockstitch; else it takes the slanting way on both faces", () => {
    expect(zigzagRatio(2.5, 0, 2.4)).toBeCloseTo(lockstitchRatio(2.5, 2.4), 12);
    // 3, 4, 5: 2 (5 + 1) over 3.
    expect(zigzagRatio(3, 4, 1)).toBeCloseTo(4, 12);
    // Its thread walked in space: to and fro on the upper face, down and up at each hole, by half of the stack to where the threads lock.
    const [L, w, t, n] = [2.2, 3, 1.1, 40];
    let walked = 0;
    for (const face of [1, -1]) {
      let at = [0, 0, 0];
      const go = (to: number[]): void => {
        walked += Math.hypot(...to.map((v, d) => v - at[d]!));
        at = to;
      };
      for (let k = 0; k < n; k++) {
        const [x, y] = [k * L, k % 2 === 0 ? 0 : w];
        go([x, y, (face * t) / 2]);
        go([x + L, k % 2 === 0 ? w : 0, (face * t) / 2]);
        go([x + L, k % 2 === 0 ? w : 0, 0]);
      }
    }
    expect(walked / (n * L)).toBeCloseTo(zigzagRatio(L, w, t), 9);
  });
});

const row = (own: Partial<Stitched>): Stitched => ({ name: "seam", joins: ["a", "b"], plies: [{ of: "upper", mm: own.stackMm ?? 2, count: 1 }], stackMm: 2, lengthMm: 100, rows: 1, stitch: "lockstitch", use: "closing", ...own });

describe("the thread of a pair", () => {
  const { stitching } = pairOf({});
  const thread = threadFor(stitching);

  test("is polyester number 60 on a needle of 80 to 100 (common practice, no source)", () => {
    expect([thread.ticket, thread.tex]).toEqual([60, 50]);
    expect(thread.reason).toContain("Polyester");
    expect(thread.needle.nm).toBeGreaterThanOrEqual(80);
    expect(thread.needle.nm).toBeLessThanOrEqual(100);
    expect(thread.needle.us).toBe(14);
  });

  test("stitches stand 5 to 6 to the cm along the topline, 4 to 5 in seams, and no closer than that on what is sewn on (common practice, no source)", () => {
    const perCm = Object.fromEntries(thread.seams.map(({ name, stitchesPerCm }) => [name, stitchesPerCm]));
    expect(perCm["topline"]).toBeGreaterThanOrEqual(5);
    expect(perCm["topline"]).toBeLessThanOrEqual(6);
    for (const name of ["back seam", "inner heel pocket joint"]) expect(perCm[name]! >= 4 && perCm[name]! <= 5, name).toBe(true);
    expect(usualThread.stitchesPerCm.trimming).toBeLessThanOrEqual(4);
  });

  test("adds up from the seams of both shoes by hand", () => {
    const seams = stitching.map(({ lengthMm, rows, stackMm, use }) => {
      const S = usualThread.stitchesPerCm[use] / 10;
      return 2 * rows * lengthMm * (2 + 2 * stackMm * S);
    });
    thread.seams.forEach(({ threadMm }, k) => expect(threadMm).toBeCloseTo(seams[k]!, 6));
    const rows = stitching.reduce((sum, line) => sum + line.rows, 0);
    expect(thread.endsMm).toBe(2 * rows * 2 * 2 * usualThread.endMm);
    expect(thread.totalMm).toBeCloseTo((seams.reduce((a, b) => a + b, 0) + thread.endsMm) * (1 + thread.wasteShare), 6);
    expect(thread.topMm + thread.bobbinMm).toBeCloseTo(thread.totalMm, 9);
    expect(thread.seamMm).toBeCloseTo(2 * stitching.reduce((sum, line) => sum + line.rows * line.lengthMm, 0), 6);
  });

  test("is some metres: a pump takes about 3.5 to 4.2 m for 140 cm of stitching, before ends and waste (common practice, no source)", () => {
    const net = thread.seams.reduce((sum, { threadMm }) => sum + threadMm, 0), ratio = net / thread.seamMm;
    // Of leather of about 2 mm 2.6 to 3.0 is what stays once the thread has sunk in; geometry is its upper bound.
    expect(ratio).toBeGreaterThan(2.6);
    expect(ratio).toBeLessThan(4.5);
    expect(thread.totalMm / 1000).toBeGreaterThan(4);
    expect(thread.totalMm / 1000).toBeLessThan(15);
  });

  test("by hand takes about four times the seam (a crafts page)", () => {
    expect(handRatio).toBe(4);
    expect(thread.byHand).toContain(`${((4 * thread.seamMm) / 1000).toFixed(1)} m`);
  });

  test("follows the maker's own number: a coarser thread has a thicker needle, a finer one a thinner", () => {
    const [coarse, fine] = [threadFor(stitching, { ticket: 40 }), threadFor(stitching, { ticket: 120 })];
    expect(coarse.needle).toEqual({ nm: 100, us: 16 });
    expect(fine.needle.nm).toBeLessThan(80);
    expect(coarse.diameterMm).toBeGreaterThan(fine.diameterMm);
    expect(new Set([coarse, fine, thread].map(({ reason }) => reason)).size).toBe(3);
  });

  test("of a zigzag is longer than of a lockstitch, of two rows twice as long as of one, of nothing nothing", () => {
    const net = (own: Partial<Stitched>): number => threadFor([row(own)]).seams[0]!.threadMm;
    expect(net({ stitch: "zigzag" })).toBeGreaterThan(net({}));
    expect(net({ rows: 2 })).toBeCloseTo(2 * net({}), 9);
    const none = threadFor([]);
    expect([none.totalMm, none.endsMm, none.seams.length]).toEqual([0, 0, 0]);
    expect(none.reason).not.toContain("under the needle");
  });
});
