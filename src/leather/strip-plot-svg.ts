import type { StripWay } from "./leather.ts";
import { plotStrips } from "./strip-plot.ts";
import type { StripFit } from "./strip-fit.ts";
import { wayWords } from "./strip-words.ts";

const frame = { left: 16, top: 10, width: 140, height: 92 } as const;
const size = { width: 190, height: 118 } as const;
/** Okabe and Ito's colours, told apart by the colour-blind, dark enough for words; each way has a sign and a name of its own too. */
const inks: Readonly<Record<StripWay, string>> = { along: "#00619a", across: "#b34700", bias: "#007a5a" };

/** The plot of a fit as an SVG of its own, for pages. */
export function stripPlotSvg(fit: Pick<StripFit, "curves" | "readings">, title: string): string {
  const plot = plotStrips(fit, frame);
  const { left, top, width, height } = frame;
  const foot = top + height;
  const path = (xy: Float64Array, closed: boolean): string => {
    let d = "";
    for (let i = 0; i < xy.length; i += 2) d += `${i === 0 ? "M" : "L"}${xy[i]!.toFixed(2)} ${xy[i + 1]!.toFixed(2)}`;
    return closed ? `${d}Z` : d;
  };
  const text = (x: number, y: number, anchor: string, words: string, ink = "#222"): string => `<text x="${x.toFixed(2)}" y="${y.toFixed(2)}" text-anchor="${anchor}" font-family="sans-serif" font-size="4.4" fill="${ink}">${words}</text>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size.width} ${size.height}" width="${4 * size.width}" height="${4 * size.height}" role="img" aria-label="${title}">`,
    `<rect width="${size.width}" height="${size.height}" fill="#fdfbf7"/>`,
    ...plot.stretches.map(({ at }) => `<path d="M${left} ${at.toFixed(2)}H${left + width}" stroke="#ddd6c8" stroke-width="0.3"/>`),
    ...plot.ways.map(({ way, band }) => `<path d="${path(band, true)}" fill="${inks[way]}" fill-opacity="0.14"/>`),
    ...plot.ways.map(({ way, line }) => `<path d="${path(line, false)}" fill="none" stroke="${inks[way]}" stroke-width="0.8"/>`),
    ...plot.readings.map(({ way, x, y }) => sign(way, x, y)),
    `<path d="M${left} ${top}V${foot}H${left + width}" fill="none" stroke="#222" stroke-width="0.5"/>`,
    ...plot.stretches.map(({ text: words, at }) => text(left - 2, at + 1.5, "end", words)),
    ...plot.loads.map(({ text: words, at }) => text(at, foot + 5.5, "middle", words)),
    ...plot.ways.map(({ way, end }) => text(end.x + 2, end.y + 1.5, "start", wayWords[way], inks[way])),
    text(2, 6, "start", "stretch, %"),
    text(left + width, foot + 12.5, "end", "load on a strip 20 mm wide, N"),
    "</svg>\n",
  ].join("\n");
}

/** One reading: a ring along, a square across, a diamond at 45 degrees. */
function sign(way: StripWay, x: number, y: number): string {
  const r = 1.1, at = `fill="#fdfbf7" stroke="${inks[way]}" stroke-width="0.45"`;
  const n = (v: number): string => v.toFixed(2);
  switch (way) {
    case "along": return `<circle cx="${n(x)}" cy="${n(y)}" r="${r}" ${at}/>`;
    case "across": return `<rect x="${n(x - r)}" y="${n(y - r)}" width="${2 * r}" height="${2 * r}" ${at}/>`;
    case "bias": return `<path d="M${n(x)} ${n(y - 1.4 * r)}L${n(x + 1.4 * r)} ${n(y)}L${n(x)} ${n(y + 1.4 * r)}L${n(x - 1.4 * r)} ${n(y)}Z" ${at}/>`;
  }
}
