import type { Chosen } from "../choices.ts";
import type { CutPanel } from "../edges/cut-panel.ts";
import { edgesOf } from "../edges/places.ts";

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

/** One or two words a line, so that they fit on a narrow piece. */
function addedLines(added: readonly string[]): readonly string[] {
  if (added.length === 0) return ["with lasting margin,"];
  if (added.length === 1) return ["with lasting margin", `and ${added[0]!},`];
  const last = `${added[added.length - 2]!} and ${added[added.length - 1]!},`;
  return ["with lasting margin,", ...added.slice(0, -2).map((word) => `${word},`), last];
}
