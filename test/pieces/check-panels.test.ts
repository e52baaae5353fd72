import { describe, expect, test } from "vitest";
import { explain, severityOf, type Finding } from "#base/findings.ts";
import { netArea, stripsArea } from "#pieces/check/balance.ts";
import { placesOnLast } from "#pieces/check/on-last.ts";
import { cutPanels } from "#pieces/check/widths.ts";
import { checkParts } from "#pieces/check-parts.ts";
import { usualParts, type Chosen } from "#pieces/choices.ts";
import type { Draft } from "#pieces/draft.ts";
import { cutNet, evenAllowance } from "#pieces/edges/allowance.ts";
import { cutPanel } from "#pieces/edges/cut-panel.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import { edgeOf, netUpper } from "#pieces/net-upper.ts";
import type { NetPanel } from "#pieces/panel.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import { area } from "#plane/measure.ts";
import { flatPump } from "../support/flat-pump.ts";
import { quartersOf } from "../support/split-panels.ts";

const labels = { title: "Practice pair", size: "38" };
const pump = flatPump("right");
const net = netUpper(pump.last, pump.lines, pump.flat);
const whole = wholePanel(net);
const quarters = quartersOf(net, { feather: net.places.jointMedial + 40, topline: net.places.throat - 45 }, { feather: net.places.jointLateral - 20, topline: net.places.throat + 55 });
const usual: Chosen = { ...usualParts, edge: "taped", cut: "quarters" };

interface Made {
  readonly panels: readonly NetPanel[];
  readonly drafts: readonly Draft[];
  readonly settings: PieceSettings;
  readonly chosen: Chosen;
}

function made(choices: Partial<Chosen> = {}, own: Partial<PieceSettings> = {}, panels: readonly NetPanel[] = quarters): Made {
  const chosen = { ...usual, ...choices };
  const settings = pieceSettingsFrom(pieceRulesFor(pump.last, chosen.edge), own);
  return { panels, settings, chosen, drafts: upperPieces({ panels, settings, chosen, labels }).drafts };
}
const look = (input: Made & { whole?: NetPanel }): readonly Finding[] => checkParts(input).filter((f) => severityOf(f) === "look");
const codes = (input: Made): readonly string[] => look(input).map((f) => f.code);

/** The panels with one edge changed. */
const withEdge = (panel: number, edge: number, change: (e: NetPanel["edges"][number]) => NetPanel["edges"][number]): readonly NetPanel[] =>
  quarters.map((p, k) => (k === panel ? { ...p, edges: p.edges.map((e, i) => (i === edge ? change(e) : e)) } : p));
const stretched = (by: number) => (e: NetPanel["edges"][number]) => {
  const [x, y] = [e.line.xy[0]!, e.line.xy[1]!];
  const factor = 1 + by / e.arc[e.arc.length - 1]!;
  return { ...e, ...edgeOf({ xy: e.line.xy.map((v, i) => (i % 2 === 0 ? x + factor * (v - x) : y + factor * (v - y))) }) };
};
const withPiece = (input: Made, name: string, change: (d: Draft) => Draft): Made => ({ ...input, drafts: input.drafts.map((d) => (d.name === name ? change(d) : d)) });

describe("a vamp and two quarters", () => {
  test.each([["closed"], ["lapped"], ["butted"]] as const)("%s: nothing to look at", (seam) => {
    expect(look(made({ seam }))).toEqual([]);
  });

  test.each([["raw"], ["bound"], ["wrapped"], ["bagged"]] as const)("topline %s: nothing to look at", (edge) => {
    expect(look(made({ edge }))).toEqual([]);
  });

  test("folds that are hollow are told once, with piece and place", () => {
    const notes = checkParts(made()).filter((f) => f.code.startsWith("fold"));
    expect(notes.map(explain)).toEqual([expect.stringMatching(/^The topline of the vamp is hollow .*throat.* Snip the 4\.5 mm fold/)]);
  });
});

describe("seams", () => {
  test("edges that differ by more than 0.1 mm, and by how much; stated ease is allowed", () => {
    for (const by of [0.09, 0.5]) {
      const input = { ...made(), panels: withEdge(0, 1, stretched(by)) };
      expect(look(input).filter((f) => f.code === "seam-edges-differ").map(explain)).toEqual(by < 0.1 ? [] : [expect.stringMatching(/inner side seam differ by 0\.50 mm: the edge of the vamp is longer/)]);
    }
    const eased = { ...made(), panels: withEdge(0, 1, (e) => ({ ...stretched(2)(e), easeMm: 2 })) };
    expect(codes(eased)).not.toContain("seam-edges-differ");
    expect(codes(eased)).not.toContain("seam-notches-apart");
  });

  test("notches that do not meet, and a notch without a partner", () => {
    const input = made();
    const notch = input.drafts.find((d) => d.name === "vamp")!.marks.find((m) => m.kind === "notch" && m.name.startsWith("side seam"))!;
    const moved = (by: number | undefined) => withPiece(input, "vamp", (d) => ({
      ...d,
      marks: d.marks.flatMap((m) => {
        if (m !== notch || m.kind !== "notch") return [m];
        return by === undefined ? [] : [{ ...m, at: along(m.at, by), toward: along(m.toward, by) }];
      }),
    }));
    const seam = quarters[0].edges.find((e) => e.seam === (notch.kind === "notch" && notch.at[1] > 0 ? "inner side" : "outer side"))!;
    const { xy } = seam.line;
    const long = Math.hypot(xy[xy.length - 2]! - xy[0]!, xy[xy.length - 1]! - xy[1]!);
    const along = ([x, y]: readonly [number, number], by: number) => [x + (by * (xy[xy.length - 2]! - xy[0]!)) / long, y + (by * (xy[xy.length - 1]! - xy[1]!)) / long] as const;
    expect(codes(moved(0.08))).toEqual([]);
    expect(look(moved(0.6)).map(explain)).toEqual([expect.stringMatching(/notches of the .* side seam \d+ mm from its upper end lie 0\.60 mm apart/)]);
    expect(look(moved(undefined)).map(explain)).toEqual([expect.stringMatching(/edge of the (inner|outer) quarter has a notch in the .* side seam, \d+ mm from its upper end/)]);
  });

  test("a seam that comes too near to the joint", () => {
    const near = quartersOf(net, { feather: net.places.jointMedial + 4, topline: net.places.throat - 45 }, { feather: net.places.jointLateral - 20, topline: net.places.throat + 55 });
    expect(look(made({}, {}, near)).map(explain)).toEqual([expect.stringMatching(/^The inner side seam meets the feather edge 4 mm from the joint/)]);
  });
});

describe("margins as they are drawn", () => {
  test("a margin that was cut off is found on the drawing, whatever the setting says", () => {
    const input = withPiece(made(), "outer quarter", (d) => ({ ...d, outline: { xy: d.outline.xy.map((v, i) => (i % 2 === 1 ? Math.max(v, -95) : v)) } }));
    const told = look(input).filter((f) => f.code === "lasting-margin-narrow").map(explain);
    expect(told.join()).toMatch(/lasting margin of the outer quarter at the heel is \d/);
  });

  test("margins of both sides that would lie over each other at the heel", () => {
    const insole: Draft = {
      name: "insole", material: "insole board", net: false, labels: [], directionDeg: 0,
      // 50 mm across from end to end.
      outline: { xy: Float64Array.of(0, -25, 240, -25, 240, 25, 0, 25) },
      marks: [
        { kind: "line", name: "joint line", use: "joint", line: { xy: Float64Array.of(175, 25, 160, -25) } },
        { kind: "line", name: "heel breast line", use: "heel", line: { xy: Float64Array.of(63, 25, 63, -25) } },
      ],
    };
    const within = (own: Partial<PieceSettings>) => {
      const input = made({}, own, [whole]);
      return look({ ...input, drafts: [...input.drafts, insole] }).filter((f) => f.code === "lasting-margins-overlap").map(explain);
    };
    expect(within({})).toEqual([]);
    const told = within({ lastingHeelMm: 27 });
    expect(told).toHaveLength(2);
    expect(told[0]).toMatch(/At the heel breast the lasting margins of both sides are 27 mm and 27 mm wide, but the bottom only 51 mm across.* 23 mm each at most/);
  });

  test("a fold, seam or lap that is not as wide as asked", () => {
    const input = made({ seam: "lapped" }, { lapUnderMm: 9 });
    expect(codes(input)).toEqual([]);
    const asked = { ...input, settings: { ...input.settings, lapUnderMm: 7, toplineFoldMm: 4, backSeamMm: 1.2 } };
    const told = look(asked).map(explain).join("\n");
    expect(told).toMatch(/side seam of the inner quarter is 9\.0 mm instead of 7\.0 mm/);
    expect(told).toMatch(/topline of the vamp is 4\.5 mm instead of 4\.0 mm/);
    expect(told).toMatch(/back seam of the outer quarter is 1\.5 mm instead of 1\.2 mm/);
  });
});

/** A panel of straight edges. */
function straightPanel(corners: readonly (readonly [number, number])[]): NetPanel {
  const edges = corners.map(([x, y], k) => {
    const [nx, ny] = corners[(k + 1) % corners.length]!;
    const steps = 100;
    return { role: "side" as const, ...edgeOf({ xy: Float64Array.from({ length: 2 * steps + 2 }, (_, i) => (i % 2 === 0 ? x + ((nx - x) * (i >> 1)) / steps : y + ((ny - y) * (i >> 1)) / steps)) }) };
  });
  return { name: "vamp", edges, places: [] };
}
const onlyPiece = (panel: NetPanel, outline: Draft["outline"]) => cutPanels([panel], [{ name: "vamp", material: "upper leather", net: false, ground: "vamp", outline, marks: [], labels: [], directionDeg: 0 }])[0]!;

describe("balance of areas", () => {
  test("net area and strips come to the cut area within 0.1 %, for every cut and edge", () => {
    for (const panels of [quarters, [whole]]) {
      for (const choices of [{}, { seam: "lapped" }, { edge: "bagged" }, { backTop: "notch" }] as const) {
        const { drafts } = made(choices, {}, panels);
        for (const c of cutPanels(panels, drafts)) expect(Math.abs((netArea(c.panel) + stripsArea(c)) / area(c.draft.outline) - 1), c.draft.name).toBeLessThan(1e-3);
      }
    }
  });

  // Beside straight edges a strip is w L; in a corner that turns by t, where widths a and b run on until they meet, (2ab - (a² + b²) cos t) / (2 sin t) (plane geometry; with b = 0 that is -½a² cot t).
  const square = [[0, 0], [120, 0], [120, 80], [0, 80]] as const;
  const slanted = [[0, 0], [140, 0], [110, 75], [-25, 60]] as const;
  test.each([
    [square, [0, 0, 0, 0]], [square, [18, 1.5, 0, 1.5]], [square, [18, 0, 4.5, 0]], [square, [0, 1.5, 0, 7]], [slanted, [18, 1.5, 0, 1.5]], [slanted, [0, 8, 0, 0]], [slanted, [12, 0, 6, 3]], [slanted, [0, 0, 5, 0]],
  ] as const)("corners between wide edges and edges that are cut net: closed form, %#", (corners, widths) => {
    const panel = straightPanel(corners);
    const cut = cutPanel(panel, panel.edges.map((edge, k) => evenAllowance(edge, "raw", widths[k]!)));
    let strips = 0;
    corners.forEach(([x, y], k) => {
      const [nx, ny] = corners[(k + 1) % 4]!, [px, py] = corners[(k + 3) % 4]!;
      const long = Math.hypot(nx - x, ny - y), before = Math.hypot(x - px, y - py);
      const [cos, sin] = [((x - px) * (nx - x) + (y - py) * (ny - y)) / (long * before), ((x - px) * (ny - y) - (y - py) * (nx - x)) / (long * before)];
      const [a, b] = [widths[(k + 3) % 4]!, widths[k]!];
      strips += b * long + (2 * a * b - (a * a + b * b) * cos) / (2 * sin);
    });
    expect(area(cut.outline) - netArea(panel)).toBeCloseTo(strips, 6);
    expect(stripsArea(onlyPiece(panel, cut.outline))).toBeCloseTo(strips, 3);
  });

  test("a tongue at a square corner between a closed seam and a net topline: closed form", () => {
    const [longMm, wideMm, seamMm, tipMm] = [12, 10, 1.5, 3];
    const panel = straightPanel(square);
    const roles = ["feather", "back", "topline", "side"] as const;
    const own: NetPanel = { ...panel, edges: panel.edges.map((edge, k) => ({ ...edge, role: roles[k]! })) };
    const cut = cutPanel(own, own.edges.map((edge, k) => (k === 1 ? evenAllowance(edge, "seam", seamMm) : cutNet(edge))), (k) => (k === 1 ? { kind: "dog-tail", longMm, wideMm } : undefined));
    // The seam's strip up to the tongue, and the tongue less what a quarter circle leaves of its lower corner.
    const strips = seamMm * (80 - wideMm) + longMm * wideMm - (1 - Math.PI / 4) * tipMm * tipMm;
    const tail = Math.max(longMm, wideMm);
    // The circle is drawn in eight steps.
    expect(Math.abs(stripsArea(onlyPiece(own, cut.outline), tail) - strips)).toBeLessThan(0.1);
    expect(Math.abs(area(cut.outline) - netArea(own) - strips)).toBeLessThan(0.1);
  });

  test("an edge that was left out of the drawing is told with both areas", () => {
    const input = withPiece(made(), "inner quarter", (d) => ({ ...d, outline: { xy: d.outline.xy.filter((_, i) => i < 0.7 * d.outline.xy.length) } }));
    expect(look(input).map((f) => f.code)).toContain("piece-area-off");
  });

  test("panels that are not the whole", () => {
    expect(codes({ ...made(), whole } as Made)).toEqual([]);
    expect(look({ ...made(), panels: quarters.slice(0, 2), whole }).map(explain).join()).toMatch(/parts of the upper together are \d+\.\d % smaller/);
  });
});

describe("narrow places and corners at the centre", () => {
  test("a neck under 4 mm is told with its place; what is skived out to nothing may be as narrow", () => {
    const bar = { xy: Float64Array.of(0, 0, 60, 0, 60, 28.5, 100, 28.5, 100, 0, 160, 0, 160, 60, 100, 60, 100, 31.5, 60, 31.5, 60, 60, 0, 60) };
    const draft = (name: string, material: Draft["material"]): Draft => ({ name, material, net: false, outline: bar, marks: [], labels: [], directionDeg: 0 });
    const told = (name: string, material: Draft["material"]) => look({ ...made(), panels: [], drafts: [draft(name, material)] });
    expect(told("tongue", "upper leather").map(explain)).toEqual(["The tongue is only 3.0 mm wide at its narrowest place (middle); under 4 mm it tears or cannot be stitched. Widen its allowance there, or move the line that makes it so narrow."]);
    expect(told("stiffener", "stiffener")).toEqual([]);
  });

  test("an edge that slants across the centre line of a piece without a panel", () => {
    const box = (slant: number) => ({ xy: Float64Array.of(0, -30, 60, -30, 60, 30, slant, 30) });
    const puff = (slant: number): Draft => ({ name: "toe puff", material: "toe puff", net: false, outline: box(slant), labels: [], directionDeg: 0, marks: [{ kind: "line", name: "centre line", use: "centre", line: { xy: Float64Array.of(5, 0, 60, 0) } }] });
    const told = (slant: number) => look({ ...made(), panels: [], drafts: [puff(slant)] }).map(explain);
    expect(told(1)).toEqual([]);
    // 5 over 60 mm: 4.76 degrees.
    expect(told(5)).toEqual([expect.stringMatching(/^The edge of the toe puff meets its centre line at the back 4\.8° off square/)]);
  });
});

test("a place of a sheet is found on the last by the triangle it lies in, a little beside the sheet at its nearest corner", () => {
  // A square of 10 mm that stands upright on the last, as a right one on the flat.
  const ground = { name: "vamp", positions: Float64Array.of(0, 5, 0, 0, 5, 10, 10, 5, 10, 10, 5, 0), triangles: Uint32Array.of(0, 1, 2, 0, 2, 3), uv: Float64Array.of(0, 0, 0, 10, 10, 10, 10, 0) } as const;
  const find = placesOnLast([ground]);
  for (const [k, mm] of [4, 5, 7].entries()) expect(find("vamp", [4, 7])![k]).toBeCloseTo(mm, 9);
  expect(find("vamp", [12, 11])).toEqual([10, 5, 10]);
  expect(find("vamp", [90, 11])).toBeUndefined();
  expect(find("heel", [4, 7])).toBeUndefined();
});

test("a finding is shown where it lies on the last, where that is known", () => {
  const input = made({}, { lastingHeelMm: 13 });
  const shown = checkParts({ ...input, onLast: (ground, [x, y]) => (ground === "outer quarter" ? [x, y, 7] : undefined) }).filter((f) => f.code === "lasting-margin-narrow");
  expect(shown.map((f) => f.at?.[2])).toEqual([undefined, 7]);
});
