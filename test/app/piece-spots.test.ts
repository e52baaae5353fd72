// Where a finding about pieces is told: at the very number where one code serves several, at the word that brought it about, and on the
// piece that it speaks of.
import { describe, expect, test } from "vitest";
import { finding, type Finding } from "#base/findings.ts";
import { bottomSentences } from "#base/sentences/bottom.ts";
import { extraSentences } from "#base/sentences/extras.ts";
import { liningSentences } from "#base/sentences/linings.ts";
import { panelSentences } from "#base/sentences/panels.ts";
import { upperSentences } from "#base/sentences/upper.ts";
import { choiceOf, pieceSpotOf, speaksOfPiece } from "#app/state/piece-spots.ts";
import { listedPieces } from "#app/state/listed.ts";
import { spotsOf } from "#app/state/spots.ts";

const fold = (piece: string, edge: string): Finding => finding("fold-too-tight", { piece, edge, where: undefined, foldMm: 4, radiusMm: 3, neededMm: 8 });
const margin = (piece: string, zone: string): Finding => finding("lasting-margin-narrow", { piece, zone, widthMm: 9, neededMm: 14 });

describe("a finding about pieces", () => {
  test("leads to the number of the piece, the edge or the place that it names", () => {
    expect([fold("vamp", "topline"), fold("vamp", "side seam, inside"), fold("toe cap", "cap"), fold("instep strap", "strap"), fold("back strip", "strip")].map(pieceSpotOf)).toEqual(
      ["pieces toplineFoldMm", "pieces lapFoldMm", "pieces toeCapFoldMm", "pieces strapFoldMm", "pieces backStripFoldMm"],
    );
    expect([margin("upper", "toe"), margin("upper", "inner waist"), margin("upper", "heel"), margin("lining", "toe")].map(pieceSpotOf)).toEqual(
      ["pieces lastingToeMm", "pieces lastingInnerWaistMm", "pieces lastingHeelMm", "pieces liningLastingShorterMm"],
    );
    const gore = (what: string): Finding => finding("gore-too-near", { half: "medial", what, freeMm: 1, neededMm: 10 });
    expect([gore("seam"), gore("feather line")].map(pieceSpotOf)).toEqual(["pieces goreWideMm", "pieces goreDeepMm"]);
    const outside = (where: string): Finding => finding("lining-outside-upper", { piece: "lining", byMm: 1, where });
    expect([outside("back seam"), outside("lasting margin")].map(pieceSpotOf)).toEqual(["pieces liningBackInMiddleMm", "pieces liningToeInMm"]);
  });

  test("of a part that is left out or in the way stands at the word that asks for it as well", () => {
    const out = (what: string): Finding => finding("extra-left-out", { what, why: "so", instead: "go on" });
    expect(["instep strap", "elastic gore", "toe cap", "back strip", "side lining"].map((what) => choiceOf(out(what)))).toEqual(["parts strap", "parts gore", "parts toeCap", "parts backStrip", "parts sideLining"]);
    expect(spotsOf(finding("toe-cap-too-long", { reachMm: 48, mostMm: 20 }), undefined)).toEqual(["pieces toeCapMm", "parts toeCap"]);
    expect(spotsOf(out("bow"), undefined)).toContain("parts bow");
  });

  test("has some place on the page for nearly every kind that a choice or a number can mend", () => {
    // These speak of the last, of both lines at once, or of what follows from the shell: no one number mends them.
    const without = /^(panel-eased|seam-banks-differ|mean-halves-whole-only|lining-longer|lining-joints-differ|seam-gathers|filler-nothing|filler-deep|insole-proud|heel-(none|top-piece-only|wedge|high|breast-open)|bottom-(line-misses|without-heights)|seam-through-joint|.*-beyond-.*|extra-left-out|lining-outside-.*)$/;
    const codes = [panelSentences, upperSentences, liningSentences, bottomSentences, extraSentences].flatMap((c) => Object.keys(c)).filter((code) => !without.test(code));
    const homeless = codes.filter((code) => spotsOf({ code, data: { piece: "upper", edge: "topline", where: "toe", zone: "toe", what: "inner seam", half: "medial" } } as unknown as Finding, undefined).length === 0);
    // A newer kind may wait for its place, but not many.
    expect(homeless.length, homeless.join(", ")).toBeLessThan(6);
    expect(codes.length).toBeGreaterThan(25);
  });

  test("is told in the panel of the piece that it speaks of, and of no other", () => {
    const strap = finding("gore-under-strap", { half: "medial", byMm: 12 });
    expect(["instep strap", "strap lining", "elastic gore", "vamp", "back strip"].filter((p) => speaksOfPiece(strap, p))).toEqual(["instep strap", "strap lining", "elastic gore"]);
    expect(["vamp", "vamp lining"].filter((p) => speaksOfPiece(fold("vamp", "topline"), p))).toEqual(["vamp"]);
  });
});

test("names of pieces that hold a comma are listed so that each is one", () => {
  expect(listedPieces(["outer quarter", "outer quarter, net", "vamp", "vamp, net"])).toBe("outer quarter, vamp and the net cards of outer quarter and vamp");
  expect(listedPieces(["upper, net", "upper"])).toBe("upper and the net card of upper");
  expect(listedPieces(["sock"])).toBe("sock");
});
