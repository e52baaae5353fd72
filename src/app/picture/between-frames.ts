import { useEffect, useState } from "react";

/** From one picture of the pull-over to the next, and how far on the way, 0 … 1. */
export interface Between {
  readonly from: number;
  readonly to: number;
  readonly share: number;
}

/** Slow enough for the eye to follow the leather, ms. */
const moveMs = 400;

/** Goes over to picture `at` bit by bit, where it follows the one that is shown; at once elsewhere, and where nothing is to move by itself. */
export function useBetween(at: number, still: boolean): Between {
  const [now, set] = useState<Between>({ from: at, to: at, share: 1 });
  // Another picture is wanted than was last gone to.
  if (now.to !== at) set(still || at < now.to ? { from: at, to: at, share: 1 } : { from: now.to, to: at, share: 0 });
  const { to, share } = now, moving = share < 1;
  useEffect(() => {
    if (!moving) return;
    const began = performance.now();
    let asked = requestAnimationFrame(function step(time: number) {
      const gone = Math.min(1, Math.max(0, (time - began) / moveMs));
      set((was) => (was.to === to ? { ...was, share: gone } : was));
      if (gone < 1) asked = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(asked);
  }, [moving, to]);
  return now;
}

/** Places between two pictures, x y z …, mm. */
export function placesBetween(from: ArrayLike<number>, to: ArrayLike<number>, share: number): Float64Array {
  return Float64Array.from({ length: to.length }, (_, i) => from[i]! + share * (to[i]! - from[i]!));
}
