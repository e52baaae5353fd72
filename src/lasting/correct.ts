import { finding, type Finding } from "#base/findings.ts";
import type { Watch } from "#base/watch.ts";
import type { Last } from "#last/last.ts";
import { vertexCount } from "#mesh/mesh.ts";
import type { FlatShell } from "#shell/shell.ts";
import { summarise, vertexMeans } from "#shell/strain.ts";
import { tensionOf } from "#shell/tension.ts";
import { differenceOf, type Difference } from "./difference.ts";
import { InverseSheet, type Inverse } from "./inverse/inverse-sheet.ts";
import { layForLeather } from "./inverse/lay-for-leather.ts";
import { pullsAlong, type Pulls } from "./pulls.ts";
import type { LastingChoices } from "./settings.ts";
import type { Fabric } from "./upper.ts";

export interface CorrectOptions {
  readonly last: Pick<Last, "landmarks" | "side">;
  /** The same shell corrected before: with it a change of pulls or of a direction is answered more quickly. */
  readonly like?: Corrected | undefined;
  readonly watch?: Watch;
}

/** The flat upper corrected for its leather and for how it is pulled. */
export interface Corrected {
  /** As it was laid flat without any leather in mind, and as it is to be cut: pieces are cut from either alike. */
  readonly before: FlatShell;
  readonly flat: FlatShell;
  readonly difference: Difference;
  readonly pulls: Pulls;
  /** What of the pulls no stretch answers: friction and tacks carry it, N. */
  readonly balanceN: number;
  /** Pressure on what lies beneath at each vertex, N/mm². */
  readonly pressure: Float64Array;
  readonly settled: boolean;
  readonly steps: number;
  readonly findings: readonly Finding[];
  /** Kept for the next time. */
  readonly sheet: InverseSheet;
}

/**
 * Corrects the flat upper for the leather: smaller where the pulls stretch it, by as much as they do. Level 1 of the prediction; method and
 * limits: docs/method/inverse.md. Where it does not come to rest, what was reached is given and a finding says so.
 */
export function correctFlat(flat: FlatShell, fabric: Fabric, settings: LastingChoices, { last, like, watch }: CorrectOptions): Corrected {
  const { shell, onLast } = flat, { triangles } = shell.mesh;
  const pulls = pullsAlong(onLast, last, settings);
  const near = like?.before.shell.mesh.triangles === triangles ? like : undefined;
  const sheet = near?.sheet ?? new InverseSheet(vertexCount(shell.mesh), triangles);
  const laid = (from?: Float64Array): Inverse =>
    layForLeather({ over: shell }, flat.uv, fabric, pulls, { mirrored: last.side === "left", friction: settings.friction, sheet, ...(from && { like: from }), ...(watch && { watch }) });
  const warm = near && laid(near.flat.uv);
  const found = warm?.settled ? warm : laid();
  const { uv, stretchMax, stretchMin, steps, settled } = found;
  const strain = summarise(shell.mesh, stretchMax, stretchMin);
  const { medial, lateral } = flat.tension;
  const tension = tensionOf(shell, onLast, uv, { medial: medial.extraMm, lateral: lateral.extraMm });
  const findings = [...(settled ? [] : [finding("corrected-unsettled", { moveMm: lastMove(found) })]), ...judged(flat, found, fabric)];
  return {
    before: flat,
    flat: { ...flat, uv, stretchMax, stretchMin, strain, tension, findings: [...flat.findings, ...findings] },
    difference: differenceOf(flat, uv, last.landmarks),
    pulls,
    balanceN: Math.hypot(found.balance.alongN, found.balance.acrossN),
    pressure: found.pressure,
    settled,
    steps: steps.length,
    findings,
    sheet,
  };
}

const lastMove = ({ steps }: Inverse): number => Math.min(99, steps.findLast(({ part }) => part > 0)?.moveMm ?? 99);

/** Where the leather is stretched beyond what it bears. */
function judged({ shell: { mesh } }: FlatShell, { stretchMax }: Inverse, { grainLimit, breakLimit }: Fabric): readonly Finding[] {
  const means = vertexMeans(mesh, stretchMax);
  let worst = 0;
  for (let v = 1; v < means.length; v++) if (means[v]! > means[worst]!) worst = v;
  const stretch = means[worst]! - 1, at = mesh.positions.slice(3 * worst, 3 * worst + 3);
  const place: [number, number, number] = [at[0]!, at[1]!, at[2]!];
  if (stretch > breakLimit) return [finding("corrected-tears", { percent: 100 * stretch, limitPercent: 100 * breakLimit }, place)];
  return stretch > grainLimit ? [finding("corrected-grain", { percent: 100 * stretch, limitPercent: 100 * grainLimit }, place)] : [];
}
