import type { Mesh } from "#mesh/mesh.ts";
import type { Landmarks, Last, Point3, SurfaceCurve } from "./last.ts";

/**
 * The last for the other foot: y changes sign in every point, which is exact, and triangles are turned over so that they face outward
 * still. Lengths and girths stay the same numbers. The feather line still starts on the medial side.
 */
export function mirrorLast(last: Last): Last {
  const { feather, landmarks } = last;
  return {
    ...last,
    side: last.side === "right" ? "left" : "right",
    mesh: mirrorMesh(last.mesh),
    feather: { ...feather, points: mirrorPoints(feather.points) },
    landmarks: Object.fromEntries(Object.entries(landmarks).map(([name, p]: [string, Point3]) => [name, [p[0], flip(p[1]), p[2]]])) as unknown as Landmarks,
    centreRidge: mirrorCurve(last.centreRidge),
    backCurve: mirrorCurve(last.backCurve),
    bottomCentre: mirrorCurve(last.bottomCentre),
    findings: last.findings.map((f) => (f.at ? { ...f, at: [f.at[0], flip(f.at[1]), f.at[2]] } : f)),
  };
}

/** 0 stays 0, so that points on the centre plane are the same number on both. */
const flip = (y: number): number => (y === 0 ? 0 : -y);

function mirrorPoints(points: Float64Array): Float64Array {
  const out = points.slice();
  for (let i = 1; i < out.length; i += 3) out[i] = flip(out[i]!);
  return out;
}

function mirrorMesh({ positions, triangles }: Mesh): Mesh {
  const turned = triangles.slice();
  for (let i = 0; i < turned.length; i += 3) {
    turned[i + 1] = triangles[i + 2]!;
    turned[i + 2] = triangles[i + 1]!;
  }
  return { positions: mirrorPoints(positions), triangles: turned };
}

const mirrorCurve = ({ points, arc }: SurfaceCurve): SurfaceCurve => ({ points: mirrorPoints(points), arc });
