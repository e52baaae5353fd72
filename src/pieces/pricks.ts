import { arcLengths, pointAt } from "#plane/along.ts";
import { meetingPoint, segmentsMeet } from "#plane/crossing.ts";
import { bounds, type Bounds } from "#plane/measure.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Draft } from "./draft.ts";
import type { Mark, Xy } from "./piece.ts";

type Drawn = Exclude<Mark, { kind: "text" }>;

/** How far inside the line that it marks a prick is made, so that what is sewn over it hides it, mm. */
const hiddenMm = 1.5;
/** Two pricks nearer to each other than this are one: the leather would tear between them, mm. */
const sameMm = 3;

/**
 * Where the awl goes through the card to carry the marks inside it over to the leather: the crossings of fold, stitch and feather lines,
 * the ends of fold lines, and the corners of what is laid on (a strap, a tab), a little inside so that it hides them. None where there
 * is a prick already, and for no line with `as`. Each has the name of the line it carries over. `marks` are all those of one piece.
 */
export function transferPricks(marks: readonly Drawn[]): readonly Drawn[] {
  const found: { readonly name: string; readonly at: Xy }[] = [];
  const known = marks.filter((m) => m.kind === "prick").map((m) => m.at);
  const add = (name: string, at: Xy): void => {
    if ([...known, ...found.map((f) => f.at)].every(([x, y]) => (x - at[0]) * (x - at[0]) + (y - at[1]) * (y - at[1]) > sameMm * sameMm)) found.push({ name, at });
  };
  const lines = marks.filter((m): m is Extract<Mark, { kind: "line" }> => m.kind === "line" && m.as === undefined);
  const drawn = lines.filter(({ use }) => use === "fold" || use === "stitch" || use === "net");
  drawn.forEach((a, i) => {
    for (const b of drawn.slice(i + 1)) for (const at of crossings(a.line, b.line)) add((a.use === "stitch" ? b : a).name, at);
  });
  for (const { name, use, line } of lines) {
    if (use === "fold") for (const at of endsOf(line)) add(name, at);
    if (use === "place") for (const at of cornersInside(line)) add(name, at);
  }
  return found.map(({ name, at }) => ({ kind: "prick", name, at }));
}

/** A cut piece with its pricks, once all that is drawn on it stands; a net card is held against the last, and needs none. */
export const pricked = (draft: Draft): Draft => (draft.net ? draft : { ...draft, marks: [...draft.marks, ...transferPricks(draft.marks)] });

/** Both ends of a line, a little inside: an awl finds no hold on the cutting line itself. */
function endsOf(line: Polyline): readonly Xy[] {
  const arc = arcLengths(line);
  return [pointAt(line, arc, hiddenMm), pointAt(line, arc, arc[arc.length - 1]! - hiddenMm)];
}

/** Points where two lines cross; runs of segments whose boxes lie apart are passed over. */
function crossings(a: Polyline, b: Polyline): readonly Xy[] {
  const out: Xy[] = [];
  const runs = runsOf(b);
  for (const p of runsOf(a)) {
    for (const q of runs) {
      if (p.maxX < q.minX || q.maxX < p.minX || p.maxY < q.minY || q.maxY < p.minY) continue;
      for (let i = p.from; i < p.to; i += 2) {
        for (let j = q.from; j < q.to; j += 2) {
          const ends = [a.xy[i]!, a.xy[i + 1]!, a.xy[i + 2]!, a.xy[i + 3]!, b.xy[j]!, b.xy[j + 1]!, b.xy[j + 2]!, b.xy[j + 3]!] as const;
          if (segmentsMeet(...ends)) out.push(meetingPoint(...ends));
        }
      }
    }
  }
  return out;
}

/** A line in runs of 16 segments with their boxes: numbers of its coordinates. */
function runsOf({ xy }: Polyline) {
  const runs: (Bounds & { readonly from: number; readonly to: number })[] = [];
  for (let from = 0; from + 3 < xy.length; from += 32) {
    const to = Math.min(from + 32, xy.length - 2);
    runs.push({ from, to, ...bounds({ xy: xy.subarray(from, to + 2) }) });
  }
  return runs;
}

/** The ends and sharp corners of a line, drawn in toward its middle. */
function cornersInside(line: Polyline): readonly Xy[] {
  const { xy } = line;
  const n = xy.length / 2;
  const middle: Xy = [0, 1].map((c) => xy.reduce((sum, v, i) => (i % 2 === c ? sum + v : sum), 0) / n) as unknown as Xy;
  const corner = (i: number): boolean => {
    if (i === 0 || i === n - 1) return true;
    const [px, py, qx, qy] = [xy[2 * i]! - xy[2 * i - 2]!, xy[2 * i + 1]! - xy[2 * i - 1]!, xy[2 * i + 2]! - xy[2 * i]!, xy[2 * i + 3]! - xy[2 * i + 1]!];
    return px * qx + py * qy < 0.8 * Math.sqrt((px * px + py * py) * (qx * qx + qy * qy));
  };
  return Array.from({ length: n }, (_, i) => i).filter(corner).map((i) => {
    const [x, y] = [xy[2 * i]!, xy[2 * i + 1]!];
    const far = Math.sqrt((middle[0] - x) * (middle[0] - x) + (middle[1] - y) * (middle[1] - y));
    return pointAt({ xy: Float64Array.of(x, y, ...middle) }, Float64Array.of(0, far), Math.min(hiddenMm, far));
  });
}
