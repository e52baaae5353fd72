import { useMemo, type KeyboardEvent, type PointerEvent } from "react";
import type { LastScene } from "./last-scene.ts";

/** Dragging turns, two fingers or the wheel bring nearer, arrow keys turn and plus and minus bring nearer. */
export function useTurning(scene: LastScene | undefined) {
  return useMemo(() => {
    const fingers = new Map<number, { readonly x: number; readonly y: number }>();
    const by = (turn: number, rise: number): void => {
      if (scene) scene.look({ turnDeg: scene.eye.turnDeg + turn, riseDeg: scene.eye.riseDeg + rise }, false);
    };
    const apart = (): number => {
      const [a, b] = [...fingers.values()];
      return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
    };
    return {
      turning: () => fingers.size > 0,
      down: (e: PointerEvent<HTMLElement>) => {
        e.currentTarget.setPointerCapture(e.pointerId);
        fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
      },
      move: (e: PointerEvent) => {
        const before = fingers.get(e.pointerId);
        if (!before || !scene) return;
        const was = apart();
        fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
        if (fingers.size === 1) by((before.x - e.clientX) * 0.4, (e.clientY - before.y) * 0.4);
        else if (was > 0) scene.zoom(apart() / was);
      },
      up: (e: PointerEvent) => void fingers.delete(e.pointerId),
      key: (e: KeyboardEvent) => {
        const turn = { ArrowLeft: [6, 0], ArrowRight: [-6, 0], ArrowUp: [0, 6], ArrowDown: [0, -6] }[e.key];
        if (turn) by(turn[0]!, turn[1]!);
        else if (e.key === "+" || e.key === "=") scene?.zoom(1.15);
        else if (e.key === "-") scene?.zoom(1 / 1.15);
        else return;
        e.preventDefault();
      },
    };
  }, [scene]);
}
