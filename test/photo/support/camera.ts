// A camera of our own for tests: pinhole, radial distortion about its own principal point, light, blur and noise, all known.
import type { Picture } from "#photo/picture.ts";
import { seeded } from "./chance.ts";
import type { Painted, Rgb } from "./plane.ts";

export interface Shot {
  readonly width: number;
  readonly height: number;
  /** The camera looks this far from straight down, from this direction. */
  readonly tiltDeg: number;
  readonly fromDeg: number;
  /** Picture turned about the line of sight. */
  readonly rollDeg?: number;
  /** Focal length in picture widths; a phone's main camera has about 0.75. */
  readonly focal?: number;
  /** x′ = x (1 + k1 r² + k2 r⁴), r in focal lengths from the principal point. */
  readonly k1?: number;
  readonly k2?: number;
  /** Point of the table the camera looks at, and how many mm the picture's width spans there. */
  readonly lookAt?: readonly [number, number];
  readonly spanMm?: number;
  /** Gaussian blur, px. */
  readonly blurPx?: number;
  /** Standard deviation of each 8-bit value. */
  readonly grain?: number;
  /** Standard deviation of where each spot of the picture is seen, px; neighbours within a dozen pixels move alike. */
  readonly shakePx?: number;
  /** Light falls to this part from one corner to the other. */
  readonly darkest?: number;
  /** Colour of the light. */
  readonly light?: Rgb;
  readonly seed?: number;
  /** Height of the table above its plane at a place, mm: a bent card. */
  readonly bump?: (x: number, y: number) => number;
}

const radian = Math.PI / 180;

/** Camera frame: rows of the rotation world → camera, and where the camera stands. */
function pose({ width, tiltDeg, fromDeg, rollDeg = 0, focal = 0.75, lookAt = [180, 125], spanMm = 430 }: Shot) {
  const f = focal * width;
  const far = (f * spanMm) / width;
  const [t, a, roll] = [tiltDeg * radian, fromDeg * radian, rollDeg * radian];
  const ahead = [-Math.sin(t) * Math.cos(a), -Math.sin(t) * Math.sin(a), -Math.cos(t)];
  const stand = [lookAt[0] - far * ahead[0]!, lookAt[1] - far * ahead[1]!, -far * ahead[2]!];
  // Right of the picture: the table's x, made square to the line of sight, then rolled.
  const d = ahead[0]!;
  let right = [1 - d * ahead[0]!, -d * ahead[1]!, -d * ahead[2]!];
  const long = Math.hypot(...right);
  right = right.map((v) => v / long);
  const cross = (p: number[], q: number[]): number[] => [p[1]! * q[2]! - p[2]! * q[1]!, p[2]! * q[0]! - p[0]! * q[2]!, p[0]! * q[1]! - p[1]! * q[0]!];
  const down = cross(ahead, right);
  const [c, s] = [Math.cos(roll), Math.sin(roll)];
  return { f, stand, ahead, right: right.map((v, i) => c * v + s * down[i]!), down: right.map((v, i) => -s * v + c * down[i]!) };
}

/** Where a point of the table, or one `z` above it, is seen, px. */
export function seenAt(shot: Shot, x: number, y: number, z = 0): [number, number] {
  const { f, stand, ahead, right, down } = pose(shot);
  const to = [x - stand[0]!, y - stand[1]!, z - stand[2]!];
  const dot = (a: readonly number[]): number => a[0]! * to[0]! + a[1]! * to[1]! + a[2]! * to[2]!;
  const [u, v] = [dot(right) / dot(ahead), dot(down) / dot(ahead)];
  const r = u * u + v * v, grow = 1 + r * ((shot.k1 ?? 0) + r * (shot.k2 ?? 0));
  return [(shot.width - 1) / 2 + f * grow * u, (shot.height - 1) / 2 + f * grow * v];
}

/** Takes the picture: nine looks into each pixel that is not of one colour. */
export function photograph(table: Painted, shot: Shot): Picture {
  const { width, height, blurPx = 0.6, grain = 0, darkest = 1, light = [1, 1, 1], seed = 1 } = shot;
  const places = placesOnTable(shot);
  const rgb = [0, 1, 2].map(() => new Float32Array(width * height));
  const wide = width + 1;
  const flat = new Float32Array(table.colours.flat());
  const look = table.at;
  for (let j = 0; j < height; j++) {
    let before = -1;
    for (let i = 0; i < width; i++) {
      const k = 2 * (j * wide + i);
      const x = places[k]!, y = places[k + 1]!;
      // The pixel's two sides on the table.
      const ux = places[k + 2]! - x, uy = places[k + 3]! - y, vx = places[k + 2 * wide]! - x, vy = places[k + 2 * wide + 1]! - y;
      const upper = look(x + ux, y + uy), lower = look(x + vx, y + vy), far = look(x + ux + vx, y + uy + vy);
      const first = before >= 0 ? before : look(x, y);
      before = upper;
      let r = 0, g = 0, b = 0;
      if (first === upper && first === lower && first === far) {
        r = 9 * flat[3 * first]!;
        g = 9 * flat[3 * first + 1]!;
        b = 9 * flat[3 * first + 2]!;
      } else {
        for (let n = 0; n < 9; n++) {
          const u = ((n % 3) + 0.5) / 3, v = (Math.floor(n / 3) + 0.5) / 3;
          const c = 3 * look(x + u * ux + v * vx, y + u * uy + v * vy);
          r += flat[c]!;
          g += flat[c + 1]!;
          b += flat[c + 2]!;
        }
      }
      const shade = (1 - (1 - darkest) * (0.6 * (i / width) + 0.4 * (j / height))) / 9;
      const at = j * width + i;
      rgb[0]![at] = r * shade * light[0];
      rgb[1]![at] = g * shade * light[1];
      rgb[2]![at] = b * shade * light[2];
    }
  }
  return developed(rgb.map((c) => blurred(c, width, height, blurPx)), width, height, grain, seed);
}

/** Places on the table that are seen at the upper left corners of all pixels, one more each way; x y, mm. */
function placesOnTable(shot: Shot): Float64Array {
  const { width, height, k1 = 0, k2 = 0, shakePx = 0, seed = 1, bump } = shot;
  const { f, stand, ahead: [ax, ay, az], right: [rx, ry, rz], down: [dx, dy, dz] } = pose(shot) as { f: number; stand: number[]; ahead: [number, number, number]; right: [number, number, number]; down: [number, number, number] };
  const [sx, sy, sz] = stand as [number, number, number];
  const wide = width + 1;
  const out = new Float64Array(2 * wide * (height + 1));
  const moved = shakePx > 0 ? shakeField(width, height, shakePx, seed) : undefined;
  const shift = [0, 0];
  for (let j = 0; j <= height; j++) for (let i = 0; i <= width; i++) {
    moved?.(i, j, shift);
    // The middle of the first pixel is at 0, so its corner is half a pixel before.
    const qx = (i - 0.5 + shift[0]! - (width - 1) / 2) / f, qy = (j - 0.5 + shift[1]! - (height - 1) / 2) / f;
    let x = qx, y = qy;
    if (k1 !== 0 || k2 !== 0) for (let n = 0; n < 8; n++) {
      const r = x * x + y * y, grow = 1 + r * (k1 + r * k2);
      x = qx / grow;
      y = qy / grow;
    }
    const wx = ax + x * rx + y * dx, wy = ay + x * ry + y * dy, wz = az + x * rz + y * dz;
    let t = -sz / wz;
    if (bump) for (let n = 0; n < 4; n++) t = (bump(sx + t * wx, sy + t * wy) - sz) / wz;
    out[2 * (j * wide + i)] = sx + t * wx;
    out[2 * (j * wide + i) + 1] = sy + t * wy;
  }
  return out;
}

/** Light to the eye's scale (sRGB), 0 … 255, in steps of 1/65535 of full light: under a twentieth of a grey level. */
const encoded = Float32Array.from({ length: 65536 }, (_, i) => {
  const v = i / 65535;
  return 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
});
let grains: Float32Array | undefined;

function developed(rgb: readonly Float32Array[], width: number, height: number, grain: number, seed: number): Picture {
  // Nine million numbers of a normal kind: each is one of 65536, chosen by chance.
  const once = seeded(78);
  grains ??= Float32Array.from({ length: 65536 }, () => once.normal());
  let chosen = Math.imul(seed + 77, 2654435761) | 1;
  const rgba = new Uint8Array(4 * width * height).fill(255);
  for (let c = 0; c < 3; c++) {
    const light = rgb[c]!;
    for (let i = 0; i < width * height; i++) {
      // Numerical Recipes, quick and dirty generator; its upper half is even enough.
      chosen = (Math.imul(chosen, 1664525) + 1013904223) | 0;
      const value = encoded[Math.max(0, Math.min(65535, (65535 * light[i]! + 0.5) | 0))]! + grain * grains[chosen >>> 16]!;
      rgba[4 * i + c] = Math.max(0, Math.min(255, (value + 0.5) | 0));
    }
  }
  return { width, height, rgba };
}

function blurred(from: Float32Array, width: number, height: number, sigma: number): Float32Array {
  if (sigma <= 0) return from;
  const reach = Math.ceil(3 * sigma);
  const bell = Float64Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)));
  const sum = bell.reduce((a, b) => a + b, 0);
  const across = new Float32Array(from.length);
  for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) {
    let v = 0;
    const inside = i >= reach && i + reach < width;
    for (let n = -reach; n <= reach; n++) v += bell[n + reach]! * from[j * width + (inside ? i + n : Math.min(width - 1, Math.max(0, i + n)))]!;
    across[j * width + i] = v / sum;
  }
  const out = new Float32Array(from.length);
  for (let j = 0; j < height; j++) for (let n = -reach; n <= reach; n++) {
    const row = Math.min(height - 1, Math.max(0, j + n)) * width, weight = bell[n + reach]! / sum;
    for (let i = 0; i < width; i++) out[j * width + i] = out[j * width + i]! + weight * across[row + i]!;
  }
  return out;
}

/** Smooth random displacement: a grid of normal numbers every twelve pixels, bilinear between. */
function shakeField(width: number, height: number, sigma: number, seed: number): (x: number, y: number, out: number[]) => void {
  const cell = 12;
  const wide = Math.ceil(width / cell) + 2;
  const chance = seeded(seed);
  // Bilinear mixing lowers the variance to (2/3)² on average.
  const grid = Float32Array.from({ length: 2 * wide * (Math.ceil(height / cell) + 2) }, () => 1.5 * sigma * chance.normal());
  return (x, y, out) => {
    const i = Math.floor(x / cell), j = Math.floor(y / cell);
    const u = x / cell - i, v = y / cell - j;
    for (let c = 0; c < 2; c++) {
      const k = 2 * (j * wide + i) + c;
      out[c] = (1 - v) * ((1 - u) * grid[k]! + u * grid[k + 2]!) + v * ((1 - u) * grid[k + 2 * wide]! + u * grid[k + 2 * wide + 2]!);
    }
  };
}
