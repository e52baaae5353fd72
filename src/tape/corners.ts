import { arcLengths, directionAt, pointAt } from "#plane/along.ts";
import type { Polyline } from "#plane/outline.ts";
import { forward, nearestPlace, pointOn, sharpened, stretch, type Ring, type Xy } from "./ring.ts";

/** The corners of a half, in the order in which they follow each other. */
export const cornerNames = ["toe", "throat", "back", "seat"] as const;
export type CornerName = (typeof cornerNames)[number];

export interface Corner {
  /** Running length on the ring. */
  readonly s: number;
  readonly at: Xy;
  readonly how: "said" | "found";
}

export interface Corners {
  readonly named: Readonly<Record<CornerName, Corner>>;
  /** Whether toe, throat, back, seat follow each other clockwise. */
  readonly clockwise: boolean;
  /** What speaks against it; 0 is a faultless half. */
  readonly doubt: number;
}

interface Candidate extends Corner {
  /** Turn of the outline, radians, positive where it bulges. */
  readonly turn: number;
  readonly name?: CornerName;
}

/** Chords before and after a place whose directions are compared, mm. */
const wideChordMm = [1, 7] as const;
/** A corner turns by this at least (radians; a square toe of 12 mm radius turns by 0.6 over the same chords), and stands off the next, mm. */
const leastTurn = 0.65;
const apartMm = 14;
const mostCandidates = 9;

/**
 * Names the four corners of a half: of all ways to give the names to the sharpest places, the one whose four edges look most like a
 * half's: centre straight, topline and feather line long and both bent most near the front. Undefined where none does.
 */
export function findCorners(ring: Ring, said: Partial<Record<CornerName, Corner>>): Corners | undefined {
  const candidates = candidatesOn(ring, said);
  const edges = new Edges(ring, candidates);
  const n = candidates.length;
  let best: Corners | undefined;
  const look = (order: readonly number[], clockwise: boolean): void => {
    const given = order.map((c) => candidates[c]!);
    if (given.some((c, k) => (c.name ?? cornerNames[k]) !== cornerNames[k])) return;
    const doubt = doubtOf(given, order, edges, clockwise);
    if (doubt >= (best?.doubt ?? mostDoubt)) return;
    const [toe, throat, back, seat] = given as [Candidate, Candidate, Candidate, Candidate];
    best = { named: { toe, throat, back, seat }, clockwise, doubt };
  };
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++)
      for (let c = b + 1; c < n; c++)
        for (let d = c + 1; d < n; d++) {
          const four = [a, b, c, d];
          if (!holdsSaid(four, candidates)) continue;
          for (let turn = 0; turn < 4; turn++) {
            const order = four.map((_, k) => four[(k + turn) % 4]!);
            look(order, false);
            look([order[0]!, order[3]!, order[2]!, order[1]!], true);
          }
        }
  return best;
}

const holdsSaid = (four: readonly number[], candidates: readonly Candidate[]): boolean => candidates.every((c, i) => c.name === undefined || four.includes(i));

/** The sharpest places, none near another, and those the maker placed; in their order round the ring. */
function candidatesOn(ring: Ring, said: Partial<Record<CornerName, Corner>>): readonly Candidate[] {
  const steps = Math.round(ring.lap);
  const turns = Float64Array.from({ length: steps }, (_, k) => turnAt(ring, (k * ring.lap) / steps));
  const placed: Candidate[] = cornerNames.flatMap((name) => (said[name] ? [{ ...said[name], name, turn: turnAt(ring, said[name].s) }] : []));
  const found: Candidate[] = [];
  const order = [...turns.keys()].filter((k) => turns[k]! >= leastTurn).sort((a, b) => turns[b]! - turns[a]!);
  for (const k of order) {
    const s = (k * ring.lap) / steps;
    if ([...placed, ...found].some((c) => Math.min(forward(ring, c.s, s), forward(ring, s, c.s)) < apartMm)) continue;
    const at = sharpened(ring, sharpest(ring, s));
    found.push({ s: nearestPlace(ring, at).s, at, how: "found", turn: turns[k]! });
    if (found.length === mostCandidates) break;
  }
  return [...placed, ...found].sort((a, b) => a.s - b.s);
}

/** The very corner near a place: where chords that begin at it turn most. */
function sharpest(ring: Ring, near: number): number {
  let best = near, most = -Infinity;
  for (let k = -10; k <= 10; k++) {
    const turn = turnAt(ring, near + 0.25 * k, [0, 4]);
    if (turn > most) [best, most] = [near + 0.25 * k, turn];
  }
  return best;
}

function turnAt(ring: Ring, s: number, chordMm: readonly [number, number] = wideChordMm): number {
  const chord = (from: number, to: number): Xy => {
    const [a, b] = [pointOn(ring, s + from), pointOn(ring, s + to)];
    return [b[0] - a[0], b[1] - a[1]];
  };
  const [p, q] = [chord(-chordMm[1], -chordMm[0]), chord(chordMm[0], chordMm[1])];
  return Math.atan2(p[0] * q[1] - p[1] * q[0], p[0] * q[0] + p[1] * q[1]);
}

interface EdgeShape {
  readonly lengthMm: number;
  /** Farthest off the chord. */
  readonly bowMm: number;
  /** Where along it the edge bends, as a share: 0.5 where it bends evenly. */
  readonly bentAt: number;
}

/** The shape of the stretch between any two candidates, looked at once. */
class Edges {
  readonly #known = new Map<string, EdgeShape>();
  readonly #ring: Ring;
  readonly #candidates: readonly Candidate[];
  constructor(ring: Ring, candidates: readonly Candidate[]) {
    this.#ring = ring;
    this.#candidates = candidates;
  }

  /** From one corner to the next in the order given; clockwise the stretch is walked backward. */
  between(from: number, to: number, clockwise: boolean): EdgeShape {
    if (clockwise) {
      const other = this.between(to, from, false);
      return { ...other, bentAt: 1 - other.bentAt };
    }
    const key = `${from} ${to}`;
    const known = this.#known.get(key) ?? shapeOf(stretch(this.#ring, this.#candidates[from]!.s, this.#candidates[to]!.s));
    this.#known.set(key, known);
    return known;
  }
}

function shapeOf(line: Polyline): EdgeShape {
  const arc = arcLengths(line);
  const lengthMm = arc[arc.length - 1]!;
  const [a, b] = [pointAt(line, arc, 0), pointAt(line, arc, lengthMm)];
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  let bowMm = 0, bent = 0, moment = 0;
  const parts = Math.max(4, Math.round(lengthMm / 5));
  const at = (k: number): Xy => directionAt(line, arc, (lengthMm * (k + 0.5)) / parts, 2.5);
  for (let k = 0; k < parts; k++) {
    const p = pointAt(line, arc, (lengthMm * (k + 0.5)) / parts);
    bowMm = Math.max(bowMm, Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / size);
    if (k === 0) continue;
    const [u, v] = [at(k - 1), at(k)];
    const turn = Math.abs(Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]));
    bent += turn;
    moment += (turn * k) / parts;
  }
  return { lengthMm, bowMm, bentAt: bent > 0 ? moment / bent : 0.5 };
}

/** Lengths within which the edges of women's flat pumps of all sizes lie, with room; mm (our own limits, no source). */
const lengths = { centre: [30, 130], topline: [130, 300], back: [30, 95], feather: [190, 400] } as const;
/** Beyond this it is no half, or not one whose corners can be told. */
const mostDoubt = 4;

function doubtOf(given: readonly Candidate[], order: readonly number[], edges: Edges, clockwise: boolean): number {
  const [toe, throat, back, seat] = order as [number, number, number, number];
  const centre = edges.between(toe, throat, clockwise), topline = edges.between(throat, back, clockwise);
  const backEdge = edges.between(back, seat, clockwise), feather = edges.between(seat, toe, clockwise);
  const within = ({ lengthMm }: EdgeShape, [least, most]: readonly [number, number]): boolean => lengthMm >= least && lengthMm <= most;
  if (!within(centre, lengths.centre) || !within(topline, lengths.topline) || !within(backEdge, lengths.back) || !within(feather, lengths.feather)) return Infinity;
  if (topline.lengthMm >= feather.lengthMm) return Infinity;
  // Corners turn by about a right angle; one that the maker placed need not.
  const blunt = given.reduce((sum, c) => sum + (c.how === "said" ? 0 : Math.abs(c.turn - 1.5)), 0);
  const bowed = (15 * centre.bowMm) / centre.lengthMm;
  const front = 4 * (topline.bentAt - 0.5) + 4 * (0.5 - feather.bentAt);
  const like = (backEdge.lengthMm - centre.lengthMm) / 60 + (centre.bowMm - backEdge.bowMm) / 10;
  return 1 + blunt + bowed + front + like;
}
