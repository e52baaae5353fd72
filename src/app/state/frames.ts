import { useEffect, useState, useSyncExternalStore } from "react";

/** The steps of the pull-over as the maker goes through them. */
export interface Steps {
  /** The step that is shown, from 0; the last is the upper at rest. */
  readonly at: number;
  readonly count: number;
  readonly playing: boolean;
  readonly goTo: (at: number) => void;
  readonly play: () => void;
  readonly pause: () => void;
  /** Nothing moves by itself: the maker asked her machine for less motion. */
  readonly still: boolean;
}

/** Long enough to read what a draft does and to see it, ms. */
const eachMs = 900;

const asked = "(prefers-reduced-motion: reduce)";
function useReducedMotion(): boolean {
  return useSyncExternalStore(
    (ear) => {
      const query = matchMedia(asked);
      query.addEventListener("change", ear);
      return () => query.removeEventListener("change", ear);
    },
    () => matchMedia(asked).matches,
  );
}

/** Steps through `count` frames; another run begins at its end, at rest. */
export function useSteps(count: number, of: unknown): Steps {
  const still = useReducedMotion();
  const [now, set] = useState<{ readonly of: unknown; readonly at: number; readonly playing: boolean }>({ of, at: count - 1, playing: false });
  const at = now.of === of ? Math.min(now.at, count - 1) : count - 1;
  const playing = now.of === of && now.playing && !still && at < count - 1;
  useEffect(() => {
    if (!playing) return;
    const timer = setTimeout(() => set({ of, at: at + 1, playing: true }), eachMs);
    return () => clearTimeout(timer);
  }, [playing, at, of]);
  return {
    at, count, playing, still,
    goTo: (to) => set({ of, at: Math.max(0, Math.min(count - 1, to)), playing: false }),
    play: () => set({ of, at: at >= count - 1 ? 0 : at, playing: true }),
    pause: () => set({ of, at, playing: false }),
  };
}
