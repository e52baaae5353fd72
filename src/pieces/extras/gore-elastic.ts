import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import { lineMark } from "../marks.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { lineOf, ringOf } from "./shapes.ts";
import { stripDraft } from "./strip-draft.ts";

type Sizes = Pick<PieceSettings, "goreWideMm" | "goreDeepMm" | "goreLapMm">;

/** How far the edge of the leather is drawn from its ends, mm: between there is room for the name. */
const drawnMm = 5;

/** How far the elastic reaches beyond the cut along the topline, and half its width where it ends below the tip: square to the cut it laps by the same everywhere. */
export function underLap({ goreWideMm: wide, goreDeepMm: deep, goreLapMm: lap }: Sizes): { readonly topMm: number; readonly tipHalfMm: number } {
  const long = Math.sqrt((wide / 2) * (wide / 2) + deep * deep);
  return { topMm: (lap * long) / deep, tipHalfMm: (lap * (long - wide / 2)) / deep };
}

/** The elastic of one gore, as it lies behind the leather: along +x what was the topline, y down to the tip. */
export function goreElastic(sizes: Sizes, labels: Labels, count: number): Draft {
  const { goreWideMm: wide, goreDeepMm: deep, goreLapMm: lap } = sizes;
  const { topMm, tipHalfMm } = underLap(sizes);
  const half = wide / 2, tip: Xy = [0, -deep];
  const share = Math.min(0.4, drawnMm / Math.sqrt(half * half + deep * deep));
  const down = (way: number): Xy => [way * half * (1 - share), -deep * share];
  const up = (way: number): Xy => [way * half * share, -deep * (1 - share)];
  const drawn = [lineOf([-half, 0], down(-1)), lineOf(up(-1), tip, up(1)), lineOf(down(1), [half, 0])];
  return stripDraft({
    name: "elastic gore",
    material: "elastic",
    outline: ringOf([[-half - topMm, 0], [-tipHalfMm, -deep - lap], [tipHalfMm, -deep - lap], [half + topMm, 0]]),
    marks: drawn.map((line) => lineMark("edge of the leather", "place", line, "own pricks")),
    near: [0, -0.5 * deep],
    labels,
    notes: ["gives along the topline"],
    count,
    // It gives across and not down.
    directionDeg: -90,
  });
}
