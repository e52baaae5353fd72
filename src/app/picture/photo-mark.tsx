import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent, type ReactElement } from "react";
import { ontoNearest, stepOnTrack, type Track } from "../state/on-outline.ts";
import { isArrow } from "../state/pull.ts";
import { clearPlace, type InTheWay } from "./clear-place.ts";

type Xy = readonly [number, number];

/** A named place on a traced outline that the maker may put elsewhere. */
export interface PhotoMark {
  readonly key: string;
  readonly name: string;
  /** On the card's plane, mm. */
  readonly at: Xy;
  readonly how: "said" | "found" | "estimated";
  /** The outlines it may lie on. */
  readonly tracks: readonly Track[];
  /** What a tape reads from it, with the mark at this place. */
  readonly reads: (at: Xy) => string;
}

/** What becomes of a mark: another place, or where it is found again. */
export interface MarkMoves {
  readonly onMove: (key: string, at: Xy, gesture: string) => void;
  readonly onDone: () => void;
  readonly onFound: (key: string) => void;
}

interface PhotoGripProps extends MarkMoves {
  readonly mark: PhotoMark;
  readonly toFrame: (at: Xy) => readonly [number, number];
  readonly toPlane: (x: number, y: number) => Xy;
  readonly origin: () => DOMRect | undefined;
  readonly frame: { readonly width: number; readonly height: number };
  readonly clearOf: readonly InTheWay[];
  /** Its lengths are written out now, in place of its name. */
  readonly onShow: (key: string, shown: boolean) => void;
}

const how = { said: "placed by you", found: "as found", estimated: "at an estimated place" } as const;
let gestures = 0;

/** A round handle that slides along the outline, 44 px to touch, with the tape lengths written at the finger. */
export function PhotoGrip({ mark, toFrame, toPlane, origin, frame, clearOf, onShow, onMove, onDone, onFound }: PhotoGripProps): ReactElement {
  const held = useRef<{ readonly dx: number; readonly dy: number; readonly gesture: string } | undefined>(undefined);
  const keys = useRef("");
  // While the finger holds it, it is where the finger is, whatever becomes of the work.
  const [under, setUnder] = useState<Xy>();
  const [focused, setFocused] = useState(false);
  const [over, setOver] = useState(false);
  const at = under ?? mark.at;
  const [x, y] = toFrame(at);
  const text = mark.reads(at);

  const down = (e: PointerEvent): void => {
    const box = origin();
    if (!box || e.button > 0) return;
    e.stopPropagation();
    e.currentTarget.setPointerCapture(e.pointerId);
    held.current = { dx: e.clientX - box.left - x, dy: e.clientY - box.top - y, gesture: `mark ${++gestures}` };
    setUnder(mark.at);
  };
  const move = (e: PointerEvent): void => {
    const box = origin();
    const hold = held.current;
    if (!hold || !box) return;
    e.stopPropagation();
    const to = ontoNearest(mark.tracks, toPlane(e.clientX - box.left - hold.dx, e.clientY - box.top - hold.dy))?.at;
    if (!to || Math.hypot(to[0] - at[0], to[1] - at[1]) < 0.02) return;
    setUnder(to);
    onMove(mark.key, to, hold.gesture);
  };
  const up = (): void => {
    if (!held.current) return;
    held.current = undefined;
    setUnder(undefined);
    setOver(false);
    onDone();
  };
  const key = (e: KeyboardEvent): void => {
    const on = ontoNearest(mark.tracks, mark.at)?.track;
    setFocused(true);
    if (isArrow(e.key) && on) onMove(mark.key, stepOnTrack(on, mark.at, e.key, e.shiftKey ? 5 : 0.5), (keys.current ||= `mark keys ${++gestures}`));
    else if (e.key === "Delete" || e.key === "Backspace") onFound(mark.key);
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  const released = (): void => {
    if (keys.current === "") return;
    keys.current = "";
    onDone();
  };
  const showing = under !== undefined || focused || over;
  useEffect(() => {
    if (!showing) return;
    onShow(mark.key, true);
    return () => onShow(mark.key, false);
  }, [showing, mark.key, onShow]);
  const lines = text.split("\n");
  const words = showing ? clearPlace({ x, y }, { width: 8.6 * Math.max(...lines.map((l) => l.length)), height: 22 * lines.length }, { ...frame, clearOf, room: 6, reach: [28, 46, 70, 96] }) : undefined;
  return (
    <g className={`grip on-photo${under ? " held" : ""} ${mark.how}`} transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
      <g
        role="slider"
        tabIndex={0}
        aria-label={`${mark.name}, in the photograph`}
        aria-valuenow={Number(at[0].toFixed(1))}
        aria-valuetext={`${text.replace("\n", ", ")}; ${how[mark.how]}`}
        data-mark={mark.key}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={up}
        onKeyDown={key}
        onKeyUp={released}
        onPointerEnter={() => setOver(true)}
        onPointerLeave={() => setOver(false)}
        onFocus={(e) => setFocused(e.currentTarget.matches(":focus-visible"))}
        onBlur={() => {
          setFocused(false);
          released();
        }}
      >
        <circle r={22} className="touch" />
        <circle r={8} className="ring" />
      </g>
      {words && (
        <g className="tape" transform={`translate(${(words.x - x).toFixed(1)} ${(words.y - y).toFixed(1)})`} aria-hidden="true">
          {lines.map((line, i) => <text key={line} y={22 * (i - (lines.length - 1) / 2)} textAnchor="middle" dominantBaseline="middle">{line}</text>)}
        </g>
      )}
    </g>
  );
}
