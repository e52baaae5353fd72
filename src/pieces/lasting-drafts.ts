import type { Outline, Polyline } from "#plane/outline.ts";
import { Boxed } from "./boxed.ts";
import { draftOrder, type Draft } from "./draft-order.ts";
import { boxCorners, blockSize, readable, type LabelBlock } from "./labels.ts";
import { lineMark, outward } from "./marks.ts";
import { edgeLength, edgePoint, type Edge } from "./net-upper.ts";
import type { NetPanel, NetPlace } from "./panel.ts";
import type { Mark, Xy } from "./piece.ts";
import { Room } from "./room.ts";

type Drawn = Exclude<Mark, { kind: "text" }>;

/** A grip is drawn so long, mm, shorter than the jaws are broad, so that it stands free of its neighbours; so far from a seam its middle stays. */
const gripMm = 9;
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
  const grips = draftOrder.flatMap((draft) => panel.places.flatMap((place) => gripAt(panel, cut, draft, place)));
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
  // Where a seam's allowance runs in on the margin, the jaws move away from it until the leather fills them.
  for (let offMm = fromSeamMm; offMm <= 2 * fromSeamMm && 2 * offMm <= end; offMm++) {
    const bite = biteAt(edge, cut, Math.min(end - offMm, Math.max(offMm, s)));
    if (bite) return [{ draft, ...bite, mark: lineMark(`draft ${draft.number}, ${draft.name}`, "place", bite.line, "grip") }];
  }
  return [];
}

/** The jaws half-way out in the margin; none where that is too narrow or does not fill them. */
function biteAt(edge: Edge, cut: Boxed, s: number) {
  const [x, y] = edgePoint(edge, s);
  const [nx, ny] = outward(edge, s);
  const marginMm = cut.along(x, y, nx, ny, 120)?.mm ?? 0;
  if (marginMm < leastMarginMm) return undefined;
  const middle: Xy = [x + (nx * marginMm) / 2, y + (ny * marginMm) / 2];
  // Outward lies to the right of the edge's way.
  const along: Xy = [-ny, nx];
  const jaw = (way: number): Xy => [middle[0] + (way * along[0] * gripMm) / 2, middle[1] + (way * along[1] * gripMm) / 2];
  const ends = [jaw(-1), jaw(1)] as const;
  return ends.every((p) => cut.holds(...p)) ? { middle, along, line: { xy: Float64Array.from(ends.flat()) } } : undefined;
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
        const far = way * (gripMm / 2 + clearMm + width / 2 + beyond);
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
