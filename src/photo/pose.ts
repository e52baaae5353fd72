import { asinClamped } from "#base/angle.ts";
import { toPicture, type Placing } from "./placing.ts";

/** Pixels to a millimetre about a plane point, geometric mean of all directions. */
export function pxPerMmAt(placing: Placing, x: number, y: number): number {
  const h = 0.5;
  const [ax, ay] = toPicture(placing, x - h, y), [bx, by] = toPicture(placing, x + h, y);
  const [cx, cy] = toPicture(placing, x, y - h), [dx, dy] = toPicture(placing, x, y + h);
  return Math.sqrt(Math.abs((bx - ax) * (dy - cy) - (by - ay) * (dx - cx)));
}

/** Focal length of a phone's main camera in half diagonals of the picture (26 mm for a half diagonal of 21.6 mm on film). */
const usualFocal = 1.2;

/**
 * Angle between the line of sight and the upright on the card. The focal length follows from the two conditions that the
 * card's axes are square and of one scale (Zhang, IEEE PAMI 22 (2000) 1330, section 2); nearly from above they say nothing,
 * and the usual one is taken.
 */
export function tiltDegOf({ homography: h }: Placing): number {
  const usual = tiltWith(h, usualFocal);
  if (usual < 8) return usual;
  const a = [h[6]! * h[7]!, h[6]! ** 2 - h[7]! ** 2] as const;
  const b = [-(h[0]! * h[1]! + h[3]! * h[4]!), h[1]! ** 2 + h[4]! ** 2 - h[0]! ** 2 - h[3]! ** 2] as const;
  const square = (a[0] * b[0] + a[1] * b[1]) / (a[0] ** 2 + a[1] ** 2);
  return tiltWith(h, Math.sqrt(Math.min(16, Math.max(0.5, square))));
}

function tiltWith(h: Float64Array, focal: number): number {
  const a = [h[0]! / focal, h[3]! / focal, h[6]!] as const;
  const b = [h[1]! / focal, h[4]! / focal, h[7]!] as const;
  const x = a[1] * b[2] - a[2] * b[1], y = a[2] * b[0] - a[0] * b[2], z = a[0] * b[1] - a[1] * b[0];
  return (asinClamped(Math.sqrt((x * x + y * y) / (x * x + y * y + z * z))) * 180) / Math.PI;
}
