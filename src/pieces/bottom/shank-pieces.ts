import type { Outline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import type { LabelBlock } from "../labels.ts";
import { lineMark } from "../marks.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { centring } from "./bottom-lines.ts";
import type { NetBottom } from "./net-bottom.ts";
import { shankOutline, type ShankBend, type ShankPlace } from "./shank.ts";

/** The shank as it is bought or cut, in its place on the flat bottom. */
export function cutShank(net: NetBottom, place: ShankPlace, { shankMm, shankWideMm, shankThickMm }: PieceSettings, { size }: Labels): Draft {
  const [ux, uy] = centring(net);
  const along = (place.rearMm + place.frontMm - place.widthMm / 2) / 2;
  const lines = [
    { text: size === "" ? "shank, {side}" : `shank, {side}, size ${size}`, heightMm: 2.8 },
    { text: `${shankMm} x ${shankWideMm} x ${shankThickMm.toFixed(1)} mm`, heightMm: 2.4 },
  ];
  const angleDeg = (Math.atan2(uy, ux) * 180) / Math.PI;
  return { name: "shank", material: "shank", net: true, outline: shankOutline(net, place), marks: [], labels: [{ lines, at: [along * ux, along * uy], angleDeg }], directionDeg: angleDeg, ground: "bottom" };
}

/** How high the card stands under the lowest place of the bend, mm. */
const cardMm = 22;

/** A card to bend the shank on before it is glued in: its upper edge runs as the last's bottom does along the shank, seen from the side. */
export function cutShankBend(bend: readonly ShankBend[], labels: Labels): readonly Draft[] {
  const last = bend[bend.length - 1];
  if (bend.length < 3 || !last) return [];
  const lowest = bend.reduce((least, { riseMm }) => Math.min(least, riseMm), 0);
  const y = (rise: number): number => rise - lowest;
  const points: Xy[] = [[0, -cardMm], [last.alongMm, -cardMm]];
  for (const { alongMm, riseMm } of bentFinely(bend).reverse()) points.push([alongMm, y(riseMm)]);
  const outline: Outline = { xy: Float64Array.from(points.flat()) };
  // The rises are written beside their ticks, which need no other name.
  const shown = bend.filter((_, k) => k % 2 === 0 && k > 0 && k < bend.length - 1);
  const marks = shown.map(({ alongMm, riseMm }) => lineMark("", "place", { xy: Float64Array.of(alongMm, y(riseMm) - tickMm, alongMm, y(riseMm)) }));
  const rises = shown.map(({ alongMm, riseMm }): LabelBlock => ({ lines: [{ text: riseMm.toFixed(1), heightMm: 2 }], at: [alongMm, y(riseMm) - tickMm - 2], angleDeg: 0 }));
  const end = (text: string, x: number): LabelBlock => ({ lines: [{ text, heightMm: 2.4 }], at: [x, -cardMm + 4], angleDeg: 0 });
  const name: LabelBlock = {
    lines: [{ text: "shank bend", heightMm: 4 }, { text: labels.size === "" ? "{side}" : `{side}, size ${labels.size}`, heightMm: 2.4 }, { text: "to bend the shank, rise in mm", heightMm: 2.4 }],
    at: [last.alongMm / 2, -cardMm + 8], angleDeg: 0,
  };
  return [{ name: "shank bend", material: "card", net: true, outline, marks, labels: [name, ...rises, end("heel", 7), end("waist", last.alongMm - 8)], directionDeg: 0 }];
}

/** Length of the ticks at which the rise is written, mm. */
const tickMm = 3;

/** The bend every 2 mm or so, by cubics through the heights (Catmull-Rom, one-sided at the ends). */
function bentFinely(bend: readonly ShankBend[]): ShankBend[] {
  const out: ShankBend[] = [];
  const rise = (i: number): number => i < 0 ? 2 * bend[0]!.riseMm - bend[1]!.riseMm : i >= bend.length ? 2 * bend[bend.length - 1]!.riseMm - bend[bend.length - 2]!.riseMm : bend[i]!.riseMm;
  for (let i = 0; i + 1 < bend.length; i++) {
    const [a, b, c, d] = [rise(i - 1), rise(i), rise(i + 1), rise(i + 2)];
    for (let k = 0; k < 5; k++) {
      const t = k / 5;
      const riseMm = b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
      out.push({ alongMm: bend[i]!.alongMm + t * (bend[i + 1]!.alongMm - bend[i]!.alongMm), riseMm });
    }
  }
  out.push(bend[bend.length - 1]!);
  return out;
}
