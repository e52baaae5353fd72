import type { Outline } from "#plane/outline.ts";
import type { TapedHalf, TapedPoint, TapedShell } from "#tape/taped-shell.ts";
import type { TapeMark, TapePlace, TapeSaid } from "#tape/said.ts";
import { insidePoint } from "../state/inside-point.ts";
import { mm } from "../state/numbers.ts";
import { betweenOnTrack, trackOf, type Track } from "../state/on-outline.ts";
import { boxRound } from "../state/photo-place.ts";
import { halfNames, markNames, markOf } from "../state/tape-words.ts";
import type { PhotoDrawing } from "./photo-frame.tsx";
import type { PhotoMark } from "./photo-mark.tsx";

type Xy = readonly [number, number];
type Line = PhotoDrawing["lines"][number];

/** Round what is shown first, mm. */
const margin = 14;

/** What was traced in one photograph, with the halves and the bottom of the pattern named and their marks to be taken hold of. */
export function tapeDrawing(photo: string, outlines: readonly Outline[], tape: TapedShell | undefined, said: TapeSaid["marks"]): PhotoDrawing {
  const tracks = outlines.map(trackOf);
  const halves = [tape?.medial, tape?.lateral].filter((h): h is TapedHalf => h?.photo === photo && h.outline < outlines.length);
  const bottom = tape?.bottom?.photo === photo && tape.bottom.outline < outlines.length ? tape.bottom : undefined;
  const used = new Set([...halves.map((h) => h.outline), ...(bottom ? [bottom.outline] : [])]);
  const lines = outlines.map((o, i): Line => ({ key: `outline ${i}`, xy: o.xy, closed: true, use: used.has(i) || !tape ? "edge" : "slight" }));
  const slits = halves.flatMap((h) => h.slits.map((s, i): Line => ({ key: `${h.half} slit ${i}`, xy: Float64Array.of(...s.from, ...s.tip, ...s.to), closed: false, use: "slit" })));
  const middle = (i: number): Xy => {
    const { x, y } = insidePoint(outlines[i]!.xy);
    return [x, y];
  };
  const names = [...halves.map((h) => ({ key: h.half, text: halfNames[h.half], at: middle(h.outline), big: true as const })), ...(bottom ? [{ key: "bottom", text: "bottom", at: middle(bottom.outline), big: true as const }] : [])];
  const found = outlines.map((_, i) => i).filter((i) => used.has(i) || !tape);
  // The pattern follows what the maker asks for; the mark is there at once.
  const asked = (m: PhotoMark): PhotoMark => {
    const place = said?.[m.key as TapeMark];
    return place?.photo === photo ? { ...m, at: place.at, how: "said" } : m;
  };
  const show = found.length > 0 ? boxRound(found.map((i) => outlines[i]!), margin) : undefined;
  return {
    lines: [...lines, ...slits],
    words: names,
    marks: tape ? [...halves.flatMap((h) => halfMarks(h, tracks[h.outline]!, tracks)), ...(bottom ? bottomMarks(bottom.points, tracks) : [])].map(asked) : loneMarks(photo, said, tracks),
    ...(show ? { show } : {}),
  };
}

function halfMarks({ half, points }: TapedHalf, track: Track, tracks: readonly Track[]): readonly PhotoMark[] {
  const p = points;
  const reads: Readonly<Record<keyof typeof p, (at: Xy) => string>> = {
    toe: (at) => `toe, ${mm(straight(at, p.throat.at))} before the throat\nand ${mm(straight(at, p.joint.at))} before the joint, straight`,
    throat: (at) => `throat, ${mm(straight(at, p.toe.at))} behind the toe\ntopline ${mm(betweenOnTrack(track, at, p.back.at))} to the back`,
    back: (at) => `back, ${mm(betweenOnTrack(track, at, p.seat.at))} high\ntopline ${mm(betweenOnTrack(track, at, p.throat.at))} to the throat`,
    seat: (at) => `seat, ${mm(betweenOnTrack(track, at, p.back.at))} under the back\n${mm(straight(at, p.joint.at))} behind the joint, straight`,
    joint: (at) => `joint, ${mm(straight(at, p.toe.at))} behind the toe\n${mm(straight(at, p.seat.at))} before the seat, straight`,
  };
  return (Object.keys(p) as (keyof typeof p)[]).map((name) => mark(markOf(name, half), p[name], tracks, reads[name]));
}

function bottomMarks(p: NonNullable<TapedShell["bottom"]>["points"], tracks: readonly Track[]): readonly PhotoMark[] {
  const joints = (at: Xy, other: TapedPoint): string => `joint, ${mm(straight(at, p.seat.at))} before the seat\nball ${mm(straight(at, other.at))} wide`;
  return [
    mark("bottomToe", p.toe, tracks, (at) => `toe, ${mm(straight(at, p.seat.at))} before the seat`),
    mark("bottomSeat", p.seat, tracks, (at) => `seat, ${mm(straight(at, p.toe.at))} behind the toe`),
    mark("bottomJointMedial", p.jointMedial, tracks, (at) => joints(at, p.jointLateral)),
    mark("bottomJointLateral", p.jointLateral, tracks, (at) => joints(at, p.jointMedial)),
  ];
}

/** Marks placed by hand in a photograph of which no pattern could be made yet. */
function loneMarks(photo: string, said: TapeSaid["marks"], tracks: readonly Track[]): readonly PhotoMark[] {
  const here = (Object.entries(said ?? {}) as [TapeMark, TapePlace][]).filter(([, place]) => place.photo === photo);
  return here.map(([key, { at }]) => mark(key, { at, how: "said" }, tracks, () => markNames[key]));
}

const mark = (key: TapeMark, point: TapedPoint, tracks: readonly Track[], reads: (at: Xy) => string): PhotoMark => ({ key, name: markNames[key], at: point.at, how: point.how, tracks, reads });

const straight = (a: Xy, b: Xy): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
