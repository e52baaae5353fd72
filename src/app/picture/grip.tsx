import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent, type ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { LineSettings, Rule } from "#lines/lines.ts";
import { fieldOf } from "../state/measure-field.ts";
import { clamp, mm, percent, snap } from "../state/numbers.ts";
import { arrowSteps, isArrow, pullOne, pullTwo, type Direction } from "../state/pull.ts";
import { clearPlace, type InTheWay, type Place } from "./clear-place.ts";
import type { Handle } from "./handles.ts";

/** What dragging or the arrow keys ask for: new values of one or two settings, as one gesture. */
export type Pull = (values: Partial<LineSettings>, what: string, gesture: string) => void;

interface GripProps {
  readonly handle: Handle;
  readonly pair: LastPair;
  /** Lines as the maker has asked for them; the pair shown may still be behind. */
  readonly asked: Partial<LineSettings>;
  /** Something is being worked out. */
  readonly busy: boolean;
  readonly x: number;
  readonly y: number;
  /** Pixels that the handle moves per unit of each of its settings. */
  readonly directions: readonly Direction[];
  readonly hidden?: boolean;
  /** What the tape length at the finger must not cover: the lines and the other handles, px. */
  readonly clearOf: () => readonly InTheWay[];
  /** The overlay that pointer places are measured in. */
  readonly origin: () => DOMRect | undefined;
  readonly onPull: Pull;
  readonly onDone: () => void;
  readonly picture: "last" | "card";
}

/** A drag that goes on, or whose last pull is still being worked out after the finger has left. */
interface Drag {
  /** From the handle's middle to where it was taken hold of, px. */
  readonly dx: number;
  readonly dy: number;
  readonly gesture: string;
  /** Where the handle is wanted, px in the overlay. */
  wantX: number;
  wantY: number;
  released: boolean;
  /** Corrections still allowed since the finger last moved: between the steps of two numbers they could go round for ever. */
  pullsLeft: number;
}

const mostPulls = 3;
let gestures = 0;

/** A round handle, 44 px to touch, with the tape length written at the finger; arrow keys move it when it is focused. */
export function Grip({ handle, pair, asked, busy, x, y, directions, hidden = false, clearOf, origin, onPull, onDone, picture }: GripProps): ReactElement {
  const drag = useRef<Drag | undefined>(undefined);
  const keys = useRef("");
  const [held, setHeld] = useState(false);
  const [focused, setFocused] = useState(false);
  const [over, setOver] = useState(false);
  const rules = handle.moves.map((m) => pair.lineRules[m.setting]);
  const values = handle.moves.map((m) => pair.lines.settings[m.setting]);
  const text = tapeText(handle, values);

  const set = (next: readonly number[], gesture: string): void => {
    const settings: { -readonly [K in keyof LineSettings]?: number } = {};
    handle.moves.forEach((m, i) => (settings[m.setting] = within(next[i]!, rules[i]!)));
    onPull(settings, `moving the ${handle.name}`, gesture);
  };
  /** Asks for the settings that bring the handle of the pair shown to where it is wanted; false when it is there. */
  const pull = (d: Drag): boolean => {
    const [a, b] = directions;
    if (!a) return false;
    const [dx, dy] = [d.wantX - x, d.wantY - y];
    const change = b ? pullTwo(dx, dy, a, b) : [pullOne(dx, dy, a)];
    const next = values.map((v, i) => within(v + change[i]!, rules[i]!));
    if (next.every((v, i) => v === (asked[handle.moves[i]!.setting] ?? values[i]))) return false;
    set(next, d.gesture);
    return true;
  };
  const down = (e: PointerEvent): void => {
    const box = origin();
    if (!box || hidden || e.button > 0) return;
    e.stopPropagation();
    e.currentTarget.setPointerCapture(e.pointerId);
    drag.current = { dx: e.clientX - box.left - x, dy: e.clientY - box.top - y, gesture: `drag ${++gestures}`, wantX: x, wantY: y, released: false, pullsLeft: mostPulls };
    setHeld(true);
  };
  const move = (e: PointerEvent): void => {
    const box = origin();
    const d = drag.current;
    if (!d || d.released || !box) return;
    [d.wantX, d.wantY] = [e.clientX - box.left - d.dx, e.clientY - box.top - d.dy];
    d.pullsLeft = mostPulls;
    pull(d);
  };
  const up = (): void => {
    if (!drag.current || drag.current.released) return;
    drag.current.released = true;
    setHeld(false);
    // The tape length goes with the finger; it comes back when the pointer does.
    setOver(false);
  };
  // The pictures follow the finger with a delay, and far pulls are only nearly right: each new pair corrects the last pull.
  useEffect(() => {
    const d = drag.current;
    if (!d || busy) return;
    if (d.pullsLeft > 0 && pull(d)) d.pullsLeft--;
    else if (d.released) {
      drag.current = undefined;
      onDone();
    }
  });
  const key = (e: KeyboardEvent): void => {
    if (!isArrow(e.key)) return;
    e.preventDefault();
    e.stopPropagation();
    const times = e.shiftKey ? 10 : 1;
    const from = handle.moves.map((m, i) => asked[m.setting] ?? values[i]!);
    const steps = arrowSteps(e.key, directions);
    set(from.map((v, i) => v + rules[i]!.step * times * steps[i]!), (keys.current ||= `keys ${++gestures}`));
  };
  const field = fieldOf(rules[0]!);
  const showing = held || focused || over;
  const tape = (): Place => {
    const { width = 0, height = 0 } = origin() ?? {};
    return clearPlace({ x, y }, { width: 9 * text.length, height: 20 }, { width, height, clearOf: clearOf(), room: 6, reach: [26, 44, 66, 92] });
  };
  const place = showing ? tape() : undefined;
  return (
    <g className={`grip${held ? " held" : ""}${hidden ? " hidden" : ""}`} transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
      <g
        role="slider"
        tabIndex={0}
        aria-label={`${handle.name}, on the ${picture}`}
        aria-valuenow={values[0]}
        aria-valuemin={field.min}
        aria-valuemax={field.max}
        aria-valuetext={text}
        data-handle={handle.key}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={up}
        onKeyDown={key}
        onKeyUp={() => {
          keys.current = "";
          onDone();
        }}
        onPointerEnter={() => setOver(true)}
        onPointerLeave={() => setOver(false)}
        onFocus={(e) => setFocused(e.currentTarget.matches(":focus-visible"))}
        onBlur={() => setFocused(false)}
      >
        <circle r={22} className="touch" />
        <circle r={8} className="ring" />
      </g>
      {place && (
        <g className="tape" transform={`translate(${(place.x - x).toFixed(1)} ${(place.y - y).toFixed(1)})`} aria-hidden="true">
          <text textAnchor="middle" dominantBaseline="middle">{text}</text>
        </g>
      )}
    </g>
  );
}

/** A little beyond the usual range is allowed: the maker may know better, and a note then says so. */
function within(value: number, rule: Rule): number {
  const room = (rule.max - rule.min) / 4;
  return snap(clamp(value, rule.min - room, rule.max + room), rule.step);
}

function tapeText(handle: Handle, values: readonly number[]): string {
  if (handle.key === "throat") return `throat ${mm(values[0]!)} from the toe`;
  if (handle.key === "back") return `back ${mm(values[0]!)} high`;
  return `${handle.key} side ${mm(values[0]!)} high, at ${percent(values[1]!, 0)}`;
}
