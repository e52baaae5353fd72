import type { Form } from "#lasting/forward/form.ts";

/** The ball of this radius round the origin, by its formula. */
export function sphereForm(radius: number): Form {
  return {
    planesInto(plane, foot, _near, x, bend) {
      for (let i = 0; 3 * i < x.length; i++) {
        const r = Math.sqrt(x[3 * i]! ** 2 + x[3 * i + 1]! ** 2 + x[3 * i + 2]! ** 2);
        for (let d = 0, k = 6 * i; d < 3; d++) {
          const n = x[3 * i + d]! / r;
          plane[4 * i + d] = n;
          foot[3 * i + d] = radius * n;
          for (let e = 0; e <= d; e++, k++) bend[k] = ((d === e ? 1 : 0) - (n * x[3 * i + e]!) / r) / radius;
        }
        plane[4 * i + 3] = radius;
      }
    },
  };
}
