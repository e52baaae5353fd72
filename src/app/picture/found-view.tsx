import { useEffect, useMemo, useState, type PointerEvent, type ReactElement } from "react";
import type { Point3 } from "#last/last.ts";
import type { LandmarkName } from "#last/said.ts";
import { askedSpots } from "../state/asked-spots.ts";
import { toFile } from "../state/file-place.ts";
import { pointKeys, pointNames } from "../state/point-names.ts";
import { addPull, dropPull, movePull, setPoint } from "../state/scan-edits.ts";
import type { WorkInHand } from "../state/work-in-hand.ts";
import type { SeenLast } from "../state/seen-last.ts";
import type { Hand } from "../state/hand.ts";
import type { ApartMap } from "./apart-map.ts";
import { squareEyes, type EyeName } from "./eyes.ts";
import { pulledLine } from "./feather-preview.ts";
import { foundLines, readyPlaces } from "./found-lines.ts";
import { onMap, type Ink } from "./ink.ts";
import { LevelNumbers } from "./level-numbers.tsx";
import { MarginWords } from "./margin-words.tsx";
import { nearestIndex } from "./nearest-index.ts";
import { SurfaceGrip } from "./surface-grip.tsx";
import { useTurning } from "./turning.ts";
import { useScene } from "./use-scene.ts";

interface FoundViewProps {
  readonly work: WorkInHand;
  readonly seen: SeenLast;
  readonly ink: Ink;
  /** How far the other last of the pair differs, when that is to be shown. */
  readonly map: ApartMap | undefined;
  /** Findings that speak of a place. */
  readonly notes: readonly { readonly key: string; readonly text: string; readonly at: readonly number[] }[];
  readonly from: { readonly name: EyeName };
  readonly hand: Hand;
  /** What the column or the picture points at: "pull 0", "point toePoint". */
  readonly lit: string | undefined;
  readonly onLit: (spot: string | undefined) => void;
}

/** Px on either side of the last in which the names of its points stand. */
const roomForNames = 128;

/** The last as it was found: its lines, its points by name, and what is doubtful, all of which the maker can put right. */
export function FoundView({ work, seen, ink, map, notes, from, hand, lit, onLit }: FoundViewProps): ReactElement {
  const { last } = seen;
  const eye = useMemo(() => ({ ...squareEyes[from.name] }), [from]);
  const { canvas, frame, size, scene, none } = useScene(last, eye, roomForNames);
  const [drag, setDrag] = useState<{ readonly spot: string; readonly at: Point3 }>();
  const [hover, setHover] = useState<Point3>();
  const { job } = work;
  const asked = useMemo(() => askedSpots(job, seen), [job, seen]);
  const grasp: Hand = last.source === "scan" ? hand : "last";

  const pulling = drag && !drag.spot.startsWith("point") ? drag.at : undefined;
  const course = useMemo(() => {
    if (!scene) return last.feather.points;
    const through = pulling ? [...asked.newPulls, pulling] : asked.newPulls;
    return pulledLine(last.feather.points, through, (p) => scene.onto(p));
  }, [scene, last, asked, pulling]);

  useEffect(() => scene?.paintLast(ink.wood, map?.colours), [scene, last.mesh, ink.wood, map]);
  useEffect(() => {
    if (!scene) return;
    const thin = map ? [{ key: "levels", points: map.lines, colour: onMap.ink, widthPx: 1 }] : [];
    scene.setLines(foundLines(scene, { feather: last.feather, points: course, centres: [last.centreRidge, last.backCurve], ink, mapped: map !== undefined }), thin);
  }, [scene, last, course, map, ink]);

  const turn = useTurning(scene);
  const origin = (): DOMRect | undefined => frame.current?.getBoundingClientRect();
  const seek = (e: PointerEvent): void => {
    const box = origin();
    if (!scene || !box || grasp !== "feather" || e.pointerType !== "mouse" || turn.turning() || drag) return;
    const p = scene.pick(e.clientX - box.left, e.clientY - box.top);
    const i = p && nearestIndex(course, p);
    const near = i !== undefined && Math.hypot(course[3 * i]! - p![0], course[3 * i + 1]! - p![1], course[3 * i + 2]! - p![2]) < 12 * scene.mmPerPx;
    setHover(near ? [course[3 * i]!, course[3 * i + 1]!, course[3 * i + 2]!] : undefined);
  };

  const place = (p: readonly number[]) => scene!.project(p);
  const labels = !scene || size.width === 0 ? [] : [
    ...pointKeys.map((key) => ({ key, text: pointNames[key], at: asked.points[key] })),
    ...notes,
    ...(map ? [{ key: "worst", text: map.worst.text, at: map.worst.at }] : []),
  ].flatMap(({ key, text, at }) => {
    const { x, y, seen } = place(at);
    return seen ? [{ key, x, y, text }] : [];
  });

  const grip = (spot: string, name: string, at: Point3, more: { readonly mark?: string; readonly ready?: boolean; readonly onDelete?: () => void; readonly onPut: (at: Point3) => void }) => {
    const here = drag?.spot === spot ? drag.at : at;
    const { x, y, seen } = place(here);
    if (more.ready && !seen) return null;
    const { onPut, ...rest } = more;
    return (
      <SurfaceGrip key={spot} {...rest} scene={scene!} at={here} x={x} y={y} hidden={!seen && drag?.spot !== spot} name={name} spot={spot} lit={lit === spot} origin={origin}
        onDrag={(p) => setDrag({ spot, at: p })}
        onDrop={(p) => {
          setDrag(undefined);
          setHover(undefined);
          if (p) onPut(p);
        }}
        onLit={(on) => onLit(on ? spot : undefined)} />
    );
  };
  const put = (edit: (at: Point3) => typeof job, what: string) => (at: Point3) => work.change(edit(toFile(last.placement, at)), what);
  const ready = (spot: string, at: Point3) => grip(spot, "the feather line", at, { ready: true, onPut: put((f) => addPull(job, f), "pulling the feather line") });
  const point = (key: LandmarkName) => grip(`point ${key}`, pointNames[key], asked.points[key], {
    onPut: put((f) => setPoint(job, key, f), `placing the ${pointNames[key]}`),
    ...(asked.placed.has(key) ? { onDelete: () => work.change(setPoint(job, key, undefined), `finding the ${pointNames[key]} again`) } : {}),
  });

  return (
    <section className="view last" aria-label="The last">
      <div
        className="frame"
        ref={frame}
        tabIndex={0}
        role="group"
        aria-label={`The ${last.side} last. Arrow keys turn it, plus and minus bring it nearer or take it farther.`}
        onKeyDown={turn.key}
        onPointerDown={turn.down}
        onPointerMove={(e) => {
          turn.move(e);
          seek(e);
        }}
        onWheel={(e) => scene?.zoom(Math.exp(-e.deltaY * 0.0015))}
        onPointerUp={turn.up}
        onPointerCancel={turn.up}
        onPointerLeave={() => !drag && setHover(undefined)}
      >
        <canvas ref={canvas} aria-hidden="true" />
        {none && <p className="nothing">This browser cannot draw the last in three dimensions. The numbers still work.</p>}
        <svg className="overlay" width={size.width} height={size.height} role="group" aria-label="Places on the last">
          {scene && map && <LevelNumbers numbers={map.numbers.map((n) => ({ ...place(n.at), key: n.key, text: n.text })).filter((n) => n.seen)} />}
          {scene && <MarginWords items={labels} width={size.width} height={size.height} body={scene.span()} />}
          {scene && grasp === "feather" && (
            <>
              {readyPlaces(course, asked.pulls).map((p, i) => ready(`ready ${i}`, p))}
              {hover && ready("hover", hover)}
              {asked.pulls.map((p, i) => grip(`pull ${i}`, `Place ${i + 1} of yours on the feather line`, p, {
                mark: `${i + 1}`,
                onPut: put((f) => movePull(job, i, f), "pulling the feather line"),
                onDelete: () => work.change(dropPull(job, i), `letting go of place ${i + 1} on the feather line`),
              }))}
            </>
          )}
          {scene && grasp === "points" && pointKeys.map(point)}
        </svg>
      </div>
    </section>
  );
}
