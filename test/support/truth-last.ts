import type { Last, Landmarks, Measures, Side } from "#last/last.ts";
import type { LastMeasurements } from "#last/measured.ts";
import { curveOf, pointOn } from "#last/surface-curve.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { sharedBytes, sharedJson } from "./shared.ts";

type P3 = [number, number, number];

/** What the truth files of the synthetic lasts hold, as far as tests use it. */
export interface Truth {
  readonly side: Side;
  readonly values: Omit<Measures, "vampPointFromToe"> & { readonly area: number; readonly volume: number };
  readonly points: Omit<Landmarks, "counterPoint" | "treadPoint"> & Record<string, P3>;
  readonly vampPointArcLength: number;
  readonly feather: { readonly points: P3[]; readonly toeIndex: number };
  readonly centreRidge: { readonly arcLength: number[]; readonly points: P3[] };
  readonly backCurve: { readonly arcLength: number[]; readonly points: P3[] };
  readonly bottomCentre: { readonly arcLength: number[]; readonly points: P3[] };
  readonly combHeight: number;
  readonly toeHeights: Readonly<Record<string, number>>;
  readonly wallHeights: { readonly x: number; readonly medial: Wall; readonly lateral: Wall }[];
}
interface Wall {
  readonly surfaceLength: number;
  readonly height: number;
  readonly overhang: number;
  readonly ends: string;
}

export const lastNames = ["last_eu36_round", "last_eu37_almond", "last_eu38_round_heel20", "last_eu39_square", "last_eu41_pointed"] as const;

export const truthOf = (name: string): Truth => sharedJson("lasts", `${name}.truth.json`) as Truth;

/** The numbers that a last is made from, out of its measures. */
export function askedFor(values: Truth["values"] | Measures, { side, toe }: Pick<LastMeasurements, "side" | "toe">): LastMeasurements {
  return {
    side,
    toe,
    stickLengthMm: values.stickLength,
    jointGirthMm: values.jointGirth,
    waistGirthMm: values.waistGirth,
    instepGirthMm: values.instepGirth,
    heelGirthMm: values.heelGirth,
    ballWidthMm: values.ballWidth,
    seatWidthMm: values.seatWidth,
    heelHeightMm: values.heelHeight,
    toeSpringMm: values.toeSpring,
  };
}

/** A last put together from the truth itself, so that the stages behind it are tested without how it is found in a scan. */
export function truthLast(name: string): Last {
  const truth = truthOf(name);
  const feather = truth.feather.points;
  const backCurve = curveOf(truth.backCurve.points.flat());
  // The truth files do not name these two.
  const counterPoint = pointOn(backCurve, truth.values.lastLength / 5);
  const treadPoint = truth.bottomCentre.points.filter(([x]) => x > truth.points.toePoint[0] / 2).reduce((low, p) => (p[2] < low[2] ? p : low));
  return {
    name,
    source: "scan",
    side: truth.side,
    mesh: joined(readScan(`${name}.stl`, sharedBytes("lasts", `${name}.stl`)).mesh),
    placement: { unit: "mm", unitPerMm: 1, rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translationMm: [0, 0, 0] },
    feather: { points: Float64Array.from(feather.flat()), toeIndex: truth.feather.toeIndex, confidence: new Float64Array(feather.length).fill(1) },
    landmarks: { ...truth.points, counterPoint, treadPoint },
    placed: [],
    measures: { ...truth.values, vampPointFromToe: truth.vampPointArcLength },
    centreRidge: curveOf(truth.centreRidge.points.flat()),
    backCurve,
    bottomCentre: curveOf(truth.bottomCentre.points.flat()),
    findings: [],
  };
}

/** Corners at equal places made one. */
function joined(mesh: Mesh): Mesh {
  const known = new Map<string, number>();
  const positions: number[] = [];
  const triangles = Uint32Array.from(mesh.triangles, (v) => {
    const p = mesh.positions.subarray(3 * v, 3 * v + 3);
    const key = p.join(" ");
    let id = known.get(key);
    if (id === undefined) {
      id = positions.push(...p) / 3 - 1;
      known.set(key, id);
    }
    return id;
  });
  return { positions: Float64Array.from(positions), triangles };
}
