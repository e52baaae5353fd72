import type { DraftGauge } from "#lasting/gauge-drafts.ts";
import type { Gauges } from "#lasting/gauges.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import { nailEveryMm } from "#making/needs/nails.ts";
import { toeReachMm } from "#pieces/margins.ts";
import { arcLengths, directionAt, nearestOn, partBetween, pointAt } from "#plane/along.ts";
import { bounds } from "#plane/measure.ts";
import type { LastInput } from "../../input.ts";
import { plain } from "../numbers.ts";
import { thinned } from "./laid-pieces.ts";
import { scaled } from "./ply.ts";
import { besideMm, scaleFor, type Picture } from "./sketch-lines.ts";
import { heavyMm, lightMm, plainMm, Sketch, type Xy } from "./sketch.ts";

/** The steps that take drafts, and the numbers that each takes. */
export type DraftStep = "draft-uppers" | "last-sides" | "last-toes";
const at = (place: string): readonly number[] => draftOrder.filter((d) => d.place === place).map((d) => d.number);
const takes: Readonly<Record<DraftStep, readonly number[]>> = {
  "draft-uppers": draftOrder.filter((d) => d.place !== "waist").map((d) => d.number),
  "last-sides": at("waist"),
  "last-toes": at("toe"),
};
const mostHighMm = 26, arrowMm = 5.5, numberOutMm = 0.2;

/** The last from below with its feather line; pulls go from the edge inward. Drafts of the step heavy, those taken before lightly. */
export function draftsPicture(step: DraftStep, { last, pieceSettings: s }: Pick<LastInput, "last" | "pieceSettings">, gauges: Gauges, width: number): Picture {
  // From below the side that lies to the left of the way to the toe comes to lie below it.
  const points = last.feather.points, ring = Float64Array.from({ length: (2 * points.length) / 3 }, (_, i) => (i % 2 === 0 ? points[3 * (i / 2)]! : -points[3 * ((i - 1) / 2) + 1]!));
  const { minX, minY, maxX, maxY } = bounds({ xy: ring });
  const { scale, words } = scaleFor(maxX - minX, maxY - minY, width - 2 * (besideMm + 1), mostHighMm - 6);
  const feather = { xy: Float64Array.from([...scaled(ring, scale), scale * ring[0]!, scale * ring[1]!]) }, arc = arcLengths(feather);
  const sketch = new Sketch(), inner = turnIn(feather.xy);
  sketch.stroke(thinned(feather.xy, 240).flat(), plainMm, { closed: true, name: `picture-${step}-feather` });
  const own = takes[step], before = gauges.drafts.filter((d) => !own.includes(d.number) && d.number < Math.max(...own, 9));
  const place = (d: DraftGauge): number => nearestOn(feather, arc, scale * d.at[0], -scale * d.at[1]).s;
  const pull = (d: DraftGauge, heavy: boolean): void => {
    const on = place(d), p = pointAt(feather, arc, on), [ux, uy] = directionAt(feather, arc, on), n: Xy = [-inner * uy, inner * ux];
    // Seat sides are drawn aslant, inward and toward the toe (common practice, no source).
    const way: Xy = d.name.startsWith("seat side") ? [n[0] + 0.9, n[1]] : n, long = Math.sqrt(way[0] ** 2 + way[1] ** 2);
    const mm = heavy ? arrowMm : 0.6 * arrowMm, from: Xy = [p[0] - (0.16 * mm * way[0]) / long, p[1] - (0.16 * mm * way[1]) / long];
    sketch.arrow(from, [from[0] + (mm * way[0]) / long, from[1] + (mm * way[1]) / long], heavy ? heavyMm / 1.4 : lightMm, heavy ? 1.4 : 0.9);
    sketch.mark(String(d.number), [from[0] - numberOutMm * n[0], from[1] - numberOutMm * n[1]], [-n[0], -n[1]]);
  };
  for (const d of before) pull(d, false);
  for (const d of gauges.drafts.filter(({ number }) => own.includes(number))) pull(d, true);
  if (step === "draft-uppers") aslant(sketch, gauges, scale);
  else nails(step, sketch, { feather, arc, inner, scale }, gauges, s.marginLeftMm);
  return { title: `${last.side === "right" ? "Right" : "Left"} last from below, ${words}`, sketch };
}

function aslant(sketch: Sketch, { drafts }: Gauges, scale: number): void {
  const side = drafts.find((d) => d.name.startsWith("seat side"));
  if (side) sketch.key("seat sides aslant: inward and toward the toe", [scale * side.at[0] + 4, -0.55 * scale * side.at[1]], [1, 0]);
}

interface Ring {
  readonly feather: { readonly xy: Float64Array };
  readonly arc: Float64Array;
  readonly inner: 1 | -1;
  readonly scale: number;
}

/** The stretch that is nailed in this step, a stroke to each nail, and what stays open. */
function nails(step: DraftStep, sketch: Sketch, { feather, arc, inner, scale }: Ring, gauges: Gauges, insideMm: number): void {
  const whole = arc[arc.length - 1]!, on = (p: readonly number[]): number => nearestOn(feather, arc, scale * p[0]!, -scale * p[1]!).s;
  const toe = on(gauges.drafts.find(({ number }) => number === 1)!.at), seat = on(gauges.drafts.find(({ name }) => name === "back")!.at);
  const joints = gauges.drafts.filter(({ name }) => name.startsWith("joint")).map((d) => on(d.at));
  const open = toeReachMm * scale;
  // In running length round the ring from the seat: it begins there.
  const round = (s: number): number => (((s - seat) % whole) + whole) % whole;
  const [first, second] = joints.map(round).sort((a, b) => a - b) as [number, number], tip = round(toe);
  const within = step === "last-sides" ? (s: number): boolean => s < first || s > second : (s: number): boolean => s > first && s < second;
  let last: Xy | undefined;
  for (let s = (nailEveryMm * scale) / 2; s < whole; s += nailEveryMm * scale) {
    if (!within(s)) continue;
    const p = pointAt(feather, arc, (s + seat) % whole), [ux, uy] = directionAt(feather, arc, (s + seat) % whole), n: Xy = [-inner * uy, inner * ux];
    const reach = (mm: number): Xy => [p[0] + mm * n[0], p[1] + mm * n[1]];
    sketch.line(reach(0.9), reach(Math.min(1.9, insideMm * scale)), plainMm);
    if (!last || Math.abs(s - (step === "last-sides" ? 0.1 * whole : tip + 0.12 * whole)) < nailEveryMm * scale) last = reach(1.9);
  }
  if (last) sketch.key(`lasting nails, one every ${plain(nailEveryMm)} mm, closer at ${step === "last-sides" ? "the heel" : "the toe"}`, last, [step === "last-sides" ? 1 : -1, 0]);
  if (step !== "last-sides") return;
  const part = partBetween(feather, arc, toe - open, toe + open);
  sketch.stroke(thinned(part.xy).flat(), heavyMm, { dashMm: [0.3, 1.2] });
  sketch.key(`stays open, ${plain(toeReachMm)} mm to either side of the toe's centre`, pointAt(feather, arc, toe), [1, 0]);
}

/** On which side of its way a ring's inside lies: 1 to the left. */
function turnIn(xy: Float64Array): 1 | -1 {
  let twice = 0;
  for (let i = 2; i < xy.length; i += 2) twice += xy[i - 2]! * xy[i + 1]! - xy[i]! * xy[i - 1]!;
  return twice > 0 ? 1 : -1;
}
