import type { Asked } from "#lasting/log.ts";
import type { Lines } from "#lines/lines.ts";

/** Where the topline is asked to end, by the lines: before anything was pulled over. */
export const endsAsked = ({ settings: { throatDepthMm, backHeightMm }, lowestMedial, lowestLateral }: Lines): Required<Asked> => ({ throatDepthMm, backHeightMm, innerHeightMm: lowestMedial.heightMm, outerHeightMm: lowestLateral.heightMm });
