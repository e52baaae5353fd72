import { arcLengths, pointAt } from "#plane/along.ts";
import { meetingPoint, segmentsMeet } from "#plane/crossing.ts";
import { bounds, type Bounds } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { Half } from "#lines/feather.ts";
import { Boxed } from "./check/near.ts";
import { halfWords } from "./check/words.ts";
import { boxCorners, blockSize, readable, type LabelBlock } from "./labels.ts";
import { toeReachMm } from "./margins.ts";
import { lineMark, outward } from "./marks.ts";
import { edgeLength, edgePoint } from "./net-upper.ts";
import type { NetPanel, NetPlace, PlaceName } from "./panel.ts";
import type { Mark, Xy } from "./piece.ts";
import { Room } from "./room.ts";

type Drawn = Exclude<Mark, { kind: "text" }>;

/** One pull of the pincers: its number in the maker's order and the place of the feather line where it is taken. */
interface Draft {
  readonly number: number;
  readonly name: string;
  readonly place: PlaceName;
  readonly half?: Half;
  /** Running length from the place away from the lateral seat, mm. */
  readonly onMm?: number;
}

/**
 * The order of the drafts: toe, both its corners, back, both seat sides where the heel drops into the waist, both joints (a shoemaking
 * textbook's eight pulls; that the last two are the joints is common practice); then the waists are closed.
 */
const order: readonly Draft[] = [
  { number: 1, name: "toe centre", place: "toe" },
  { number: 2, name: "toe corner, inside", place: "toe", onMm: toeReachMm },
  { number: 3, name: "toe corner, outside", place: "toe", onMm: -toeReachMm },
  { number: 4, name: "back", place: "seat" },
  ...pulls(5, "seat side", "breast"),
  ...pulls(7, "joint", "joint"),
  ...pulls(9, "waist", "waist"),
];

function pulls(first: number, name: string, place: PlaceName): readonly Draft[] {
  return (["medial", "lateral"] as const).map((half, k) => ({ number: first + k, name: `${name}, ${halfWords[half]}`, place, half }));
}

/** The jaws of lasting pincers are about so broad, mm (common practice, no source); so far from a seam their middle stays. */
const jawsMm = 9;
const fromSeamMm = 8;
/** A place at the very end of a feather line may lie beyond it by rounding, mm. */
const endMm = 0.01;
/** Height of the numbers and their distance from any line, mm. */
const heightMm = 3;
const clearMm = 0.8;
/** Least distance between the middles of two numbers, mm: of two digits each. */
const apartMm = 7;
/** Room for a grip and a number beside it at the least, mm. */
const leastMarginMm = 7;

export interface LastingDrafts {
  /** Where the jaws bite: short lines along the feather line, half-way out in the lasting margin. */
  readonly marks: readonly Drawn[];
  /** The number of each beside it. */
  readonly labels: readonly LabelBlock[];
}

/**
 * The grips of the lasting drafts on a piece of the upper, in the order in which they are taken. `outline` is its cutting line, `marks`
 * what is drawn on it already: the numbers keep clear of that. A number that finds no room is left out together with its grip.
 */
export function lastingDrafts(panel: NetPanel, outline: Outline, marks: readonly Drawn[]): LastingDrafts {
  const cut = new Boxed(outline);
  const grips = order.flatMap((draft) => panel.places.flatMap((place) => gripAt(panel, cut, draft, place)));
  const lines = [...marks.flatMap(linesOf), ...grips.map(({ mark }) => mark.line)];
  const room = new Room(outline, lines);
  const placed: LabelBlock[] = [];
  const kept = grips.filter(({ draft, middle, along }) => {
    const block = numberBeside(room, placed, numberText(draft.number), middle, along);
    if (block) placed.push(block);
    return block;
  });
  return { marks: kept.map(({ mark }) => mark), labels: placed };
}

function gripAt(panel: NetPanel, cut: Boxed, draft: Draft, place: NetPlace) {
  const edge = panel.edges[place.edge]!;
  if (edge.role !== "feather" || place.name !== draft.place || (draft.half && place.half !== draft.half)) return [];
  const end = edgeLength(edge);
  const s = place.s + (draft.onMm ?? 0);
  if (end < 2 * fromSeamMm || s < -endMm || s > end + endMm) return [];
  const at = Math.min(end - fromSeamMm, Math.max(fromSeamMm, s));
  const [x, y] = edgePoint(edge, at);
  const [nx, ny] = outward(edge, at);
  const marginMm = cut.along(x, y, nx, ny, 120)?.mm ?? 0;
  if (marginMm < leastMarginMm) return [];
  const middle: Xy = [x + (nx * marginMm) / 2, y + (ny * marginMm) / 2];
  // Outward lies to the right of the edge's way.
  const along: Xy = [-ny, nx];
  const jaw = (way: number): Xy => [middle[0] + (way * along[0] * jawsMm) / 2, middle[1] + (way * along[1] * jawsMm) / 2];
  const line = { xy: Float64Array.of(...jaw(-1), ...jaw(1)) };
  return [{ draft, middle, along, mark: lineMark(`draft ${draft.number}, ${draft.name}`, "place", line) }];
}

/** A 6 and a 9 have a dot, since a piece is held any way up. */
const numberText = (number: number): string => (number === 6 || number === 9 ? `${number}.` : String(number));

/** The number at either end of the grip, a little farther along or to its side where a line is in the way. */
function numberBeside(room: Room, placed: readonly LabelBlock[], text: string, middle: Xy, along: Xy): LabelBlock | undefined {
  const lines = [{ text, heightMm }];
  const [width, height] = blockSize(lines);
  const angleDeg = readable(Math.round((Math.atan2(along[1], along[0]) * 180) / Math.PI));
  for (const aside of [0, 3, -3]) {
    for (const beyond of [1, 2.5, 4, 6]) {
      for (const way of [1, -1]) {
        const far = way * (jawsMm / 2 + clearMm + width / 2 + beyond);
        const at: Xy = [middle[0] + far * along[0] - aside * along[1], middle[1] + far * along[1] + aside * along[0]];
        const box = boxCorners(at, width / 2 + clearMm, height / 2 + clearMm, angleDeg);
        const free = placed.every((b) => (b.at[0] - at[0]) * (b.at[0] - at[0]) + (b.at[1] - at[1]) * (b.at[1] - at[1]) > apartMm * apartMm);
        if (free && !room.meets(box) && room.holds(at[0], at[1])) return { lines, at, angleDeg };
      }
    }
  }
  return undefined;
}

const linesOf = (mark: Drawn): readonly Polyline[] => {
  if (mark.kind === "line") return [mark.line];
  if (mark.kind === "notch") return [{ xy: Float64Array.of(...mark.at, ...mark.toward) }];
  return mark.kind === "arrow" ? [{ xy: Float64Array.of(...mark.from, ...mark.to) }] : [];
};

/** How far inside the line that it marks a prick is made, so that what is sewn over it hides it, mm. */
const hiddenMm = 1.5;
/** Two pricks nearer to each other than this are one: the leather would tear between them, mm. */
const sameMm = 3;

/**
 * Where the awl goes through the card to carry the marks inside it over to the leather: the crossings of fold, stitch and feather lines,
 * the ends of fold lines, and the corners of what is laid on (a strap, a tab), a little inside so that it hides them. None where there
 * is a prick already. Each has the name of the line it carries over. `marks` are those of one piece, without its grips.
 */
export function transferPricks(marks: readonly Drawn[]): readonly Drawn[] {
  const found: { readonly name: string; readonly at: Xy }[] = [];
  const known = marks.filter((m) => m.kind === "prick").map((m) => m.at);
  const add = (name: string, at: Xy): void => {
    if ([...known, ...found.map((f) => f.at)].every(([x, y]) => (x - at[0]) * (x - at[0]) + (y - at[1]) * (y - at[1]) > sameMm * sameMm)) found.push({ name, at });
  };
  const lines = marks.filter((m): m is Extract<Mark, { kind: "line" }> => m.kind === "line");
  const drawn = lines.filter(({ use }) => use === "fold" || use === "stitch" || use === "net");
  drawn.forEach((a, i) => {
    for (const b of drawn.slice(i + 1)) for (const at of crossings(a.line, b.line)) add((a.use === "stitch" ? b : a).name, at);
  });
  for (const { name, use, line } of lines) {
    if (use === "fold") for (const at of endsOf(line)) add(name, at);
    if (use === "place" && !name.startsWith("draft ")) for (const at of cornersInside(line)) add(name, at);
  }
  return found.map(({ name, at }) => ({ kind: "prick", name, at }));
}

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
