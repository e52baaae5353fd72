import { useEffect, useRef, useState, type RefObject } from "react";
import type { Last } from "#last/last.ts";
import { medialSign } from "#last/last.ts";
import { LastScene, type Eye } from "./last-scene.ts";
import { useSize } from "./use-size.ts";

interface SceneHere {
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  readonly frame: RefObject<HTMLDivElement | null>;
  readonly size: { readonly width: number; readonly height: number };
  /** Nothing before the first picture, and where the browser has no WebGL (`none`). */
  readonly scene: LastScene | undefined;
  readonly none: boolean;
}

/** A scene with the last in it, as large as its frame, looked at from `eye`; a new object looks from there again. */
export function useScene({ mesh, side, source, name }: Last, eye: Eye, sides?: number): SceneHere {
  const canvas = useRef<HTMLCanvasElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  const [made, setMade] = useState<LastScene | "none">();
  const [, drawn] = useState(0);
  const size = useSize(frame);
  useEffect(() => {
    try {
      const scene = new LastScene(canvas.current!, () => drawn((n) => n + 1), sides);
      setMade(scene);
      return () => scene.dispose();
    } catch {
      setMade("none");
      return undefined;
    }
  }, [sides]);
  const scene = made instanceof LastScene ? made : undefined;
  useEffect(() => scene?.resize(size.width, size.height), [scene, size.width, size.height]);
  useEffect(() => scene?.setLast(mesh), [scene, mesh]);
  // The eyes are told for a last whose inner side is on its left (+y).
  const mirrored = medialSign(side) === -1;
  // Another scan is looked at anew; the same one stays as it was turned while it is put right.
  const which = source === "scan" ? name : source;
  useEffect(() => scene?.look(mirrored ? { ...eye, turnDeg: -eye.turnDeg } : eye, true), [scene, mirrored, eye, which]);
  return { canvas, frame, size, scene, none: made === "none" };
}
