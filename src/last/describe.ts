import { asinClamped } from "#base/angle.ts";
import { Sectioner } from "#mesh/section.ts";
import { findComb, type Comb } from "./comb.ts";
import { crossSection } from "./cross-section.ts";
import { bottomOf, wallsOf, type BottomAcross, type Wall } from "./describe-across.ts";
import { combOnCentre, heelCurve, toeHeight, type HeelCurve } from "./describe-profile.ts";
import { medialSign, type Last } from "./last.ts";
import { norm, sub } from "./vector.ts";

/** A cross-section of the last at a share of the way from seat to toe point. */
export interface Station {
  readonly share: number;
  readonly bottom: BottomAcross;
  readonly medial: Wall;
  readonly lateral: Wall;
}

/** The shape of a last in numbers beyond its girths and lengths. Definitions: docs/method/last.md. */
export interface LastDescription {
  /** Between the line through both joint points and the axis, seen from above; below 90 where the outer joint lies farther back. */
  readonly jointLineDegrees: number;
  /** Place of the joint points from seat (0) to toe point (1) along the axis. */
  readonly jointMedialShare: number;
  readonly jointLateralShare: number;
  /** Seat point above tread point, mm, and the slope of the line between them. */
  readonly heelPitchMm: number;
  readonly heelPitchDegrees: number;
  readonly heelCurve: HeelCurve;
  readonly stations: readonly Station[];
  /** Height of the centre ridge above the toe point, `behindMm` behind it. */
  readonly toeHeights: readonly { readonly behindMm: number; readonly heightMm: number }[];
  /** The flat top on the centre plane: its height above the ground and its length; undefined where the last has none. */
  readonly comb: { readonly heightMm: number; readonly lengthMm: number } | undefined;
}

/** Where the last is cut across, as shares of the toe point's x. */
const shares = [0.15, 0.3, 0.5, 0.7, 0.85] as const;
const toeStepsMm = [5, 10, 20] as const;
/** What still counts as flat when the comb is sought: roughness is out of the mesh but for a few hundredths. */
const combFlatMm = 0.4;

const degrees = (sine: number): number => (asinClamped(sine) * 180) / Math.PI;

/** Puts the shape of a last into numbers. Stations where it cannot be cut are left out. */
export function describeLast(last: Last): LastDescription {
  const { jointMedial, jointLateral, seatPoint, treadPoint, toePoint } = last.landmarks;
  const across = sub(jointMedial, jointLateral);
  const pitch = sub(seatPoint, treadPoint);
  const comb = findComb(last.mesh, combFlatMm);
  return {
    jointLineDegrees: 90 - degrees(across[0] / norm([across[0], across[1], 0])),
    jointMedialShare: jointMedial[0] / toePoint[0],
    jointLateralShare: jointLateral[0] / toePoint[0],
    heelPitchMm: pitch[2],
    heelPitchDegrees: degrees(pitch[2] / norm(pitch)),
    heelCurve: heelCurve(last),
    stations: stationsOf(last, comb),
    toeHeights: toeStepsMm.map((behindMm) => ({ behindMm, heightMm: toeHeight(last, behindMm) })),
    comb: comb && combOnCentre(last, comb),
  };
}

function stationsOf({ mesh, feather, side, landmarks }: Last, comb: Comb | undefined): Station[] {
  const cutter = new Sectioner(mesh);
  return shares.flatMap((share) => {
    const cut = crossSection(cutter, feather, share * landmarks.toePoint[0]);
    if (!cut) return [];
    const [left, right] = wallsOf(cut, comb);
    const [medial, lateral] = medialSign(side) > 0 ? [left, right] : [right, left];
    return [{ share, bottom: bottomOf(cut), medial, lateral }];
  });
}
