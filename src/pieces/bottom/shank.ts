import { medialSign } from "#last/last.ts";
import type { Outline } from "#plane/outline.ts";
import { TriangleLocator } from "#plane/triangle-locator.ts";
import type { FlatBottom } from "#shell/shell.ts";
import type { Side } from "#last/last.ts";
import type { PieceSettings } from "../settings.ts";
import type { Xy } from "../piece.ts";
import { centring, jointAlong, jointSlant } from "./bottom-lines.ts";
import type { NetBottom } from "./net-bottom.ts";

/** A place along the shank from its rear end, and how far the last's bottom lies above the straight line between the shank's ends there, mm; below 0 where it hangs. */
export interface ShankBend {
  readonly alongMm: number;
  readonly riseMm: number;
}

/** Where the shank lies between the boards, on the line from the seat to the middle of the waist. */
export interface ShankPlace {
  /** Its ends along that line from the seat point, mm. */
  readonly rearMm: number;
  readonly frontMm: number;
  /** How far the front end stays behind the joint line. */
  readonly shortOfJointMm: number;
  /** The same of the second board, on which it lies. */
  readonly boardShortMm: number;
  /** The longest that would lie from the middle of the heel to as near the joint line as it may. */
  readonly longestMm: number;
  readonly widthMm: number;
}

/**
 * The rear end lies under the middle of the heel; where the shank is so long that it would come too near the joint, or out in front of the
 * second board, it goes farther back, but no nearer to the seat's edge than asked. What then still reaches too far is told by `shortOfJointMm`.
 */
export function shankPlace(net: NetBottom, { shankMm, shankWideMm, shankFrontMm, shankRearMm, secondBehindMm }: PieceSettings): ShankPlace {
  const joint = jointAlong(net);
  const boardShortMm = secondBehindMm / jointSlant(net);
  const keptMm = Math.max(shankFrontMm, boardShortMm);
  const rearMm = Math.max(shankRearMm, Math.min(net.breastX / 2, joint - keptMm - shankMm));
  return { rearMm, frontMm: rearMm + shankMm, shortOfJointMm: joint - rearMm - shankMm, boardShortMm, longestMm: joint - keptMm - net.breastX / 2, widthMm: shankWideMm };
}

/** The shank's outline in the flat bottom's place, from the rear: square behind, a half circle in front; counter-clockwise. */
export function shankOutline(net: NetBottom, { rearMm, frontMm, widthMm }: ShankPlace): Outline {
  const [ux, uy] = centring(net);
  const at = (along: number, aside: number): Xy => [along * ux - aside * uy, along * uy + aside * ux];
  const r = widthMm / 2;
  const points: Xy[] = [at(rearMm, -r)];
  for (let k = 0; k <= roundSteps; k++) {
    const a = Math.PI * (k / roundSteps - 0.5);
    points.push(at(frontMm - r + r * Math.cos(a), r * Math.sin(a)));
  }
  points.push(at(rearMm, r));
  return { xy: Float64Array.from(points.flat()) };
}

const roundSteps = 36;

const bendStepMm = 10;

/** The bend of the shank: heights of the last's bottom along its middle over the straight line between its ends, every 10 mm or a little less. */
export function shankBend(net: NetBottom, place: ShankPlace, flat: FlatBottom, side: Side): readonly ShankBend[] {
  const { uv, bottom: { mesh: { positions: p, triangles: t } } } = flat;
  const locator = new TriangleLocator(uv, t);
  const sign = medialSign(side);
  const [ux, uy] = centring(net);
  const pointAt = (along: number): readonly [number, number, number] | undefined => {
    const found = locator.find(along * ux, sign * along * uy);
    if (!found) return undefined;
    const c: [number, number, number] = [0, 0, 0];
    for (let k = 0; k < 3; k++) for (let j = 0; j < 3; j++) c[j]! += found.weights[k]! * p[3 * t[3 * found.triangle + k]! + j]!;
    return c;
  };
  const length = place.frontMm - place.rearMm;
  const steps = Math.max(1, Math.ceil(length / bendStepMm));
  const a = pointAt(place.rearMm), b = pointAt(place.frontMm);
  if (!a || !b) return [];
  const [dx, dy, dz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const level = Math.sqrt(dx * dx + dy * dy), chord = Math.sqrt(level * level + dz * dz);
  const out: ShankBend[] = [];
  for (let k = 0; k <= steps; k++) {
    const q = pointAt(place.rearMm + (k * length) / steps);
    if (!q) continue;
    const ahead = ((q[0] - a[0]) * dx + (q[1] - a[1]) * dy) / level;
    // Square to the line between the ends, upward.
    out.push({ alongMm: (k * length) / steps, riseMm: ((q[2] - a[2]) * level - ahead * dz) / chord });
  }
  return out;
}
