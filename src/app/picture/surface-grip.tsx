import { useRef, useState, type KeyboardEvent, type PointerEvent, type ReactElement } from "react";
import type { Point3 } from "#last/last.ts";
import { isArrow } from "../state/pull.ts";
import type { LastScene } from "./last-scene.ts";

interface SurfaceGripProps {
  readonly scene: LastScene;
  /** Where it stands on the last, mm. */
  readonly at: Point3;
  /** Px in the overlay. */
  readonly x: number;
  readonly y: number;
  readonly hidden: boolean;
  readonly name: string;
  /** Written in the ring. */
  readonly mark?: string;
  /** Stands ready on the line: reached by hand only, since the column offers the same to the keyboard. */
  readonly ready?: boolean;
  readonly spot: string;
  readonly lit: boolean;
  readonly origin: () => DOMRect | undefined;
  /** Follows the finger, and tells when it has left; nothing when it was let go where it was taken. */
  readonly onDrag: (at: Point3) => void;
  readonly onDrop: (at: Point3 | undefined) => void;
  readonly onDelete?: (() => void) | undefined;
  readonly onLit: (lit: boolean) => void;
}

/** One press of an arrow key, mm. */
const stepMm = 0.5;
/** A finger that stayed within this many px did not mean to drag. */
const still = 3;

const ways = { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] } as const;

/** A round handle on the surface of the last, 44 px to touch; it slides over the surface under the finger or by the arrow keys. */
export function SurfaceGrip(props: SurfaceGripProps): ReactElement {
  const { scene, at, x, y, hidden, name, mark, ready = false, spot, lit, origin, onDrag, onDrop, onDelete, onLit } = props;
  const drag = useRef<{ readonly dx: number; readonly dy: number; readonly x: number; readonly y: number; at: Point3; moved: boolean }>(undefined);
  const keyed = useRef<Point3>(undefined);
  const [held, setHeld] = useState(false);

  const down = (e: PointerEvent): void => {
    const box = origin();
    if (!box || hidden || e.button > 0) return;
    e.stopPropagation();
    e.currentTarget.setPointerCapture(e.pointerId);
    drag.current = { dx: e.clientX - box.left - x, dy: e.clientY - box.top - y, x, y, at, moved: false };
    setHeld(true);
  };
  const move = (e: PointerEvent): void => {
    const box = origin();
    const d = drag.current;
    if (!d || !box) return;
    const [toX, toY] = [e.clientX - box.left - d.dx, e.clientY - box.top - d.dy];
    if (!d.moved && Math.hypot(toX - d.x, toY - d.y) < still) return;
    d.moved = true;
    // Off the last, the handle stays at its edge.
    d.at = scene.pick(toX, toY) ?? scene.onto(scene.moved(d.at, toX - scene.project(d.at).x, toY - scene.project(d.at).y));
    onDrag(d.at);
  };
  const up = (): void => {
    const d = drag.current;
    if (!d) return;
    drag.current = undefined;
    setHeld(false);
    onDrop(d.moved ? d.at : undefined);
  };
  const key = (e: KeyboardEvent): void => {
    if ((e.key === "Delete" || e.key === "Backspace") && onDelete) {
      e.preventDefault();
      keyed.current = undefined;
      return onDelete();
    }
    if (!isArrow(e.key)) return;
    e.preventDefault();
    e.stopPropagation();
    const [dx, dy] = ways[e.key];
    const px = (stepMm * (e.shiftKey ? 10 : 1)) / scene.mmPerPx;
    keyed.current = scene.onto(scene.moved(keyed.current ?? at, dx * px, dy * px));
    onDrag(keyed.current);
  };
  const keyDone = (): void => {
    if (!keyed.current) return;
    onDrop(keyed.current);
    keyed.current = undefined;
  };
  const words = ready
    ? { "aria-hidden": true as const }
    : { role: "button", tabIndex: 0, "aria-label": `${name}. The arrow keys move it over the last${onDelete ? ", Delete takes it out" : ""}.` };
  return (
    <g
      className={`grip on-last${ready ? " ready" : ""}${held ? " held" : ""}${lit ? " lit-grip" : ""}${hidden ? " hidden" : ""}`}
      transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}
      data-spot={spot}
      {...words}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={up}
      onPointerEnter={() => onLit(true)}
      onPointerLeave={() => onLit(false)}
      onFocus={() => onLit(true)}
      onBlur={() => {
        keyDone();
        onLit(false);
      }}
      onKeyDown={key}
      onKeyUp={keyDone}
    >
      <circle r={22} className="touch" />
      <circle r={ready ? 4.5 : 10} className="ring" />
      {mark !== undefined && <text className="mark-in-ring" textAnchor="middle" dominantBaseline="central">{mark}</text>}
    </g>
  );
}
