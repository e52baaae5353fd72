import { evenWidth, offsetEdge } from "#plane/edge-offset.ts";
import { apart, bounds, lengthOf } from "#plane/measure.ts";
import type { Draft } from "../draft.ts";
import { roundEnd } from "../extras/shapes.ts";
import { toplinePlace } from "../extras/topline-way.ts";
import type { Stitched } from "../stitching.ts";
import { gores } from "./gore.ts";
import { foldedPly, liningPly, stitched, upperPly } from "./plies.ts";
import { overPlies } from "./seams.ts";
import { panelWord } from "../words.ts";
import { upperNames, type ToStitch } from "./to-stitch.ts";
import { acrossPiece } from "./ways.ts";

/** What is stitched on a plain pump, as far as it was drawn. The sock, side linings, stiffener and toe puff are stuck. */
export function extraRows(input: ToStitch): readonly Stitched[] {
  return [...toeCap(input), ...backStrip(input), ...strap(input), ...gores(input), ...bow(input)];
}

const extra = ({ extras }: ToStitch, name: string): Draft | undefined => extras.find((draft) => draft.name === name);

/** One row inside the cap's edge, across the vamp from margin to margin. */
function toeCap(input: ToStitch): readonly Stitched[] {
  const cap = extra(input, "toe cap");
  const vamp = input.upperDrafts.find(({ ground, net }) => !net && ground === cap?.ground);
  const place = vamp?.marks.find((mark) => mark.kind === "line" && mark.name === "edge of the toe cap");
  if (!cap || !vamp || place?.kind !== "line") return [];
  const { settings } = input;
  // The edge runs so that the heel lies to its right.
  const row = offsetEdge(place.line, evenWidth(place.line, -settings.stitchInMm));
  return [stitched({ name: "toe cap", joins: ["toe cap", vamp.name], plies: [...overPlies(settings, settings.toeCapFoldMm, false), upperPly(settings)], lengthMm: lengthOf(acrossPiece(vamp.outline, row)), use: "trimming" })];
}

/** A row inside each of its long edges, from tip to tip. */
function backStrip(input: ToStitch): readonly Stitched[] {
  const strip = extra(input, "back strip");
  if (!strip) return [];
  const { settings } = input;
  // Its corners in order: its long edge is the first.
  const [x, y, ex, ey] = strip.outline.xy as unknown as readonly [number, number, number, number];
  return [stitched({ name: "back strip", joins: ["back strip", ...upperNames(input).filter((name) => name !== "vamp")], plies: [...overPlies(settings, settings.backStripFoldMm, false), upperPly(settings)], lengthMm: apart([x, y], [ex, ey]), rows: 2, use: "trimming" })];
}

/** Round the strap inside its edges, and two rows across where it is set in between upper and lining at the inner side. */
function strap(input: ToStitch): readonly Stitched[] {
  const leather = extra(input, "instep strap");
  if (!leather) return [];
  const { settings, upper } = input;
  const { strapWidthMm: wide, strapFoldMm: fold, stitchInMm: inMm } = settings;
  const long = bounds(leather.outline).maxX - fold, r = wide / 2;
  const edgeMm = 2 * (long - r) + lengthOf(roundEnd(long - inMm, Math.max(0, r - inMm)));
  const at = toplinePlace(upper.map(({ panel }) => panel), "medial", settings.strapBehindThroatMm);
  const body = fold > 0 ? foldedPly("upper", settings.upperThicknessMm) : upperPly(settings);
  return [
    stitched({ name: "strap edge", joins: ["instep strap", "strap lining"], plies: [body, liningPly(settings)], lengthMm: edgeMm, use: "trimming" }),
    stitched({ name: "strap set in", joins: ["instep strap", "strap lining", ...(at ? [panelWord(upper[at.panel]!.panel)] : [])], plies: [upperPly(settings, 2), liningPly(settings)], lengthMm: wide, rows: 2, use: "closing" }),
  ];
}

/** The band's lapped ends are sewn across to its front and stay, the knot's ends to each other; both are then tacked on by hand, which is not counted. */
function bow(input: ToStitch): readonly Stitched[] {
  if (!extra(input, "bow")) return [];
  const { settings } = input;
  const ends = { rows: 1, use: "trimming" } as const;
  return [
    stitched({ name: "bow", joins: ["bow", "bow stay"], plies: [upperPly(settings, 3), liningPly(settings)], lengthMm: settings.bowWideMm, ...ends }),
    stitched({ name: "bow knot", joins: ["bow knot"], plies: [upperPly(settings, 2)], lengthMm: settings.knotWideMm, ...ends }),
  ];
}
