import { bridged, pointOn, sharpened, type Ring, type Xy } from "./ring.ts";
import type { Slit } from "./taped-shell.ts";

/** Widest mouth and least depth of what is taken for a slit, mm; a slit is at least 1.5 times as deep as wide. */
const widestMm = 12;
const leastDeepMm = 5;
const deepToWide = 1.5;
/** Longest way round inside one slit, mm: handbooks let them run 15 to 30 mm up. */
const longestWayMm = 110;

/**
 * Finds the slits that stand open in an outline, and bridges each straight from bank to bank. The mouth of a slit are the two
 * places with the greatest way round between them less 1.25 times their distance: inside the slit the way still grows, and
 * outside it the distance grows as fast as the way.
 */
export function bridgeSlits(ring: Ring): { readonly ring: Ring; readonly slits: readonly Slit[] } {
  const taken: Mouth[] = [];
  for (const mouth of mouths(ring)) if (taken.every((t) => apart(ring, t, mouth)) && isSlit(ring, mouth)) taken.push(mouth);
  return { ring: taken.length > 0 ? bridged(ring, taken) : ring, slits: taken.map((mouth) => slitAt(ring, mouth)) };
}

/** Two points of the ring, walked forward from one bank to the other. */
interface Mouth {
  readonly from: number;
  readonly to: number;
  readonly gain: number;
}

/** For each place the best mouth that begins there; the best of all first. */
function mouths({ xy, arc, lap }: Ring): readonly Mouth[] {
  const n = arc.length;
  const found: Mouth[] = [];
  for (let i = 0; i < n; i++) {
    const x = xy[2 * i]!, y = xy[2 * i + 1]!;
    let gain = 2 * leastDeepMm, to = -1;
    for (let k = 1; k < n; k++) {
      const j = (i + k) % n;
      const way = arc[j]! - arc[i]! + (j < i ? lap : 0);
      if (way > longestWayMm) break;
      if (way <= gain) continue;
      const dx = xy[2 * j]! - x, dy = xy[2 * j + 1]! - y;
      const square = dx * dx + dy * dy;
      if (square > widestMm * widestMm) continue;
      const here = way - 1.25 * Math.sqrt(square);
      if (here > gain) [gain, to] = [here, j];
    }
    if (to >= 0) found.push({ from: i, to, gain });
  }
  return found.sort((a, b) => b.gain - a.gain);
}

/** Whether two stretches of the ring have at most an end in common. */
function apart({ arc: { length: n } }: Ring, a: Mouth, b: Mouth): boolean {
  const way = (from: number, to: number): number => (to - from + n) % n;
  const within = ({ from, to }: Mouth, k: number): boolean => way(from, k) > 0 && way(from, k) < way(from, to);
  return !within(a, b.from) && !within(a, b.to) && !within(b, a.from) && !within(b, a.to) && !(a.from === b.from || a.to === b.to);
}

/** Deep enough, and the outline turns into it: what lies between the banks is outside. */
function isSlit(ring: Ring, mouth: Mouth): boolean {
  let twice = 0;
  const { xy, arc } = ring;
  const n = arc.length;
  const wide = Math.hypot(xy[2 * mouth.to]! - xy[2 * mouth.from]!, xy[2 * mouth.to + 1]! - xy[2 * mouth.from + 1]!);
  const ox = xy[2 * mouth.from]!, oy = xy[2 * mouth.from + 1]!;
  for (let k = mouth.from; k !== mouth.to; k = (k + 1) % n) {
    const j = (k + 1) % n;
    twice += (xy[2 * k]! - ox) * (xy[2 * j + 1]! - oy) - (xy[2 * j]! - ox) * (xy[2 * k + 1]! - oy);
  }
  return twice < 0 && tipOf(ring, mouth).deepMm >= Math.max(leastDeepMm, deepToWide * wide);
}

/** The place between the banks that lies deepest, and how deep. */
function tipOf({ xy, arc }: Ring, { from, to }: Mouth): { readonly tip: Xy; readonly deepMm: number } {
  const n = arc.length;
  const mx = (xy[2 * from]! + xy[2 * to]!) / 2, my = (xy[2 * from + 1]! + xy[2 * to + 1]!) / 2;
  let tip: Xy = [mx, my];
  let deepMm = 0;
  for (let k = from; k !== to; k = (k + 1) % n) {
    const d = Math.hypot(xy[2 * k]! - mx, xy[2 * k + 1]! - my);
    if (d > deepMm) [tip, deepMm] = [[xy[2 * k]!, xy[2 * k + 1]!], d];
  }
  return { tip, deepMm };
}

function slitAt(ring: Ring, mouth: Mouth): Slit {
  const [from, to] = [sharpened(ring, ring.arc[mouth.from]!), sharpened(ring, ring.arc[mouth.to]!)];
  const blunt = [pointOn(ring, ring.arc[mouth.from]!), pointOn(ring, ring.arc[mouth.to]!)] as const;
  const sharpMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const openMm = Math.min(sharpMm, Math.hypot(blunt[1][0] - blunt[0][0], blunt[1][1] - blunt[0][1]) + 1e-9);
  return { from, to, openMm, ...tipOf(ring, mouth) };
}
