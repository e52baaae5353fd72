import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { diagonal } from "#mesh/area.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import { chain, meshIntoFrame, pointsIntoFrame, type Axes } from "./axes.ts";
import { edgeFindings } from "./edge-findings.ts";
import { findFeather } from "./feather.ts";
import { orderFeather } from "./feather-order.ts";
import { planLength } from "./girth.ts";
import { calm } from "./grain.ts";
import type { Last, Placement, Side } from "./last.ts";
import { measureLast } from "./measure.ts";
import { refuseNoLast } from "./plausible.ts";
import { findPose } from "./pose.ts";
import { guessSide, type SideGuess } from "./side.ts";
import { standUp } from "./stand.ts";
import { guessUnit, unitFinding, type UnitGuess } from "./unit.ts";
import { scale } from "./vector.ts";

/**
 * A last from a cleaned scan in any pose, unit and hand. The result is in the last's own frame in mm; `placement` leads back to
 * the file. What is doubtful is among its findings. Method, definitions and expected error: docs/method/last.md.
 * @param scan cleaned (welded, one part, facing outward), in the file's own unit
 * @param choices `side` when the maker has said it; else it is told from the shape
 * @throws Refusal when the scan is no last or cannot be measured
 */
export function lastFromScan(scan: Mesh, choices: { readonly name: string; readonly side?: Side }, watch: Watch): Last {
  watch("pose", 0);
  const calmed = calm(scan, diagonal(scan));
  const pose = findPose(calmed.mesh);
  const units = guessUnit(pose.length);
  const lying = scaled(meshIntoFrame(pose.axes, calmed.mesh), 1 / units.unitPerMm);
  const lengthMm = pose.length / units.unitPerMm;
  const noiseMm = calmed.noise / units.unitPerMm;
  // The edge is sought on the scan as it is: smoothing chews at a tight edge. What it leaves of the roughness is about a fifth.
  const leftMm = noiseMm / 5;
  const cutter = new Sectioner(lying);
  const findings: Finding[] = [...refuseNoLast(cutter, pose, lengthMm)];
  watch("feather line", 0);
  const asScanned = calmed.smoothed ? new Sectioner(scaled(meshIntoFrame(pose.axes, scan), 1 / units.unitPerMm)) : cutter;
  const found = findFeather(asScanned, lengthMm, noiseMm, watch);
  findings.push(...gapFindings(found.missing));
  watch("frame", 0);
  const stand = standUp(cutter, found.points, leftMm);
  const mesh = meshIntoFrame(stand.axes, lying);
  const line = { points: pointsIntoFrame(stand.axes, found.points), confidence: found.confidence };
  const guess = guessSide(line.points, mesh);
  const side = choices.side ?? guess.side;
  const feather = orderFeather(line, side);
  findings.unshift(unitFinding(units, planLength(mesh)));
  findings.push(...stand.findings, ...sideFindings(choices.side, guess), ...grainFindings(noiseMm, calmed.edge / units.unitPerMm), ...edgeFindings(feather));
  watch("measures", 0);
  const placement = placementOf(pose.axes, units, stand.axes);
  return measureLast({ name: choices.name, source: "scan", side, mesh, placement, feather, noiseMm: leftMm, findings });
}

function scaled(mesh: Mesh, factor: number): Mesh {
  return { positions: mesh.positions.map((v) => v * factor), triangles: mesh.triangles };
}

/** From the last's frame to the file: columns of the rotation are the frame's axes. `pose` is told in the file's unit. */
function placementOf(pose: Axes, { unit, unitPerMm }: UnitGuess, stand: Axes): Placement {
  const { origin, x, y, z } = chain({ ...pose, origin: scale(pose.origin, 1 / unitPerMm) }, stand);
  return { unit, unitPerMm, rotation: [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]], translationMm: origin };
}

function sideFindings(said: Side | undefined, guess: SideGuess): Finding[] {
  if (said !== undefined) return said !== guess.side && guess.sure > 0.35 ? [finding("side-against-shape", { side: said, shape: guess.side })] : [];
  return guess.sure < 0.35 ? [finding("side-doubtful", { side: guess.side })] : [];
}

function grainFindings(noiseMm: number, edgeMm: number): Finding[] {
  const findings: Finding[] = [];
  if (noiseMm > 0) findings.push(finding("scan-rough", { noiseMm }));
  if (edgeMm > 5) findings.push(finding("scan-coarse", { edgeMm }));
  return findings;
}

function gapFindings(missing: number): Finding[] {
  if (missing > 0.15) throw new Refusal(finding("bottom-missing", { share: missing }));
  return missing > 0.01 ? [finding("edge-hidden", { share: missing })] : [];
}
