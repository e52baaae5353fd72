import { finding } from "#base/findings.ts";
import type { Watch } from "#base/watch.ts";
import type { Last, Placement } from "./last.ts";
import { askedGirths, GirthFit, type Girths } from "./loft-girths.ts";
import { refuseBadMeasures } from "./loft-limits.ts";
import { meshLoft, type Loft } from "./loft-mesh.ts";
import type { LoftNumbers } from "./loft-numbers.ts";
import { plannedNumbers } from "./loft-plan.ts";
import { LoftShape } from "./loft-shape.ts";
import { measureLast } from "./measure.ts";
import type { LastMeasurements, LastOutlines } from "./measured.ts";
import { mirrorLast } from "./mirror.ts";

/** Edge lengths of the mesh the girths are fitted on and of the one handed out, mm. */
const roughEdge = 4;
const fineEdge = 2;

/**
 * A lofted last that measures as asked, within 0.5 mm in every number: a stand-in for the shape that was not scanned, which its
 * finding says. A left one is the exact mirror of the right one. Method, limits: docs/method/loft.md.
 * @throws Refusal when measures contradict each other
 */
export function lastFromMeasures(m: LastMeasurements, name: string, watch: Watch, outlines?: LastOutlines): Last {
  void outlines;
  refuseBadMeasures(m);
  watch("last from measurements", 0);
  const fit = new GirthFit(plannedNumbers(m), m);
  let tried = 0;
  fit.fit((numbers) => {
    watch("last from measurements", Math.min(0.8, 0.08 * ++tried));
    return girthsOf(measuredLoft(numbers, roughEdge, name));
  });
  let last = measuredLoft(fit.numbers, fineEdge, name);
  for (let round = 0; round < 3 && farthest(last, m) > 0.05; round++) {
    watch("last from measurements", 0.85 + 0.05 * round);
    fit.better(girthsOf(last));
    last = measuredLoft(fit.numbers, fineEdge, name);
  }
  return m.side === "right" ? last : mirrorLast(last);
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
    findings: [finding("stand-in-for-shape", {})],
  });
}

function featherPoints({ positions }: Loft["mesh"], feather: Loft["feather"]): Float64Array {
  const points = new Float64Array(3 * feather.length);
  feather.forEach((v, i) => points.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
  return points;
}
