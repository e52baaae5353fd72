import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { diagonal } from "#mesh/area.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import { intoFrame, meshIntoFrame, pointsIntoFrame, type Axes } from "./axes.ts";
import { ownMeasureFindings, refuseSlip, scaleByCallipers } from "./callipers.ts";
import { edgeFindings, hasEdge } from "./edge-findings.ts";
import { findFeather, type FoundFeather } from "./feather.ts";
import { orderFeather } from "./feather-order.ts";
import { pullFeather, type PulledFeather } from "./feather-pull.ts";
import { calm } from "./grain.ts";
import type { Last, Point3, Side } from "./last.ts";
import { measureLast } from "./measure.ts";
import { placementOf } from "./placement.ts";
import { refuseNoBall, refuseNoLast } from "./plausible.ts";
import { findPose, type Pose } from "./pose.ts";
import type { SaidOfScan } from "./said.ts";
import { guessSide, type SideGuess } from "./side.ts";
import { standUp } from "./stand.ts";
import type { ToMeasure } from "./to-measure.ts";
import { guessUnit, hasUnit, unitFinding, type UnitGuess } from "./unit.ts";
import { Scanned, refusePart } from "./unscanned.ts";
import { scale } from "./vector.ts";

/** What the maker says of a scan, and what else is known of it. */
export interface ScanChoices extends SaidOfScan {
  readonly name: string;
  /** The scan as it was read, in the same coordinates: tells what was closed by guess when it was cleaned. */
  readonly scanned?: Mesh;
}

/**
 * A last from a cleaned scan in any pose, unit and hand. The result is in the last's own frame in mm; `placement` leads back to
 * the file. What the maker says goes before what is found; what is doubtful is among the findings. Method, definitions and expected error: docs/method/last.md.
 * @param scan cleaned (welded, one part, facing outward), in the file's own unit
 * @param choices what the maker says of it; points in the file's own coordinates
 * @throws Refusal when the scan is no last or cannot be measured, or when what is said cannot be true of it
 */
export function lastFromScan(scan: Mesh, choices: ScanChoices, watch: Watch): Last {
  watch("pose", 0);
  const { measured } = choices;
  const calmed = calm(scan, diagonal(scan));
  const pose = findPose(calmed.mesh);
  const units = unitOf(pose.length, measured?.stickLength);
  const intoLying = lyingIn(pose.axes, units.unitPerMm);
  const lying = intoLying.mesh(calmed.mesh);
  const lengthMm = pose.length / units.unitPerMm;
  const noiseMm = calmed.noise / units.unitPerMm;
  // The edge is sought on the scan as it is: smoothing chews at a tight edge. What it leaves of the roughness is about a fifth.
  const leftMm = noiseMm / 5;
  const cutter = new Sectioner(lying);
  const findings: Finding[] = [...partFindings(calmed.mesh, choices.scanned, pose), ...refuseNoLast(cutter, pose, lengthMm)];
  watch("feather line", 0);
  const asScanned = calmed.smoothed ? new Sectioner(intoLying.mesh(scan)) : cutter;
  const found = throughPoints(asScanned, findFeather(asScanned, lengthMm, noiseMm, watch), (choices.featherThrough ?? []).map(intoLying.point), noiseMm);
  findings.push(...gapFindings(found.missing));
  watch("frame", 0);
  const stand = standUp(cutter, found.points, leftMm, hasEdge(found.confidence) || found.through.length > 2);
  const mesh = meshIntoFrame(stand.axes, lying);
  const line = { points: pointsIntoFrame(stand.axes, found.points), confidence: found.confidence };
  const guess = guessSide(line.points, mesh);
  const side = choices.side ?? guess.side;
  const feather = orderFeather(line, side);
  const through = found.through.map((p) => intoFrame(stand.axes, p));
  findings.push(...stand.findings, ...sideFindings(choices.side, guess), ...grainFindings(noiseMm, calmed.edge / units.unitPerMm), ...drawnFindings(found), ...edgeFindings(feather, through));
  watch("measures", 0);
  const said = Object.fromEntries(Object.entries(choices.landmarks ?? {}).map(([name, p]) => [name, intoFrame(stand.axes, intoLying.point(p))]));
  const what: ToMeasure = { name: choices.name, source: "scan", side, mesh, placement: placementOf(pose.axes, units, stand.axes), feather, noiseMm: leftMm, said, findings };
  return withScale(what, measured, { ...units, known: hasUnit(pose.length) });
}

/** The unit of the file; where the maker's stick length says that the file is in none, how much larger the scan has to be made. */
function unitOf(length: number, stickMm: number | undefined): UnitGuess & { readonly enlarged: number } {
  const units = guessUnit(length, stickMm);
  const ratio = stickMm === undefined ? 1 : (stickMm * units.unitPerMm) / length;
  // Within a tenth the callipers will tell, once the stick length is measured and not only the extent of the pose.
  const enlarged = ratio > 1.1 || ratio < 0.9 ? ratio : 1;
  return { ...units, unitPerMm: units.unitPerMm / enlarged, enlarged };
}

/** Measures the last, and once more when the maker's callipers ask for another scale. */
function withScale(what: ToMeasure, measured: SaidOfScan["measured"], units: UnitGuess & { readonly enlarged: number; readonly known: boolean }): Last {
  const before = measureLast(what);
  refuseNoBall(before);
  refuseSlip(measured, before.measures, units.enlarged, units.known);
  const set = scaleByCallipers(measured, before.measures, units.enlarged);
  const first = set ? set.findings : [unitFinding(units, before.measures.stickLength)];
  const last = set ? measureLast(enlarged(what, set.factor)) : before;
  return { ...last, findings: [...first, ...last.findings, ...ownMeasureFindings(measured, last.measures)] };
}

/** The same scan with every length times `factor`; the file stays as it is, so its unit shrinks by as much. */
function enlarged(what: ToMeasure, factor: number): ToMeasure {
  const larger = (p: Point3): Point3 => scale(p, factor);
  const { placement, feather } = what;
  return {
    ...what,
    mesh: scaled(what.mesh, factor),
    placement: { ...placement, unitPerMm: placement.unitPerMm / factor, translationMm: larger(placement.translationMm) },
    feather: { ...feather, points: feather.points.map((v) => v * factor) },
    said: Object.fromEntries(Object.entries(what.said ?? {}).map(([name, p]) => [name, larger(p)])),
    findings: what.findings.map((f) => (f.at ? { ...f, at: larger(f.at) } : f)),
  };
}

function throughPoints(cutter: Sectioner, found: FoundFeather, points: readonly Point3[], noiseMm: number): PulledFeather {
  return points.length > 0 ? pullFeather(cutter, found, points, noiseMm) : { ...found, through: [], mostMm: 0 };
}

const drawnFindings = ({ through, mostMm }: PulledFeather): Finding[] => (through.length > 0 ? [finding("edge-drawn", { points: through.length, mostMm })] : []);

const partFindings = (mesh: Mesh, scanned: Mesh | undefined, pose: Pose): Finding[] => (scanned ? refusePart(mesh, new Scanned(scanned, mesh), pose) : []);

/** Takes what is told in the file into the pose, in mm. */
function lyingIn(axes: Axes, unitPerMm: number): { mesh: (m: Mesh) => Mesh; point: (p: Point3) => Point3 } {
  return { mesh: (m) => scaled(meshIntoFrame(axes, m), 1 / unitPerMm), point: (p) => scale(intoFrame(axes, p), 1 / unitPerMm) };
}

function scaled(mesh: Mesh, factor: number): Mesh {
  return { positions: mesh.positions.map((v) => v * factor), triangles: mesh.triangles };
}

function sideFindings(said: Side | undefined, guess: SideGuess): Finding[] {
  if (said !== undefined) return said !== guess.side && guess.sure > 0.35 ? [finding("side-against-shape", { side: said, shape: guess.side })] : [];
  return guess.sure < 0.35 ? [finding("side-doubtful", { side: guess.side })] : [];
}

/** Above these the errors that are told come to a millimetre and a half on a girth, half a millimetre on a round place. Our own limits. */
const veryRoughMm = 0.3;
const veryCoarseMm = 9;

function grainFindings(noiseMm: number, edgeMm: number): Finding[] {
  const findings: Finding[] = [];
  if (noiseMm > 0) findings.push(finding(noiseMm > veryRoughMm ? "scan-very-rough" : "scan-rough", { noiseMm }));
  if (edgeMm > 5) findings.push(finding(edgeMm > veryCoarseMm ? "scan-very-coarse" : "scan-coarse", { edgeMm }));
  return findings;
}

function gapFindings(missing: number): Finding[] {
  if (missing > 0.15) throw new Refusal(finding("bottom-missing", { share: missing }));
  return missing > 0.01 ? [finding("edge-hidden", { share: missing })] : [];
}
