import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import type { Outline } from "#plane/outline.ts";
import type { Last, Measures, Placement } from "./last.ts";
import { DrawnGirthFit } from "./loft-drawn-girths.ts";
import { askedGirths, GirthFit, type Girths } from "./loft-girths.ts";
import { refuseBadMeasures } from "./loft-limits.ts";
import { meshLoft, type Loft } from "./loft-mesh.ts";
import type { LoftNumbers } from "./loft-numbers.ts";
import { plannedNumbers } from "./loft-plan.ts";
import { LoftShape } from "./loft-shape.ts";
import { planSilhouette, sideSilhouette } from "./loft-silhouette.ts";
import { measureLast } from "./measure.ts";
import { judgeMeasures } from "./measure-checks.ts";
import type { LastMeasurements, LastOutlines } from "./measured.ts";
import { measureKeys } from "./measures-by-size.ts";
import { mirrorLast } from "./mirror.ts";
import { drawnFindings, drawnNumbers } from "./outline-fit.ts";
import { readOutlines } from "./outline-read.ts";

/** Edge lengths of the mesh the girths are fitted on and of the one handed out, mm. */
const roughEdge = 4;
const fineEdge = 2;
/** What every number is met within, mm. */
const promised = 0.5;

/**
 * A lofted last that measures as asked, within 0.5 mm in every number. Without outlines it is a stand-in for the shape that was not
 * scanned; with them its silhouettes are the drawn ones. Its findings say so, with the error to expect. A left one is the exact mirror
 * of the right one. Against `sizeEu`, the size the maker said, the stick length is judged. Method, limits: docs/method/loft.md.
 * @throws Refusal when measures or outlines contradict each other
 */
export function lastFromMeasures(m: LastMeasurements, name: string, watch: Watch, outlines?: LastOutlines, sizeEu?: number): Last {
  refuseBadMeasures(m);
  watch(stage, 0);
  const planned = plannedNumbers(m);
  const read = outlines?.bottom || outlines?.side ? readOutlines(m, outlines, plannedSilhouettes(new LoftShape(planned))) : undefined;
  const fit = read ? new DrawnGirthFit(drawnNumbers(planned, m, read.drawing), m, read.drawing) : new GirthFit(planned, m);
  let tried = 0;
  fit.fit((numbers) => {
    watch(stage, Math.min(0.8, 0.06 * ++tried));
    return girthsOf(measuredLoft(numbers, roughEdge, name));
  });
  let numbers = fit.numbers;
  let last = measuredLoft(numbers, fineEdge, name);
  let at = last;
  // A girth may leap between two steps: the nearest form stands, and while it is only just not as near as promised the steps go on.
  const stepsOn = (round: number, offMm: number): boolean => (round < 3 ? offMm > 0.05 : round < 6 && offMm > promised && offMm < 2 * promised);
  for (let round = 0; stepsOn(round, farthest(last, m)); round++) {
    watch(stage, 0.85 + 0.015 * round);
    fit.better(girthsOf(at));
    at = measuredLoft(fit.numbers, fineEdge, name);
    if (farthest(at, m) < farthest(last, m)) [last, numbers] = [at, fit.numbers];
  }
  refuseMissed(last, m);
  const findings = read ? drawnFindings(read, new LoftShape(numbers)) : [finding("stand-in-for-shape", {})];
  last = { ...last, findings: [...findings, ...judgeMeasures(m, sizeEu), ...last.findings] };
  return m.side === "right" ? last : mirrorLast(last);
}

const plannedSilhouettes = (shape: LoftShape): { readonly bottom: Outline; readonly side: Outline } => ({ bottom: planSilhouette(shape), side: sideSilhouette(shape) });

const stage = "last from measurements";

/** Half a millimetre is promised in every number; what cannot be had is said, never rounded over. */
function refuseMissed({ measures }: Last, m: LastMeasurements): void {
  for (const key of measureKeys) {
    const name = key.slice(0, -2) as keyof Measures;
    if (Math.abs(measures[name] - m[key]) > promised) throw new Refusal(finding("measure-not-met", { measure: name, askedMm: m[key], reachedMm: measures[name] }));
  }
}

const farthest = (last: Last, m: LastMeasurements): number => {
  const asked = askedGirths(m);
  return Math.max(...girthsOf(last).map((v, i) => Math.abs(v - asked[i]!)));
};

function girthsOf({ measures }: Last): Girths {
  return [measures.jointGirth, measures.waistGirth, measures.instepGirth, measures.heelGirth];
}

/** A made last has no file: its own frame in mm is its placement. */
const ownFrame: Placement = { unit: "mm", unitPerMm: 1, rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translationMm: [0, 0, 0] };

function measuredLoft(numbers: LoftNumbers, edge: number, name: string): Last {
  const { mesh, feather } = meshLoft(new LoftShape(numbers), edge);
  return measureLast({
    name,
    source: "measures",
    side: "right",
    mesh,
    placement: ownFrame,
    feather: { points: featherPoints(mesh, feather), toeIndex: feather.length / 2, confidence: new Float64Array(feather.length).fill(1) },
    findings: [],
  });
}

function featherPoints({ positions }: Loft["mesh"], feather: Loft["feather"]): Float64Array {
  const points = new Float64Array(3 * feather.length);
  feather.forEach((v, i) => points.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
  return points;
}
