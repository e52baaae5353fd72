import type { Finding } from "#base/findings.ts";
import type { Point3, SurfaceCurve } from "#last/last.ts";
import type { HeightMark, Lines } from "#lines/lines.ts";
import type { Shell } from "#shell/shell.ts";
import type { Lasted } from "./lasted.ts";
import type { CutUpper } from "./upper.ts";

// A left upper is reckoned as the right one it mirrors, and what comes out is mirrored back: so a pair comes out alike to the last bit.

/** The upper for the other foot: y changes its sign on the last and on the flat, and triangles are turned over. */
export function mirroredUpper({ over, onLast, triangles, flat, source, sewn }: CutUpper): CutUpper {
  return { over: mirroredShell(over), onLast: mirroredShell(onLast), triangles: turned(triangles), flat: flipped(flat, 2), source, sewn };
}

export const mirroredLines = (lines: Lines): Lines => ({
  ...lines,
  toplineMedial: mirroredCurve(lines.toplineMedial),
  toplineLateral: mirroredCurve(lines.toplineLateral),
  centre: mirroredCurve(lines.centre),
  back: mirroredCurve(lines.back),
  quarterHeights: { medial: lines.quarterHeights.medial.map(mirroredMark), lateral: lines.quarterHeights.lateral.map(mirroredMark) },
  lowestMedial: mirroredMark(lines.lowestMedial),
  lowestLateral: mirroredMark(lines.lowestLateral),
  findings: lines.findings.map(mirroredFinding),
});

export const mirroredLasted = (lasted: Lasted): Lasted => ({
  ...lasted,
  triangles: turned(lasted.triangles),
  positions: flipped(lasted.positions, 3),
  drafts: lasted.drafts.map((draft) => ({ ...draft, at: mirroredPoint(draft.at) })),
  troubles: lasted.troubles.map((trouble) => ({ ...trouble, at: mirroredPoint(trouble.at) })),
  frames: lasted.frames.map(({ what, positions }) => ({ what, positions: flipped(positions, 3) })),
  findings: lasted.findings.map(mirroredFinding),
});

/** 0 stays 0, so that points on the centre plane are the same number on both. */
const flip = (y: number): number => (y === 0 ? 0 : -y);
const mirroredPoint = ([x, y, z]: Point3): Point3 => [x, flip(y), z];

/** Places of `width` numbers each, y the second. */
function flipped<A extends Float64Array | Float32Array>(places: A, width: 2 | 3): A {
  const out = places.slice() as A;
  for (let i = 1; i < out.length; i += width) out[i] = flip(out[i]!);
  return out;
}

function turned(triangles: Uint32Array): Uint32Array {
  const out = triangles.slice();
  for (let i = 0; i < out.length; i += 3) {
    out[i + 1] = triangles[i + 2]!;
    out[i + 2] = triangles[i + 1]!;
  }
  return out;
}

const mirroredShell = ({ mesh, edges }: Shell): Shell => ({ mesh: { positions: flipped(mesh.positions, 3), triangles: turned(mesh.triangles) }, edges });
const mirroredCurve = ({ points, arc }: SurfaceCurve): SurfaceCurve => ({ points: flipped(points, 3), arc });
const mirroredMark = (mark: HeightMark): HeightMark => ({ ...mark, foot: mirroredPoint(mark.foot), at: mirroredPoint(mark.at) });
const mirroredFinding = (found: Finding): Finding => (found.at ? ({ ...found, at: mirroredPoint(found.at) } as Finding) : found);
