import { beforeAll, describe, expect, test } from "vitest";
import { jobForTape } from "#job/default-job.ts";
import type { TapedPair } from "#job/pair.ts";
import { readyFor } from "#job/pictures.ts";
import { Pipeline } from "#job/pipeline.ts";
import { edgeLength, edgePoint, type Edge } from "#pieces/net-upper.ts";
import { nearestOn } from "#plane/along.ts";
import { bounds, perimeter } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { photograph } from "../photo/support/camera.ts";
import { paintTable } from "../photo/support/plane.ts";
import { demoTape } from "../support/demo-tape.ts";
import { pngOf } from "../support/png.ts";
import { laid, slitAt } from "../support/taped-outlines.ts";

// From a picture, taken by a camera of our own whose truth is known, to the pieces: the pattern that lay on the table comes back.

const { net, medial, lateral } = demoTape();
const shares = [0.76, 0.84, 0.92];
const toFeather = edgeLength(net.feather) - net.places.toe;
const inner = shares.reduce((o, share) => slitAt(o, edgePoint(net.feather, edgeLength(net.feather) - share * toFeather), 1.2, 20), medial);
const outer = shares.reduce((o, share) => slitAt(o, edgePoint(net.feather, share * net.places.toe), 1.2, 20), lateral);

/** Turned, and its box moved to begin at a place of the card. */
function at(outline: Outline, degrees: number, x: number, y: number): Outline {
  const turned = laid(outline, degrees, [0, 0]);
  const box = bounds(turned);
  return laid(turned, 0, [x - box.minX, y - box.minY]);
}

const off = ({ xy }: Polyline, { line, arc }: Edge): number => {
  let most = 0;
  for (let i = 0; i < xy.length; i += 2) most = Math.max(most, nearestOn(line, arc, xy[i]!, xy[i + 1]!).distance);
  return most;
};

describe("a job from a picture of a taped pattern", () => {
  const job = jobForTape({ photos: ["tape.png"], side: "right", barMm: 200 });
  const pipeline = new Pipeline();
  let files: ReadonlyMap<string, Uint8Array>;
  let pair: TapedPair;
  const run = (from: typeof job): { readonly pair: TapedPair; readonly seen: readonly string[] } => {
    const seen = new Set<string>();
    let t = 0;
    const made = pipeline.run(from, files, { now: () => t++, watch: (stage, f) => void (f === 0 && seen.add(stage)) });
    if (made.from !== "tape") throw new Error("not a taped pair");
    return { pair: made, seen: [...seen].filter((stage) => stage in made.timesMs) };
  };

  beforeAll(async () => {
    const tape = [0.65, 0.55, 0.3] as const;
    const table = paintTable({ paper: "A4", ground: [0.05, 0.06, 0.1], shapes: [{ xy: at(inner, 204.5, 36, 29).xy, colour: tape }, { xy: at(outer, -22, 36, 127).xy, colour: tape }] });
    files = new Map([["tape.png", pngOf(photograph(table, { width: 2800, height: 2100, tiltDeg: 10, fromDeg: 60, k1: -0.05, grain: 2, darkest: 0.75 }))]]);
    await readyFor(job);
    ({ pair } = run(job));
  }, 240_000);

  test("gives back the pattern that lay on the table within 0.4 mm, lengths within 0.3 mm + 0.1 %", () => {
    const { medial: m, lateral: l } = pair.tape;
    for (const [line, edge] of [[m.feather, net.feather], [l.feather, net.feather], [m.topline, net.topline], [l.topline, net.topline], [m.back, net.backMedial], [l.back, net.backLateral]] as const) expect(off(line, edge)).toBeLessThan(0.4);
    const whole = m.lengths.topline + l.lengths.topline;
    expect(Math.abs(whole - edgeLength(net.topline))).toBeLessThan(0.6 + 0.001 * whole);
    expect(Math.abs(m.lengths.back - edgeLength(net.backMedial))).toBeLessThan(0.36);
    expect(m.slits).toHaveLength(3);
    expect(l.slits).toHaveLength(3);
  });

  test("another reading of the card's bar rescales what was traced, bit for bit as if all were done anew", () => {
    const bar = { ...job, last: { from: "tape" as const, tape: { photos: ["tape.png"], side: "right" as const, barMm: 197.5 } } };
    const again = run(bar);
    // The findings of the bar alone tell nothing of the work; none of the stages of tracing ran.
    expect(again.seen.filter((stage) => stage.startsWith("photo "))).toEqual([]);
    const anew = new Pipeline().run(bar, files, {});
    if (anew.from !== "tape") throw new Error("not a taped pair");
    expect(again.pair.traced).toEqual(anew.traced);
    expect(again.pair.tape).toEqual(anew.tape);
    expect(again.pair.pieces).toEqual(anew.pieces);
    // A bar that reads 1.25 % short makes every length so much shorter: exactly as traced, to a few hundredths where corners are sought anew.
    const round = (of: TapedPair): number => perimeter(of.traced[0]!.traced.outlines[0]!);
    expect(round(again.pair) / round(pair)).toBeCloseTo(197.5 / 200, 12);
    expect(again.pair.tape.medial.lengths.topline / pair.tape.medial.lengths.topline).toBeCloseTo(197.5 / 200, 4);
    run(job);
  }, 120_000);

  test("makes the pieces of both shoes, and says that no bottom was traced", () => {
    expect(new Set(pair.pieces.map((p) => p.name))).toEqual(new Set(["upper, net", "upper", "lining", "toe puff"]));
    expect(pair.parts.lining).toBe("one");
    expect(pair.grounds).toEqual([]);
    expect(pair.findings.map((f) => f.code)).toContain("tape-no-bottom");
    expect(pair.labels).toEqual({ title: "tape", size: "" });
  });

  test("does not trace the picture again for a mark that is moved or a margin that is changed", () => {
    const { at: throat } = pair.tape.medial.points.throat;
    const marked = run({ ...job, last: { from: "tape", tape: { photos: ["tape.png"], side: "right", barMm: 200, marks: { throatMedial: { photo: "tape.png", at: [throat[0] + 1, throat[1]] } } } } });
    expect(marked.seen).toEqual(["tape", "pieces"]);
    expect(marked.pair.tape.medial.points.throat.how).toBe("said");
    // The mark taken back with a margin changed: the tape as it was before the mark is still known.
    expect(run({ ...job, pieces: { toplineFoldMm: 5 } }).seen).toEqual(["pieces"]);
    expect(run({ ...job, pieces: { toplineFoldMm: 6 } }).seen).toEqual(["pieces"]);
  });

  test("says what of the parts asked for it cannot have, and nothing of it where nothing was asked", () => {
    const told = ["tape-cut", "lining-in-one", "extra-left-out"];
    const codes = (parts: typeof job.parts) => run({ ...job, parts }).pair.findings.map((f) => f.code).filter((code) => told.includes(code));
    expect(codes({})).toEqual([]);
    expect(codes({ backStrip: true, toeCap: true, sock: "half" })).toEqual([]);
    expect([...codes({ cut: "quarters", lining: "three", strap: true, sideLining: true })].sort()).toEqual(["extra-left-out", "extra-left-out", "lining-in-one", "tape-cut"]);
  });

  test("says that spring and asked lines have no effect", () => {
    const codes = run({ ...job, shell: { springMm: 4 }, lines: { throatDepthMm: 70 } }).pair.findings.map((f) => f.code);
    expect(codes).toEqual(expect.arrayContaining(["tape-spring", "tape-lines"]));
  });
});
