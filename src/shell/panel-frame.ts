import { must } from "#base/bug.ts";
import type { LaidPanel, Panel } from "./panel.ts";

const last = (ids: Uint32Array): number => ids[ids.length - 1]!;

/**
 * Turns and moves a laid panel into its frame. With the centre line: toe point at the origin, throat → toe along +x, as the upper in one
 * piece. A quarter: back point at the origin, the chord of its feather line along +x with the heel at low x, so that an inner one of a
 * right last lies on +y and an outer one on −y. A heel part: seat point at the origin, back point on +y.
 */
export function inFrame(laid: LaidPanel): LaidPanel {
  const { panel, uv } = laid;
  const { origin, from, to, alongY = false } = axisOf(panel);
  const dx = uv[2 * to]! - uv[2 * from]!, dy = uv[2 * to + 1]! - uv[2 * from + 1]!;
  const size = Math.sqrt(dx * dx + dy * dy);
  must(size > 0, "a panel's axis has a length");
  // The axis comes to lie along +x, or along +y.
  const [c, s] = alongY ? [dy / size, -dx / size] : [dx / size, dy / size];
  const out = new Float64Array(uv.length);
  for (let i = 0; i < uv.length; i += 2) {
    const x = uv[i]! - uv[2 * origin]!, y = uv[i + 1]! - uv[2 * origin + 1]!;
    out[i] = c * x + s * y + 0;
    out[i + 1] = c * y - s * x + 0;
  }
  return { ...laid, uv: out };
}

interface Axis {
  readonly origin: number;
  readonly from: number;
  readonly to: number;
  readonly alongY?: boolean;
}

function axisOf({ name, centre, edges, back }: Panel): Axis {
  if (centre) return { origin: centre[0]!, from: last(centre), to: centre[0]! };
  if (back) return { origin: back[0]!, from: back[0]!, to: last(back), alongY: true };
  const feather = edges[0]!.vertices, bank = edges.find(({ role }) => role === "back");
  must(bank && (name === "inner quarter" || name === "outer quarter"), "a panel without centre line is a quarter or a heel part");
  // The inner quarter's feather line runs back to the seat, the outer one's begins there.
  const [heel, front] = name === "inner quarter" ? [last(feather), feather[0]!] : [feather[0]!, last(feather)];
  return { origin: name === "inner quarter" ? last(bank.vertices) : bank.vertices[0]!, from: heel, to: front };
}
