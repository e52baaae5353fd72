import { describe, expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import type { PartChoices } from "#pieces/choices.ts";
import { cutPieces, cutTapedPieces } from "#pieces/cut.ts";
import { netTapedBottom, netTapedUpper } from "#pieces/net-tape.ts";
import { edgeLength, edgePoint } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceRulesForTape, pieceSettingsFrom } from "#pieces/rules.ts";
import { tapedPartsFrom, tapeLacks } from "#pieces/tape-lacks.ts";
import { Pipeline } from "#job/pipeline.ts";
import { tapedShell } from "#tape/from-traced.ts";
import { bareJob, demoTape } from "../support/demo-tape.ts";
import { onLast } from "../support/on-last.ts";
import { laid } from "../support/taped-outlines.ts";
import { tracedPicture } from "../support/traced.ts";

// The example pair's own pattern, cut apart and traced, must give the pieces that its last gives.

const { net, medial, lateral, bottom } = demoTape();
const labels = { title: "Taped", size: "38" };
const shell = (withBottom: boolean) => {
  const outlines = [laid(medial, 37, [100, 420]), laid(lateral, -120, [-50, 20]), ...(withBottom ? [laid(bottom.outline, 11, [400, 0])] : [])];
  return tapedShell([tracedPicture("tape.jpg", outlines)], { photos: ["tape.jpg"], side: "right" });
};
const cut = (withBottom: boolean) => {
  const tape = shell(withBottom);
  return cutTapedPieces(tape, { settings: pieceSettingsFrom(pieceRulesForTape(tape)), labels });
};

describe("pieces from a taped pattern", () => {
  const pair = onLast(new Pipeline().run(bareJob(), new Map(), { triangles: 4000, withoutPieces: true }));
  const fromLast = cutPieces({ ...pair, settings: pieceSettingsFrom(pieceRulesFor(pair.last)), labels });

  test("are those that the last gives, area for area, but for what follows from the bottom's heights", () => {
    const { pieces, findings } = cut(true);
    const high = ["shank bend", "split lift", "lift 1", "top piece"];
    expect([...new Set(fromLast.pieces.map(({ name }) => name))]).toEqual(expect.arrayContaining(high));
    const twins = fromLast.pieces.filter(({ name }) => !high.includes(name));
    expect(pieces.map(({ name, side }) => `${name}, ${side}`)).toEqual(twins.map(({ name, side }) => `${name}, ${side}`));
    pieces.forEach((piece, i) => {
      const twin = twins[i]!;
      expect(Math.abs(piece.areaMm2 / twin.areaMm2 - 1), piece.name).toBeLessThan(0.003);
      expect(Math.abs(piece.perimeterMm - twin.perimeterMm), piece.name).toBeLessThan(2);
      expect(piece.marks.map((m) => ("name" in m ? m.name : "")).filter(Boolean).sort(), piece.name).toEqual(twin.marks.map((m) => ("name" in m ? m.name : "")).filter(Boolean).sort());
    });
    // What is left out is told, and once.
    expect(findings.filter((f) => f.code === "bottom-without-heights")).toHaveLength(1);
  });

  test("leave out what lies under the foot where no bottom was traced", () => {
    const { pieces, made, findings } = cut(false);
    expect(new Set(pieces.map((p) => p.name))).toEqual(new Set(["upper, net", "upper", "lining", "toe puff"]));
    expect(made).toBeUndefined();
    expect(findings.map((f) => f.code)).not.toContain("bottom-without-heights");
  });

  test("know boards, shank and filler of a traced bottom, and nothing of its heights", () => {
    const { made } = cut(true);
    expect(made!.shank.bend).toEqual([]);
    expect(made).not.toHaveProperty("heel");
    expect(made!.filler).not.toHaveProperty("depth");
    expect(Math.abs(made!.filler!.areaMm2 / fromLast.made!.filler!.areaMm2 - 1)).toBeLessThan(0.003);
  });

  test("tell what a taped pattern cannot have, once each and only where it was asked for", () => {
    const asked = (own: Partial<PartChoices>): readonly string[] => {
      const tape = shell(true);
      const { findings } = cutTapedPieces(tape, { settings: pieceSettingsFrom(pieceRulesForTape(tape)), labels, parts: tapedPartsFrom(own) });
      const told = ["tape-cut", "extra-left-out", "lining-in-one", "gore-under-strap"];
      return findings.filter(({ code }) => told.includes(code)).map((f) => (f.code === "extra-left-out" ? `${f.code}: ${f.data.what}` : f.code));
    };
    expect(asked({})).toEqual([]);
    expect(asked({ toeCap: true, backStrip: true, gore: true, bow: true, backSeam: "butted", backTop: "notch", sock: "half" })).toEqual([]);
    for (const cut of ["inner-seam", "quarters"] as const) expect(asked({ cut, backStrip: true })).toEqual(["tape-cut"]);
    expect(asked({ lining: "three" })).toEqual(["lining-in-one"]);
    expect(asked({ strap: true, gore: true })).toEqual(["extra-left-out: instep strap"]);
    expect(asked({ sideLining: true })).toEqual(["extra-left-out: side lining"]);
    expect([...asked({ cut: "quarters", lining: "three", strap: true, sideLining: true })].sort()).toEqual(["extra-left-out: instep strap", "extra-left-out: side lining", "lining-in-one", "tape-cut"]);
  });

  test("say of a cut that needs a last what was cut in its place", () => {
    const [told] = tapeLacks(tapedPartsFrom({ cut: "quarters" }));
    expect([severityOf(told!), explain(told!)]).toEqual(["look", expect.stringMatching(/vamp and two quarters.*only be laid out on a last.*cut whole with a seam at the back/)]);
  });

  test("stand on edges that close: toe and throat on the centre line, backs equally long", () => {
    const upper = netTapedUpper(shell(true), undefined);
    expect(edgeLength(upper.backMedial)).toBeCloseTo(edgeLength(upper.backLateral), 6);
    const throat = edgePoint(upper.topline, upper.places.throat), toe = edgePoint(upper.feather, upper.places.toe);
    expect(Math.abs(throat[1])).toBeLessThan(0.01);
    expect(Math.abs(toe[1])).toBeLessThan(0.01);
    for (const [a, b] of [[upper.feather, upper.backMedial], [upper.backMedial, upper.topline], [upper.topline, upper.backLateral], [upper.backLateral, upper.feather]] as const) {
      const [end, start] = [edgePoint(a, edgeLength(a)), edgePoint(b, 0)];
      expect(Math.hypot(end[0] - start[0], end[1] - start[1])).toBeLessThan(1e-6);
    }
  });

  test("have their heel, waist and joint where the last has them", () => {
    const tape = shell(true);
    const upper = netTapedUpper(tape, netTapedBottom(tape.bottom!));
    for (const place of ["jointMedial", "jointLateral", "breastMedial", "breastLateral", "waistMedial", "waistLateral"] as const) expect(Math.abs(upper.places[place] - net.places[place]), place).toBeLessThan(4);
    // Lowest on the flat card; the topline runs nearly level there.
    expect(Math.abs(upper.places.lowestMedial - net.places.lowestMedial)).toBeLessThan(12);
  });
});
