import { must } from "#base/bug.ts";
import type { Law } from "./law.ts";
import { NeoHookean } from "./neo-hookean.ts";
import { ToeLaw } from "./toe-law.ts";

/** Any law in axes towards which its own are turned. */
export class Rotated implements Law {
  readonly law: Law;
  readonly cos: number;
  readonly sin: number;

  constructor(law: Law, cos: number, sin: number) {
    this.law = law;
    this.cos = cos;
    this.sin = sin;
  }

  energy(e1: number, e2: number, g: number): number {
    return this.asked((law, own1, own2, ownG) => law.energy(own1, own2, ownG), e1, e2, g);
  }

  /** What `ask` says of the law at this strain seen from the law's own axes. */
  asked(ask: (law: Law, e1: number, e2: number, g: number) => number, e1: number, e2: number, g: number): number {
    const { cos, sin } = this;
    const a = cos * cos, b = sin * sin, c = cos * sin;
    return ask(this.law, a * e1 + b * e2 + c * g, b * e1 + a * e2 - c * g, 2 * c * (e2 - e1) + (a - b) * g);
  }

  into(out: Float64Array, e1: number, e2: number, g: number): void {
    const { cos, sin } = this;
    const a = cos * cos, b = sin * sin, c = cos * sin, d = a - b;
    this.law.into(out, a * e1 + b * e2 + c * g, b * e1 + a * e2 - c * g, 2 * c * (e2 - e1) + d * g);
    const s1 = out[0]!, s2 = out[1]!, s3 = out[2]!;
    out[0] = a * s1 + b * s2 - 2 * c * s3;
    out[1] = b * s1 + a * s2 + 2 * c * s3;
    out[2] = c * (s1 - s2) + d * s3;
    // D becomes Tᵀ D T, with the columns (a, b, −2c), (b, a, 2c), (c, −c, d) of T.
    const d11 = out[3]!, d22 = out[4]!, d33 = out[5]!, d12 = out[6]!, d13 = out[7]!, d23 = out[8]!;
    const p1 = d11 * a + d12 * b - 2 * d13 * c, p2 = d12 * a + d22 * b - 2 * d23 * c, p3 = d13 * a + d23 * b - 2 * d33 * c;
    const q1 = d11 * b + d12 * a + 2 * d13 * c, q2 = d12 * b + d22 * a + 2 * d23 * c, q3 = d13 * b + d23 * a + 2 * d33 * c;
    const r1 = c * (d11 - d12) + d13 * d, r2 = c * (d12 - d22) + d23 * d, r3 = c * (d13 - d23) + d33 * d;
    out[3] = a * p1 + b * p2 - 2 * c * p3;
    out[4] = b * q1 + a * q2 + 2 * c * q3;
    out[5] = c * (r1 - r2) + d * r3;
    out[6] = a * q1 + b * q2 - 2 * c * q3;
    out[7] = a * r1 + b * r2 - 2 * c * r3;
    out[8] = b * r1 + a * r2 + 2 * c * r3;
  }
}

/** Layers that are stretched alike; their forces add up. */
class Sum implements Law {
  readonly laws: readonly Law[];
  private readonly one = new Float64Array(9);

  constructor(laws: readonly Law[]) {
    this.laws = laws;
  }

  energy(e1: number, e2: number, g: number): number {
    let sum = 0;
    for (let i = 0; i < this.laws.length; i++) sum += this.laws[i]!.energy(e1, e2, g);
    return sum;
  }

  into(out: Float64Array, e1: number, e2: number, g: number): void {
    const { laws, one } = this;
    laws[0]!.into(out, e1, e2, g);
    for (let i = 1; i < laws.length; i++) {
      laws[i]!.into(one, e1, e2, g);
      // Written out: a loop takes a third longer.
      out[0]! += one[0]!;
      out[1]! += one[1]!;
      out[2]! += one[2]!;
      out[3]! += one[3]!;
      out[4]! += one[4]!;
      out[5]! += one[5]!;
      out[6]! += one[6]!;
      out[7]! += one[7]!;
      out[8]! += one[8]!;
    }
  }
}

/**
 * The same sheet with its axis 1 turned by the angle of (cos, sin), counter-clockwise in the axes that strains are then given in.
 * @param cos,sin of that angle; cos² + sin² = 1
 */
export function rotated(law: Law, cos: number, sin: number): Law {
  if (law instanceof NeoHookean) return law;
  if (law instanceof ToeLaw) return law.turned(cos, sin);
  if (law instanceof Sum) return new Sum(law.laws.map((one) => rotated(one, cos, sin)));
  if (law instanceof Rotated) return new Rotated(law.law, law.cos * cos - law.sin * sin, law.sin * cos + law.cos * sin);
  return new Rotated(law, cos, sin);
}

/** Layers on one another, at least one, that are stretched alike, as one sheet. */
export function sumOf(laws: readonly Law[]): Law {
  must(laws.length > 0, "a sheet has a layer");
  return laws.length === 1 ? laws[0]! : new Sum(laws);
}
