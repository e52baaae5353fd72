/**
 * The scale "broc" of Fabio Crameri's Scientific colour maps (copyright 2020 Fabio Crameri, MIT licence; Crameri, Shephard and Heron, Nature Communications
 * 11, 5444, 2020), sampled at 21 even places: perceptually even, readable with every common colour blindness, light at zero.
 * The first half, turned over, is for what must give; the second for what must gather.
 */
const broc = [
  "2c1a4c", "2a2d5f", "284073", "2c5587", "3f6b99", "5a82a8", "7798b8", "95aec7", "b3c5d7", "d2dde7", "ebeeec",
  "eaead6", "dcdbb8", "cbcb99", "b5b57b", "9b9b61", "81814c", "696837", "515124", "3a3b12", "262600",
].map((hex) => [0, 2, 4].map((i) => Number.parseInt(hex.slice(i, i + 2), 16)));

/** The darkest tenth at either end is left out: lines and numbers in ink must stay readable on the map. */
const kept = 0.78;

/** Colour at `share` of the scale, −1 … +1 (clamped), as red, green, blue 0 … 255. */
export function mapColour(share: number): readonly [number, number, number] {
  const place = (1 - Math.max(-1, Math.min(1, share)) * kept) * ((broc.length - 1) / 2);
  const i = Math.min(broc.length - 2, Math.floor(place));
  const f = place - i;
  const [p, q] = [broc[i]!, broc[i + 1]!];
  return [0, 1, 2].map((c) => Math.round(p[c]! + f * (q[c]! - p[c]!))) as unknown as readonly [number, number, number];
}

export function mapCss(share: number): string {
  return `rgb(${mapColour(share).join(" ")})`;
}
