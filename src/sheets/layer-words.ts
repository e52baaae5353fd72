import { listed } from "#base/listed.ts";
import { layers, type Layer } from "./pen.ts";

/** What a maker calls what lies on each layer. */
export const layerWords: Readonly<Record<Layer, string>> = { cut: "cutting lines", mark: "marks", fold: "fold lines", text: "words" };

/** What must be said of an SVG and DXF that nothing can be cut from; nothing where they hold the cutting lines. One layer at least is chosen. */
export function withoutCutWords(chosen: readonly Layer[]): string | undefined {
  if (chosen.includes("cut")) return undefined;
  const held = layers.filter((layer) => chosen.includes(layer)).map((layer) => layerWords[layer]);
  return `pattern.svg and pattern.dxf hold no cutting lines, only ${listed(held)}: that is what you chose. The PDF has everything.`;
}
