import type { Chosen } from "../choices.ts";
import { wrapped } from "../label-text.ts";
import type { NetPanel } from "../panel.ts";
import type { CutPanel } from "../edges/cut-panel.ts";
import { edgesOf } from "../edges/places.ts";

/** The leather that a pattern was corrected for, and by how much that changes it from toe to throat, mm. */
export interface CorrectedFor {
  readonly leather: string;
  readonly throatByMm: number;
}

/** What the label says of a cut piece's edges: what was added, how a topline is made that is not folded, and which side is up. */
export function upperNotes({ panel, edges }: CutPanel, { edge: made, seam }: Chosen): readonly string[] {
  const has = (finish: string, ...roles: Parameters<typeof edgesOf>[1][]): boolean => edgesOf(panel, ...roles).some((k) => edges[k]!.finish === finish);
  const side = panel.edges.some((e) => e.role === "side") ? "side seam" : "inner seam";
  const added = [
    ...(has("fold", "topline") ? ["fold"] : []),
    ...(has("bag", "topline") ? ["topline seam"] : []),
    ...(has("seam", "back") ? ["back seam"] : []),
    ...(has("seam", "side", "inner waist") ? [side] : []),
    ...(has("lap", "side", "inner waist") ? ["lap"] : []),
    ...(has("fold", "side", "inner waist") ? ["folded edge"] : []),
  ];
  const cutNet = has("raw", "topline");
  const topline = cutNet ? [made === "bound" ? "topline bound," : made === "wrapped" ? "topline wrapped," : "topline raw,"] : [];
  const butted = has("raw", "side", "inner waist") && seam === "butted" ? [`${side} butted,`] : [];
  return [...addedLines(added), ...topline, ...butted, "grain side up"];
}

/** Which leather a piece is cut smaller for; where it has the centre line, by how much from toe to throat. */
export function correctedNotes({ centre }: NetPanel, { leather, throatByMm }: CorrectedFor): readonly string[] {
  const throat = centre && Math.abs(throatByMm) >= 0.05 ? [`throat ${Math.abs(throatByMm).toFixed(1)} mm ${throatByMm < 0 ? "shorter" : "longer"}`] : [];
  return [...wrapped(`corrected for ${leather}`).slice(0, 2), ...throat];
}

/** One or two words a line, so that they fit on a narrow piece. */
function addedLines(added: readonly string[]): readonly string[] {
  if (added.length === 0) return ["with lasting margin,"];
  if (added.length === 1) return ["with lasting margin", `and ${added[0]!},`];
  const last = `${added[added.length - 2]!} and ${added[added.length - 1]!},`;
  return ["with lasting margin,", ...added.slice(0, -2).map((word) => `${word},`), last];
}
