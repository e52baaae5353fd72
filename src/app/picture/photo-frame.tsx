import { useCallback, useEffect, useMemo, useRef, useState, type ReactElement } from "react";
import type { Bounds } from "#plane/measure.ts";
import type { FlatPhoto } from "../photo-talk.ts";
import { fitted, shifted, toFrame, toPlane, type PhotoPlace } from "../state/photo-place.ts";
import { ringHalf, type Place } from "./clear-place.ts";
import { alongLines, PinnedNotes } from "./margin-words.tsx";
import { PhotoGrip, type MarkMoves, type PhotoMark } from "./photo-mark.tsx";
import { usePhotoMoves } from "./photo-moves.ts";
import { useSize } from "./use-size.ts";

/** What is drawn over a photograph, on the card's plane, mm. */
export interface PhotoDrawing {
  /** x0 y0 x1 y1 …; `slight` ones are no part of the pattern. */
  readonly lines: readonly { readonly key: string; readonly xy: Float64Array; readonly closed: boolean; readonly use: "edge" | "slight" | "slit" }[];
  readonly words: readonly { readonly key: string; readonly text: string; readonly at: readonly [number, number]; readonly big?: true }[];
  readonly marks: readonly PhotoMark[];
  /** What to bring into view first; the whole photograph when left out. */
  readonly show?: Bounds;
}

interface PhotoFrameProps {
  readonly name: string;
  readonly photo: FlatPhoto;
  readonly drawing: PhotoDrawing;
  readonly moves: MarkMoves;
}

/** One flattened photograph with what was found drawn over it. */
export function PhotoFrame({ name, photo, drawing, moves }: PhotoFrameProps): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useSize(frame);
  const box = useMemo(() => boxOf(photo), [photo]);
  const [chosen, choose] = useState<PhotoPlace>();
  const [lit, light] = useState<string>();
  const onShow = useCallback((key: string, shown: boolean) => light((now) => (shown ? key : now === key ? undefined : now)), []);
  // Where the photograph fills the frame no empty ground is shown beside it.
  const place = chosen ?? shifted(fitted(drawing.show ?? box, size), 0, 0, size, box);
  const act = usePhotoMoves(place, size, box, choose);
  const image = useMemo(() => new ImageData(photo.rgba, photo.width, photo.height), [photo]);
  const [bitmap, setBitmap] = useState<ImageBitmap>();
  useEffect(() => {
    let wanted = true;
    void createImageBitmap(image).then((made) => wanted && setBitmap(made));
    return () => void (wanted = false);
  }, [image]);
  useEffect(() => {
    if (canvas.current && bitmap) paint(canvas.current, size, bitmap, photo, place);
  }, [size, bitmap, photo, place]);
  useEffect(() => {
    // React listens to the wheel passively, and the page would scroll beside.
    const element = frame.current;
    const wheel = (e: WheelEvent): void => {
      e.preventDefault();
      const at = element!.getBoundingClientRect();
      act.wheel(Math.exp(-e.deltaY * 0.0015), [e.clientX - at.left, e.clientY - at.top]);
    };
    element?.addEventListener("wheel", wheel, { passive: false });
    return () => element?.removeEventListener("wheel", wheel);
  }, [act]);

  const at = (p: readonly [number, number]): readonly [number, number] => toFrame(place, size, p[0], p[1]);
  const points = (xy: Float64Array): Place[] => Array.from({ length: xy.length / 2 }, (_, i) => {
    const [x, y] = at([xy[2 * i]!, xy[2 * i + 1]!]);
    return { x, y };
  });
  const drawn = drawing.lines.map((l) => ({ ...l, px: points(l.xy) }));
  const halfNames = drawing.words.filter((w) => w.big).map((w) => ({ ...w, x: at(w.at)[0], y: at(w.at)[1] }));
  const clearOf = [...halfNames.flatMap(({ x, y }) => [-40, -20, 0, 20, 40].map((dx) => ({ x: x + dx, y }))), ...alongLines(drawn.filter((l) => l.use === "edge").map((l) => l.px), 12), ...drawing.marks.map((m) => ({ x: at(m.at)[0], y: at(m.at)[1], half: ringHalf }))];
  const inside = (p: readonly [number, number]): boolean => p[0] > -20 && p[1] > -20 && p[0] < size.width + 20 && p[1] < size.height + 20;
  const names = [...drawing.marks.map((m) => ({ key: m.key, text: m.name.split(",")[0]!, at: m.at })), ...drawing.words.filter((w) => !w.big)].filter((n) => n.key !== lit && inside(at(n.at)));
  return (
    <div className="photo-in-frame">
      <div
        className="frame photo-frame"
        ref={frame}
        tabIndex={0}
        role="group"
        aria-label={`${name}, laid flat. Arrow keys shift it, plus and minus bring it nearer or take it farther, nought shows all of it.`}
        onPointerDown={act.down}
        onPointerMove={act.move}
        onPointerUp={act.up}
        onPointerCancel={act.up}
        onKeyDown={act.key}
      >
        <canvas ref={canvas} aria-hidden="true" />
        <svg className="overlay over-photo" width={size.width} height={size.height}>
          {drawn.map((l) => <path key={l.key} className={`halo ${l.use}`} d={pathOf(l.px, l.closed)} />)}
          {drawn.map((l) => <path key={l.key} className={`traced ${l.use}`} d={pathOf(l.px, l.closed)} />)}
          {halfNames.map((w) => <text key={w.key} className="half-name" x={w.x} y={w.y} textAnchor="middle" dominantBaseline="middle">{w.text}</text>)}
          <PinnedNotes items={names.map((n) => ({ key: n.key, text: n.text, x: at(n.at)[0], y: at(n.at)[1] }))} width={size.width} height={size.height} clearOf={clearOf} />
          {drawing.marks.map((m) => (
            <PhotoGrip key={m.key} mark={m} toFrame={at} toPlane={(x, y) => toPlane(place, size, x, y)} origin={() => frame.current?.getBoundingClientRect()} frame={size} clearOf={clearOf} onShow={onShow} {...moves} />
          ))}
        </svg>
      </div>
      <p className="under">
        <button type="button" className="word" onClick={act.nearer}>nearer</button>
        <button type="button" className="word" onClick={act.farther}>farther</button>
        <button type="button" className="word" onClick={() => choose(undefined)}>{drawing.show ? "what was found" : "the whole photograph"}</button>
        {drawing.show && <button type="button" className="word" onClick={() => choose(fitted(box, size))}>the whole photograph</button>}
      </p>
    </div>
  );
}

const boxOf = ({ minX, maxY, width, height, pxPerMm }: FlatPhoto): Bounds => ({ minX, maxY, maxX: minX + width / pxPerMm, minY: maxY - height / pxPerMm });

const pathOf = (px: readonly Place[], closed: boolean): string => `M${px.map((p) => `${p.x.toFixed(1)} ${p.y.toFixed(1)}`).join("L")}${closed ? "Z" : ""}`;

function paint(canvas: HTMLCanvasElement, size: { readonly width: number; readonly height: number }, bitmap: ImageBitmap, photo: FlatPhoto, place: PhotoPlace): void {
  const dots = Math.min(2, globalThis.devicePixelRatio || 1);
  canvas.width = size.width * dots;
  canvas.height = size.height * dots;
  const pen = canvas.getContext("2d");
  if (!pen) return;
  const [left, top] = toFrame(place, size, photo.minX, photo.maxY);
  const scale = place.pxPerMm / photo.pxPerMm;
  pen.imageSmoothingQuality = "high";
  pen.drawImage(bitmap, left * dots, top * dots, photo.width * scale * dots, photo.height * scale * dots);
}
