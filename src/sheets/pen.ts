import type { CurvePath, CurvePen } from "#plane/curve-path.ts";

/** What a stroke is for: also the names of the groups in the SVG and of the layers in the DXF. */
export const layers = ["cut", "mark", "fold", "text"] as const;
export type Layer = (typeof layers)[number];

/** Kinds of stroke on a piece. */
export type StrokeKind = "cut" | "net" | "fold" | "stitch" | "centre" | "joint" | "heel" | "skive" | "place" | "notch" | "prick" | "arrow" | "leader" | "picture" | "pictured";

/** Line width and dashes of each kind, mm on paper; widths from the ISO 128 series (from memory), dashes ours. */
export interface StrokeStyle {
  readonly layer: Layer;
  readonly widthMm: number;
  readonly dashMm: readonly number[];
}
export const strokeStyles: Readonly<Record<StrokeKind, StrokeStyle>> = {
  cut: { layer: "cut", widthMm: 0.35, dashMm: [] },
  net: { layer: "mark", widthMm: 0.25, dashMm: [5, 1.5] },
  fold: { layer: "fold", widthMm: 0.25, dashMm: [6, 1.2, 0.8, 1.2, 0.8, 1.2] },
  stitch: { layer: "mark", widthMm: 0.35, dashMm: [0.6, 1.8] },
  centre: { layer: "mark", widthMm: 0.25, dashMm: [8, 1.2, 0.8, 1.2] },
  joint: { layer: "mark", widthMm: 0.25, dashMm: [] },
  heel: { layer: "mark", widthMm: 0.25, dashMm: [] },
  skive: { layer: "mark", widthMm: 0.25, dashMm: [1.8, 1.2] },
  place: { layer: "mark", widthMm: 0.25, dashMm: [3, 1, 1, 1] },
  notch: { layer: "mark", widthMm: 0.35, dashMm: [] },
  prick: { layer: "mark", widthMm: 0.25, dashMm: [] },
  arrow: { layer: "mark", widthMm: 0.35, dashMm: [] },
  // Dotted, so that it is never taken for a notch.
  leader: { layer: "text", widthMm: 0.18, dashMm: [0.4, 0.8] },
  picture: { layer: "text", widthMm: 0.18, dashMm: [] },
  pictured: { layer: "text", widthMm: 0.5, dashMm: [] },
};

/** One line on the sheet, mm, y up. */
export interface Stroke {
  readonly kind: StrokeKind;
  readonly xy: Float64Array;
  readonly closed: boolean;
  /** The same line as it is drawn, where that is by curves. */
  readonly curves?: CurvePath;
}

/** Words on a sheet. `xMm, yMm` is the left end of the base line, y up; `heightMm` that of a capital letter. */
export interface Lettering {
  readonly text: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly heightMm: number;
  readonly angleDeg: number;
  readonly bold: boolean;
}

/**
 * The pen of all sheets: PDF, SVG and DXF are fed by the same trace (plane/pen.ts), straight lines and curves, in mm, y up. An
 * outline ends with `close`, an open stroke with `end`.
 */
export interface SheetPen extends CurvePen {
  use(kind: StrokeKind): void;
  end(): void;
  write(words: Lettering): void;
}
