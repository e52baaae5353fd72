import { joined } from "#plane/along.ts";
import type { Outline } from "#plane/outline.ts";
import type { NetPanel } from "../panel.ts";

/** The net outline of a panel. */
export function panelOutline({ edges }: NetPanel): Outline {
  const ring = joined(edges.map(({ line }) => line)).xy;
  return { xy: ring.slice(0, ring.length - 2) };
}
