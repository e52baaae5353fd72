import type { Side } from "#last/last.ts";
import type { Mark, Piece } from "#pieces/piece.ts";
import { area, perimeter } from "#plane/measure.ts";

// Pieces by formula, invented, for testing what is printed: shapes and sizes are only roughly those of a shoe.

type Point = readonly [number, number];

function ringOf(points: readonly Point[], side: Side): { readonly xy: Float64Array } {
  // A left piece is its twin mirrored in the x axis, walked backward so that it stays counter-clockwise.
  const set = side === "right" ? points : [...points].reverse().map(([x, y]): Point => [x, -y]);
  return { xy: Float64Array.from(set.flat()) };
}

const line = (points: readonly Point[], side: Side) => ({ xy: Float64Array.from(points.flatMap(([x, y]) => [x, side === "right" ? y : -y])) });

/** Points along each edge of the horseshoe and round a bottom piece: about 1 mm apart, as on real pieces. */
const fine = { edge: 480, round: 800 } as const;

/** A horseshoe with its toe at the origin and open to −x: the outer edge `grow` mm outside, the inner `grow` mm inside. */
function horseshoe(grow: number): readonly Point[] {
  const outer: Point[] = [], inner: Point[] = [];
  for (let i = 0; i <= fine.edge; i++) {
    const t = -1 + (2 * i) / fine.edge;
    const turn = t * 1.9;
    outer.push([-120 + (120 + grow) * Math.cos(turn) - 30 * t * t, (105 + grow) * Math.sin(turn) * 0.95]);
    inner.push([-125 + (52 - grow) * Math.cos(turn) - 42 * t * t, (48 - grow) * Math.sin(turn) * 0.95]);
  }
  return [...outer, ...inner.reverse()];
}

/** A rounded long shape of a bottom piece. */
function bottom(length: number, width: number): readonly Point[] {
  const out: Point[] = [];
  for (let i = 0; i < fine.round; i++) {
    const a = (i / fine.round) * 2 * Math.PI;
    const x = length / 2 + (length / 2) * Math.cos(a);
    out.push([x, (width / 2) * Math.sin(a) * (0.8 + 0.2 * (x / length))]);
  }
  return out;
}

export function samplePiece(name: string, side: Side, material: Piece["material"], points: readonly Point[], marks: readonly Mark[] = [], net = false): Piece {
  const outline = ringOf(points, side);
  return { name, side, material, perPair: 1, net, outline, marks, directionDeg: 0, areaMm2: area(outline), perimeterMm: perimeter(outline) };
}

function upperMarks(side: Side): readonly Mark[] {
  const m = side === "right" ? 1 : -1;
  const folded: Point[] = horseshoe(0).slice(fine.edge + 1);
  return [
    { kind: "line", name: "fold line of the topline", use: "fold", line: line(folded, side) },
    { kind: "line", name: "feather line", use: "net", line: line(horseshoe(0).slice(0, fine.edge + 1), side) },
    { kind: "line", name: "centre line", use: "centre", line: line([[-73, 0], [0, 0]], side) },
    { kind: "notch", name: "toe centre", at: [18, 0], toward: [15, 0] },
    { kind: "notch", name: "throat", at: [-79, 0], toward: [-76, 0] },
    { kind: "prick", name: "back point, medial", at: [-200, 80 * m] },
    { kind: "arrow", name: "least stretch", from: [-60, 45 * m], to: [-20, 45 * m] },
    { kind: "text", text: "inside", at: [-150, 80 * m], heightMm: 3.5, angleDeg: 0 },
  ];
}

/** Two uppers, two linings and the bottom pieces of both shoes. */
export function samplePieces(): readonly Piece[] {
  return (["right", "left"] as const).flatMap((side) => [
    samplePiece("upper, net", side, "card", horseshoe(0), [], true),
    samplePiece("upper", side, "upper leather", horseshoe(18), upperMarks(side)),
    samplePiece("lining", side, "lining leather", horseshoe(12)),
    samplePiece("insole", side, "insole board", bottom(246, 76)),
    samplePiece("outsole", side, "sole leather", bottom(252, 80)),
    samplePiece("sock", side, "sock leather", bottom(238, 68)),
  ]);
}

/** An upright rectangle with a point every `step` mm, for tests of borders. */
export function sampleRectangle(name: string, width: number, height: number, step = 10): Piece {
  const points: Point[] = [];
  const side = (from: Point, to: Point) => {
    const parts = Math.max(1, Math.round(Math.hypot(to[0] - from[0], to[1] - from[1]) / step));
    for (let k = 0; k < parts; k++) points.push([from[0] + ((to[0] - from[0]) * k) / parts, from[1] + ((to[1] - from[1]) * k) / parts]);
  };
  side([0, 0], [width, 0]);
  side([width, 0], [width, height]);
  side([width, height], [0, height]);
  side([0, height], [0, 0]);
  return samplePiece(name, "right", "card", points);
}
