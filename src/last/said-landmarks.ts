import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { nearestOnRing } from "./centre-section.ts";
import { pointAtIndex } from "./closed-curve.ts";
import type { Landmarks, Point3, Side, SurfaceCurve } from "./last.ts";
import { arcNearest, pointOn } from "./surface-curve.ts";
import { distance } from "./vector.ts";

type LineName = "feather line" | "centre ridge" | "back curve" | "middle of the bottom";

/** The line that each landmark belongs to: a point placed by hand is brought to the nearest place on it. */
const lineOf: Readonly<Record<keyof Landmarks, LineName>> = {
  toePoint: "feather line",
  seatPoint: "feather line",
  jointMedial: "feather line",
  jointLateral: "feather line",
  seatMedial: "feather line",
  seatLateral: "feather line",
  vampPoint: "centre ridge",
  waistPoint: "centre ridge",
  instepPoint: "centre ridge",
  counterPoint: "back curve",
  treadPoint: "middle of the bottom",
};

/** A point placed farther off its line than this is said: it may have been meant for another place. */
const farMm = 3;

/** A point placed farther from where it was found than this is said: more than any two makers differ by. Our own limit. */
const farFromFoundMm = 10;

/** The maker's own landmarks, brought to the lines they belong to, and what is doubtful about them. */
export class SaidLandmarks {
  readonly findings: Finding[] = [];
  readonly names: readonly (keyof Landmarks)[];
  readonly #said: Partial<Landmarks>;

  constructor(said: Partial<Landmarks> = {}) {
    this.#said = said;
    this.names = (Object.keys(lineOf) as (keyof Landmarks)[]).filter((name) => said[name] !== undefined);
  }

  has(name: keyof Landmarks): boolean {
    return this.#said[name] !== undefined;
  }

  /** The place on the feather line, index with fraction; undefined where nothing was said. */
  onRing(name: keyof Landmarks, points: Float64Array): number | undefined {
    return this.#brought(name, (p) => nearestOnRing(points, p), (at) => pointAtIndex(points, at));
  }

  /** The place on a curve, mm from its start; undefined where nothing was said. */
  onCurve(name: keyof Landmarks, curve: SurfaceCurve): number | undefined {
    return this.#brought(name, (p) => arcNearest(curve, p), (at) => pointOn(curve, at));
  }

  /** Says so where a landmark of the maker's lies far from where it was found; the frame is that of both. */
  besideFound(name: keyof Landmarks, placed: Point3, found: Point3): void {
    const farMm = distance(placed, found);
    if (!this.has(name) || farMm <= farFromFoundMm) return;
    const alongMm = placed[0] - found[0];
    const toward = Math.abs(alongMm) < farMm / 2 ? "" : alongMm > 0 ? "toe" : "heel";
    this.findings.push(finding("landmark-far-from-found", { landmark: name, farMm, toward }, placed));
  }

  /**
   * The same for two points that face each other across the last; where both lie on the wrong side, that is said instead. `placed` is what
   * counts, `found` what was found, inner one first.
   * @throws Refusal when one alone lies on the wrong side: the line through both would run along the last
   */
  besideFoundPair(names: readonly [keyof Landmarks, keyof Landmarks], placed: readonly [Point3, Point3], found: readonly [Point3, Point3], side: Side): void {
    const over = ([0, 1] as const).filter((k) => this.has(names[k]) && distance(placed[k], found[1 - k]!) < distance(placed[k], found[k]) / 2);
    const [first] = over;
    if (first === undefined) names.forEach((name, k) => this.besideFound(name, placed[k]!, found[k]!));
    else if (over.length === 2) this.findings.push(finding("landmarks-swapped", { inner: names[0], outer: names[1], side }, placed[0]));
    else throw new Refusal(finding("landmark-on-other-side", { landmark: names[first], other: names[1 - first]!, side }, placed[first]));
  }

  /** Where on its line a landmark of the maker's lies; says so where that is far from where it was placed. */
  #brought(name: keyof Landmarks, nearest: (p: Point3) => number, pointAt: (at: number) => Point3): number | undefined {
    const placed = this.#said[name];
    if (!placed) return undefined;
    const at = nearest(placed);
    const on = pointAt(at);
    const offMm = distance(placed, on);
    if (offMm > farMm) this.findings.push(finding("landmark-off-line", { landmark: name, offMm, line: lineOf[name] }, on));
    return at;
  }
}
