import { above, depthOf, distanceFrom, partsOf, upTo, type Mask } from "./masks.ts";

/** A notch narrower than this that begins at the outline is a mark drawn across the edge, dark as the ground, mm. */
const markMm = 1;
/** A slit gapes wider than this somewhere; what is narrower all along is shut anyway, mm. */
const slitMm = 5;
/** What sticks out narrower than the first and farther than the second is a line or a thread, not a tip of tape, mm. */
const threadMm = 1.2;
const tipMm = 5;

/**
 * Puts right what ink does to the share of piece in each cell: marks that run across the edge and look like the ground are
 * filled, lines and threads that run out from the piece are taken off. Slits and tips stay. Works on `share` in place.
 */
export function tidyShareInto(share: Float32Array, width: number, height: number, stepMm: number): void {
  const piece = largest({ width, height, on: above(share, 0.5) });
  const whole = shut(piece, markMm / 2 / stepMm);
  const marks = minus(whole, piece);
  const reach = distanceFrom({ width, height, on: inverse(shut(piece, slitMm / 2 / stepMm)).on });
  const found = partsOf(marks, 8);
  const atEdge = new Uint8Array(found.parts.length + 1);
  for (let k = 0; k < found.labels.length; k++) if (found.labels[k]! > 0 && reach[k]! * stepMm < 0.8) atEdge[found.labels[k]!] = 1;
  const long = new Uint8Array(found.parts.length + 1);
  for (const p of found.parts) long[p.label] = Math.max(p.maxI - p.minI, p.maxJ - p.minJ) * stepMm > 1 ? 1 : 0;
  const filled = { width, height, on: Uint8Array.from(found.labels, (l) => (atEdge[l] === 1 && long[l] === 1 ? 1 : 0)) };
  if (filled.on.includes(1)) {
    // With the cells beside, which are part ink; but not beyond the outline as it is with the mark filled.
    const beside = distanceFrom(filled);
    for (let k = 0; k < share.length; k++) if (beside[k]! < 2 && whole.on[k] === 1) share[k] = 1;
  }
  const now = largest({ width, height, on: above(share, 0.5) });
  const kept = { width, height, on: upTo(distanceFrom({ width, height, on: above(depthOf(now), threadMm / 2 / stepMm) }), threadMm / 2 / stepMm + 0.8) };
  const out = partsOf(minus(now, kept), 8);
  const thread = new Uint8Array(out.parts.length + 1);
  for (const p of out.parts) thread[p.label] = Math.max(p.maxI - p.minI, p.maxJ - p.minJ) * stepMm > tipMm ? 1 : 0;
  for (let k = 0; k < share.length; k++) if (thread[out.labels[k]!] === 1) share[k] = 0;
}

/** Grown and shrunk again: openings up to twice `cells` wide are shut. */
function shut(mask: Mask, cells: number): Mask {
  const { width, height } = mask;
  return { width, height, on: above(depthOf({ width, height, on: upTo(distanceFrom(mask), cells) }), cells) };
}

function largest(mask: Mask): Mask {
  const { labels, parts } = partsOf(mask, 8);
  const most = parts.reduce((a, b) => (b.cells > a.cells ? b : a), { label: -1, cells: 0 });
  return { width: mask.width, height: mask.height, on: Uint8Array.from(labels, (l) => (l === most.label ? 1 : 0)) };
}

function minus(a: Mask, b: Mask): Mask {
  return { width: a.width, height: a.height, on: a.on.map((v, k) => (v === 1 && b.on[k] === 0 ? 1 : 0)) };
}

function inverse({ width, height, on }: Mask): Mask {
  return { width, height, on: on.map((v) => 1 - v) };
}
