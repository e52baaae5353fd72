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

/**
 * The law's form, a quadratic of the strain: Q = c11 e1² + c22 e2² + c33 g² + 2 (c12 e1 e2 + c13 e1 g + c23 e2 g), scaled so that a strip
 * along has Q = e². In the leather's own axes c13 and c23 are 0.
 */
export interface StrainForm {
  readonly c11: number;
  readonly c22: number;
  readonly c33: number;
  readonly c12: number;
  readonly c13: number;
  readonly c23: number;
}

/**
 * Form of an orthotropic sheet in plane stress from the stiffness of three strips; 1/G = 4/k₄₅ − 1/k₁ − 1/k₂ + 2ν/k₁ (Jones, Mechanics of
 * Composite Materials; from memory).
 * @throws Refusal `leather-law-impossible` where it is not convex
 */
export function strainForm({ along, across, bias, poisson }: LeatherNumbers): StrainForm {
  const slip = 4 / bias - 1 / along - 1 / across + (2 * poisson) / along;
  const room = 1 - (poisson * poisson * across) / along;
  const real = [along, across, bias, poisson].every(Number.isFinite);
  if (!(real && along > 0 && across > 0 && bias > 0 && slip > 0 && room > 0)) throw new Refusal(finding("leather-law-impossible", { along, across, bias, poisson }));
  return { c11: 1 / room, c22: across / along / room, c33: 1 / slip / along, c12: (poisson * across) / along / room, c13: 0, c23: 0 };
}

/** The same form in axes towards which the leather's own axis 1 is turned by the angle of (cos, sin), counter-clockwise. */
function turnedForm(f: StrainForm, cos: number, sin: number): StrainForm {
  const a = cos * cos, b = sin * sin, c = cos * sin, d = a - b;
  // Columns: what e1, e2 and g of the outer axes are in the leather's own.
  const columns = [[a, b, -2 * c], [b, a, 2 * c], [c, -c, d]] as const;
  const between = ([x1, x2, x3]: readonly [number, number, number], [y1, y2, y3]: readonly [number, number, number]) =>
    f.c11 * x1 * y1 + f.c22 * x2 * y2 + f.c33 * x3 * y3 + f.c12 * (x1 * y2 + x2 * y1) + f.c13 * (x1 * y3 + x3 * y1) + f.c23 * (x2 * y3 + x3 * y2);
  const [p, q, r] = columns;
  return { c11: between(p, p), c22: between(q, q), c33: between(r, r), c12: between(p, q), c13: between(p, r), c23: between(q, r) };
}

/**
 * Leather as an orthotropic sheet that is soft at first: W = k (early/2 Q + (1 − early)/2 (√(Q + toe²) − toe)²), k = `along`. Convex, its
 * stiffness grows from early · k to k and never beyond, and a strip across or at an angle has the same curve with its own scale. Only
 * + − × ÷ √, so that it comes out alike on every machine. Method and limits: docs/method/leather-law.md.
 */
export class ToeLaw implements Law {
  readonly numbers: LeatherNumbers;
  readonly form: StrainForm;
  // The form once more as numbers of the object itself: read a hundred thousand times a second.
  private readonly c11: number;
  private readonly c22: number;
  private readonly c33: number;
  private readonly c12: number;
  private readonly c13: number;
  private readonly c23: number;
  private readonly k: number;
  private readonly toe: number;
  private readonly late: number;

  /**
   * @param form the form in other axes than the leather's own; made from the numbers where left out
   * @throws Refusal `leather-law-impossible` where the numbers make no convex law
   */
  constructor(numbers: LeatherNumbers, form: StrainForm = strainForm(numbers)) {
    const { along, across, bias, poisson, toe, early } = numbers;
    if (!(toe >= 0 && toe < Infinity && early > 0 && early <= 1)) throw new Refusal(finding("leather-law-impossible", { along, across, bias, poisson }));
    this.numbers = numbers;
    this.form = form;
    this.c11 = form.c11;
    this.c22 = form.c22;
    this.c33 = form.c33;
    this.c12 = form.c12;
    this.c13 = form.c13;
    this.c23 = form.c23;
    this.k = along;
    this.toe = toe > 1e-9 ? toe : 0; // less is none, and its square would vanish
    this.late = 1 - early;
  }

  /** The same leather with its axis 1 turned by the angle of (cos, sin), counter-clockwise. */
  turned(cos: number, sin: number): ToeLaw {
    return new ToeLaw(this.numbers, turnedForm(this.form, cos, sin));
  }

  energy(e1: number, e2: number, g: number): number {
    const q1 = this.c11 * e1 + this.c12 * e2 + this.c13 * g, q2 = this.c12 * e1 + this.c22 * e2 + this.c23 * g, q3 = this.c13 * e1 + this.c23 * e2 + this.c33 * g;
    const q = q1 * e1 + q2 * e2 + q3 * g;
    const root = Math.sqrt(q + this.toe * this.toe);
    // √(Q + toe²) − toe without taking nearly equal numbers from one another.
    const past = root > 0 ? q / (root + this.toe) : 0;
    return 0.5 * this.k * ((1 - this.late) * q + this.late * past * past);
  }

  into(out: Float64Array, e1: number, e2: number, g: number): void {
    const { c11, c22, c33, c12, c13, c23, toe } = this;
    const q1 = c11 * e1 + c12 * e2 + c13 * g, q2 = c12 * e1 + c22 * e2 + c23 * g, q3 = c13 * e1 + c23 * e2 + c33 * g;
    const root = Math.sqrt(q1 * e1 + q2 * e2 + q3 * g + toe * toe);
    // Secant a = k (early + late (1 − toe/root)); it grows by b Q/2 with b = k late toe/root³.
    const soft = root > 0 ? toe / root : 0;
    const a = this.k * (1 - this.late * soft);
    const b = root > 0 ? (this.k * this.late * soft) / (root * root) : 0;
    out[0] = a * q1;
    out[1] = a * q2;
    out[2] = a * q3;
    out[3] = a * c11 + b * q1 * q1;
    out[4] = a * c22 + b * q2 * q2;
    out[5] = a * c33 + b * q3 * q3;
    out[6] = a * c12 + b * q1 * q2;
    out[7] = a * c13 + b * q1 * q3;
    out[8] = a * c23 + b * q2 * q3;
  }
}

/** A leather without a soft beginning: force and Green's strain in proportion. */
export function linearLaw(numbers: Pick<LeatherNumbers, "along" | "across" | "bias" | "poisson">): ToeLaw {
  return new ToeLaw({ ...numbers, toe: 0, early: 1 });
}

/** The same leather `factor` times as thick: every force grows with it. */
export function thicker(numbers: LeatherNumbers, factor: number): LeatherNumbers {
  return { ...numbers, along: numbers.along * factor, across: numbers.across * factor, bias: numbers.bias * factor };
}

/** A leather that has `factor` times the strain under the same stress, in every direction. */
export function givingMore(numbers: LeatherNumbers, factor: number): LeatherNumbers {
  return { ...thicker(numbers, 1 / factor), toe: numbers.toe * factor };
}
