import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Law } from "./law.ts";

/**
 * What a strip test tells about a leather, as numbers. Stiffnesses are forces per width of a strip against its own Green's strain once
 * it is past its soft beginning, N/mm.
 */
export interface LeatherNumbers {
  /** Along the direction of least stretch, across it, and at 45 degrees between them. */
  readonly along: number;
  readonly across: number;
  readonly bias: number;
  /** How much a strip cut along gets narrower for each share that it gets longer. */
  readonly poisson: number;
  /** Strain along that is used up before the fibres bear: the straight part of the curve, run back, meets the axis here. */
  readonly toe: number;
  /** Share of the stiffness that is there from the beginning, above 0 and at most 1: 1 is a straight line. */
  readonly early: number;
}

/** The law's form: Q = c11 e1² + c22 e2² + 2 c12 e1 e2 + c33 g², scaled so that a strip along has Q = e². */
export interface StrainForm {
  readonly c11: number;
  readonly c22: number;
  readonly c12: number;
  readonly c33: number;
}

/**
 * Form of an orthotropic sheet in plane stress from the stiffness of three strips; 1/G = 4/k₄₅ − 1/k₁ − 1/k₂ + 2ν/k₁ (Jones, Mechanics of
 * Composite Materials; from memory).
 * @throws Refusal `leather-law-impossible` where it is not convex
 */
export function strainForm({ along, across, bias, poisson }: LeatherNumbers): StrainForm {
  const slip = 4 / bias - 1 / along - 1 / across + (2 * poisson) / along;
  const room = 1 - (poisson * poisson * across) / along;
  if (!(along > 0 && across > 0 && bias > 0 && slip > 0 && room > 0)) throw new Refusal(finding("leather-law-impossible", { along, across, bias, poisson }));
  return { c11: 1 / room, c22: across / along / room, c12: (poisson * across) / along / room, c33: 1 / slip / along };
}

/**
 * Leather as an orthotropic sheet that is soft at first: W = k (early/2 Q + (1 − early)/2 (√(Q + toe²) − toe)²), k = `along`. Convex, its
 * stiffness grows from early · k to k and never beyond, and a strip across or at an angle has the same curve with its own scale. Only
 * + − × ÷ √, so that it comes out alike on every machine. Method and limits: docs/method/leather-law.md.
 */
export class ToeLaw implements Law {
  readonly #form: StrainForm;
  readonly #k: number;
  readonly #toe: number;
  readonly #early: number;

  /** @throws Refusal `leather-law-impossible` where the numbers make no convex law */
  constructor(numbers: LeatherNumbers) {
    const { along, across, bias, poisson, toe, early } = numbers;
    this.#form = strainForm(numbers);
    if (!(toe >= 0 && early > 0 && early <= 1)) throw new Refusal(finding("leather-law-impossible", { along, across, bias, poisson }));
    this.#k = along;
    this.#toe = toe;
    this.#early = early;
  }

  energy(e1: number, e2: number, g: number): number {
    const { c11, c22, c12, c33 } = this.#form;
    const q = c11 * e1 * e1 + c22 * e2 * e2 + 2 * c12 * e1 * e2 + c33 * g * g;
    const past = Math.sqrt(q + this.#toe * this.#toe) - this.#toe;
    return 0.5 * this.#k * (this.#early * q + (1 - this.#early) * past * past);
  }

  into(out: Float64Array, e1: number, e2: number, g: number): void {
    const { c11, c22, c12, c33 } = this.#form;
    const q1 = c11 * e1 + c12 * e2, q2 = c22 * e2 + c12 * e1, q3 = c33 * g;
    const root = Math.sqrt(q1 * e1 + q2 * e2 + q3 * g + this.#toe * this.#toe);
    // Secant a = k (early + (1 − early)(1 − toe/root)); it grows by b Q/2 with b = k (1 − early) toe/root³.
    const soft = root > 0 ? this.#toe / root : 0;
    const a = this.#k * (1 - (1 - this.#early) * soft);
    const b = root > 0 ? (this.#k * (1 - this.#early) * soft) / (root * root) : 0;
    out[0] = a * q1;
    out[1] = a * q2;
    out[2] = a * q3;
    out[3] = a * c11 + b * q1 * q1;
    out[4] = a * c22 + b * q2 * q2;
    out[5] = a * c33 + b * q3 * q3;
    out[6] = a * c12 + b * q1 * q2;
    out[7] = b * q1 * q3;
    out[8] = b * q2 * q3;
  }
}
