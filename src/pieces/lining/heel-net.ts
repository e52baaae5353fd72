import { must } from "#base/bug.ts";
import type { Half } from "#lines/feather.ts";
import type { LaidPanel } from "#shell/panel.ts";
import { edgeLine } from "../carry.ts";
import { evenLine } from "../even.ts";
import { edgeOf, type Edge } from "../net-upper.ts";
import { scaleOf, type Scales } from "./on-last.ts";

/**
 * The heel without a seam, laid flat, always as of a right shoe seen from outside: feather line from the inner end over the seat to the
 * outer one, topline from the outer end over the back to the inner one, so that the sheet lies to the left of both.
 */
export interface HeelNet {
  readonly feather: Edge;
  readonly topline: Edge;
  /** Running lengths of seat and back point. */
  readonly seat: number;
  readonly back: number;
  /** Lengths on the last along both halves of feather line and topline. */
  readonly scales: Scales;
}

/** On the feather line lengths grow from the inner end, on the topline from the outer one. */
export const awayOnFeather = (half: Half): 1 | -1 => (half === "medial" ? -1 : 1);
export const awayOnTopline = (half: Half): 1 | -1 => (half === "medial" ? 1 : -1);

/** Fairs the edges of the laid heel part; `sign` as for the whole shell (medialSign). */
export function heelNet({ panel, uv }: LaidPanel, sign: 1 | -1): HeelNet {
  const { edges, back, onLast: { positions } } = panel;
  const [feather, topline] = (["feather", "topline"] as const).map((role) => edges.find((e) => e.role === role)?.vertices);
  must(back && feather && topline, "a heel part has a feather line, a topline and a back");
  const [seatAt, backAt] = [feather.indexOf(back[0]!), topline.indexOf(back[back.length - 1]!)];
  must(seatAt > 0 && backAt > 0, "seat and back point lie on the heel part's edges");
  const featherEdge = edgeOf(evenLine(edgeLine(uv, feather, sign))), toplineEdge = edgeOf(evenLine(edgeLine(uv, topline, sign)));
  const sheet = { positions, uv, sign };
  const scale = (ids: Uint32Array, edge: Edge) => scaleOf(sheet, ids, edge);
  const [innerFeather, outerTopline] = [feather.slice(0, seatAt + 1).reverse(), topline.slice(0, backAt + 1).reverse()];
  const scales: Scales = {
    medial: { feather: scale(innerFeather, featherEdge), topline: scale(topline.slice(backAt), toplineEdge) },
    lateral: { feather: scale(feather.slice(seatAt), featherEdge), topline: scale(outerTopline, toplineEdge) },
  };
  return { feather: featherEdge, topline: toplineEdge, seat: scales.medial.feather.flat[0]!, back: scales.medial.topline.flat[0]!, scales };
}
