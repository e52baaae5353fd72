import type { Outline, Polyline } from "./outline.ts";

/**
 * Mirror in the x axis: y changes sign, which is exact, so that mirroring twice gives every bit back. An outline is also
 * reversed, so that it stays counter-clockwise; an open polyline keeps its direction, since that has a meaning.
 */
export function mirrorOutline({ xy }: Outline): Outline {
  return { xy: mirrorReversedInto(new Float64Array(xy.length), xy) };
}

/** Mirrors and reverses; `out` may be `xy`. */
export function mirrorReversedInto(out: Float64Array, xy: Float64Array): Float64Array {
  for (let i = 0, j = xy.length - 2; i <= j; i += 2, j -= 2) {
    // Read both before writing, since out may be xy.
    const xi = xy[i]!;
    const yi = xy[i + 1]!;
    const xj = xy[j]!;
    const yj = xy[j + 1]!;
    out[i] = xj;
    out[i + 1] = -yj;
    out[j] = xi;
    out[j + 1] = -yi;
  }
  return out;
}

export function mirrorPolyline({ xy }: Polyline): Polyline {
  const out = new Float64Array(xy.length);
  for (let i = 0; i < xy.length; i += 2) {
    out[i] = xy[i]!;
    out[i + 1] = -xy[i + 1]!;
  }
  return { xy: out };
}

export function mirrorPoint(p: readonly [number, number]): readonly [number, number] {
  return [p[0], -p[1]];
}
