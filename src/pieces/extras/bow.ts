import { placeOn, pointOf } from "../edges/places.ts";
import { lineMark } from "../marks.ts";
import type { Extra, ExtraInput } from "./extra.ts";
import { bowOutline, lineOf, stripOutline } from "./shapes.ts";
import { foldPair, stripDraft } from "./strip-draft.ts";

/** A band of leather is folded to double with its ends in the middle; they lap by so much under the knot, mm. */
const lapMm = 8;
/** Fold along the knot's edges, mm: thin leather, skived. */
const knotFoldMm = 4;
/** How far ahead of the throat the bow is tacked, mm: clear of the topline's stitches. */
const aheadMm = 6;

/** A flat bow of one band and its knot, tacked on ahead of the throat once the shoe is made. */
export function bow({ panels, settings, labels }: ExtraInput): Extra {
  const { bowLongMm: long, bowWideMm: wide, knotWideMm: knot } = settings;
  // The band goes round: front and back are each as long as the bow, and hollowed in their middles.
  const whole = 2 * long + lapMm;
  const across = (x: number) => lineOf([x, -wide / 2 + 1], [x, wide / 2 - 1]);
  const band = stripDraft({
    name: "bow",
    material: "upper leather",
    outline: stripOutline(whole, wide),
    marks: [lineMark("fold, one end", "fold", across(long / 2)), lineMark("fold, other end", "fold", across(long / 2 + long)), lineMark("ends meet", "centre", across(long))],
    notes: ["fold both ends to the middle", "grain side out"],
    labels,
  });
  const front = stripDraft({
    name: "bow stay",
    material: "lining leather",
    outline: bowOutline(long - 4, wide - 4, Math.max(knot, 0.55 * wide)),
    marks: [lineMark("middle", "centre", lineOf([0, -knot / 3], [0, knot / 3]))],
    notes: ["inside the band, keeps its form"],
    labels,
  });
  const knotLong = 2 * (0.6 * wide + 6) + lapMm;
  const tie = stripDraft({
    name: "bow knot",
    material: "upper leather",
    outline: stripOutline(knotLong, knot + 2 * knotFoldMm),
    marks: foldPair("fold", knotFoldMm, [0, knot / 2], [knotLong, knot / 2]),
    notes: ["round the middle of the bow"],
    labels,
  });
  const panel = panels.findIndex((p) => placeOn(p, "throat"));
  const throat = panels[panel] && placeOn(panels[panel], "throat");
  if (!throat) return { drafts: [band, front, tie] };
  const [x, y] = pointOf(panels[panel]!, throat);
  const off = Math.min(knot, wide) / 4;
  return { drafts: [band, front, tie], marks: [-off, off].map((dy) => ({ panel, mark: { kind: "prick" as const, name: "bow", at: [x + aheadMm, y + dy] as const } })) };
}
