import { useLayoutEffect, useMemo, useRef, type KeyboardEvent, type PointerEvent } from "react";
import type { Bounds } from "#plane/measure.ts";
import { fitted, shifted, zoomed, type PhotoPlace } from "../state/photo-place.ts";

interface Frame {
  readonly width: number;
  readonly height: number;
}

interface PhotoMoves {
  readonly down: (e: PointerEvent<HTMLElement>) => void;
  readonly move: (e: PointerEvent<HTMLElement>) => void;
  readonly up: (e: PointerEvent<HTMLElement>) => void;
  readonly key: (e: KeyboardEvent) => void;
  readonly wheel: (by: number, at: readonly [number, number]) => void;
  readonly nearer: () => void;
  readonly farther: () => void;
}

/** Dragging shifts the photograph, two fingers or the wheel bring it nearer; arrow keys shift it, plus, minus and nought do the rest. */
export function usePhotoMoves(place: PhotoPlace, frame: Frame, box: Bounds, set: (place: PhotoPlace | undefined) => void): PhotoMoves {
  // Several moves may come before the picture is drawn again: each goes on from the one before.
  const now = useRef({ place, frame, box });
  useLayoutEffect(() => {
    now.current = { place, frame, box };
  }, [place, frame, box]);
  return useMemo(() => {
    const fingers = new Map<number, readonly [number, number]>();
    const become = (next: PhotoPlace): void => {
      now.current = { ...now.current, place: next };
      set(next);
    };
    const shift = (dx: number, dy: number): void => become(shifted(now.current.place, dx, dy, now.current.frame, now.current.box));
    const zoom = (by: number, at: readonly [number, number]): void => become(zoomed(now.current.place, by, now.current.frame, at, now.current.box));
    const middle = (): readonly [number, number] => [now.current.frame.width / 2, now.current.frame.height / 2];
    const inFrame = (e: PointerEvent<HTMLElement>): readonly [number, number] => {
      const box = e.currentTarget.getBoundingClientRect();
      return [e.clientX - box.left, e.clientY - box.top];
    };
    const between = (): { readonly apart: number; readonly at: readonly [number, number] } => {
      const [a, b] = [...fingers.values()];
      return a && b ? { apart: Math.hypot(a[0] - b[0], a[1] - b[1]), at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] } : { apart: 0, at: a ?? middle() };
    };
    return {
      down: (e) => {
        e.currentTarget.setPointerCapture(e.pointerId);
        fingers.set(e.pointerId, inFrame(e));
      },
      move: (e) => {
        if (!fingers.has(e.pointerId)) return;
        const before = between();
        fingers.set(e.pointerId, inFrame(e));
        const after = between();
        shift(after.at[0] - before.at[0], after.at[1] - before.at[1]);
        if (before.apart > 0 && after.apart > 0) zoom(after.apart / before.apart, after.at);
      },
      up: (e) => void fingers.delete(e.pointerId),
      key: (e) => {
        const by = { ArrowLeft: [48, 0], ArrowRight: [-48, 0], ArrowUp: [0, 48], ArrowDown: [0, -48] }[e.key];
        if (by) shift(by[0]!, by[1]!);
        else if (e.key === "+" || e.key === "=") zoom(1.25, middle());
        else if (e.key === "-") zoom(0.8, middle());
        else if (e.key === "0") become(fitted(now.current.box, now.current.frame));
        else return;
        e.preventDefault();
      },
      wheel: zoom,
      nearer: () => zoom(1.6, middle()),
      farther: () => zoom(1 / 1.6, middle()),
    };
  }, [set]);
}
