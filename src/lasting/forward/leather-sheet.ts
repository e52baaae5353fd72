import { must } from "#base/bug.ts";
import { unwatched } from "#base/watch.ts";
import type { Law } from "#leather/law.ts";
import { ofVertices, pointsAt } from "#wrap/sheet-points.ts";
import { sheetOf, type Sheet, type SheetInput } from "#wrap/sheet.ts";
import { Bars, type BarsInput } from "./bars.ts";
import { Contact } from "./contact.ts";
import type { Form } from "./form.ts";
import { Friction } from "./friction.ts";
import { Holds } from "./holds.ts";
import { LawMembrane, type TriangleState } from "./law-membrane.ts";
import { awayFrom, tornAt } from "./gone-wrong.ts";
import { Newton } from "./newton.ts";
import type { Settled, SettleOptions, Unsettled } from "./settled.ts";

/** A sheet of leather and the form it is pulled over. */
export interface LeatherSheetInput {
  /** Triangles, flat, vertices sewn together (`taped`), held, and guided ones; `pushed` does not count, the law says it. */
  readonly sheet: SheetInput;
  /** Energy per area of the flat sheet, convex in Green's strain. */
  readonly law: Law;
  /** cos and sin of the turn from the flat's +x to the law's axis 1, a pair a triangle; left out: along +x everywhere. */
  readonly axes?: Float64Array;
  /** Bending stiffness per width, N·mm. */
  readonly bend: number;
  /** Threads along edges of the sheet, as a tape in the topline. */
  readonly bars?: BarsInput;
  /** The rigid form; left out, the sheet hangs free. A Ground of src/wrap is one. */
  readonly form?: Form;
  /** Coulomb friction on the form, as a share of the normal force; may be changed later. */
  readonly friction?: number;
  /** Pressure per depth with which the form resists being entered, N/mm³: p on the form goes in by p / this. */
  readonly formStiffness?: number;
  /** Pressure of light hands toward the form, N/mm²; may be changed later. */
  readonly press?: number;
  /** Stiffness of the guides, N/mm. */
  readonly guideStiffness?: number;
  /** Principal stretch, 1.4 for 40 %, above which the sheet counts as torn. */
  readonly breakStretch?: number;
}

const FORM_STIFFNESS = 50;
const HOLD_STIFFNESS = 500;
const TOLERANCE_MM = 0.01;
const RESIDUAL_N = 0.01;
const MOST_STEPS = 200;
/** With this much to spare single steps need not be exact, mm. */
const HASTE_MM = 0.1;
/** Drag on every move in a step's matrix, N/mm³: far below the stiffness of any move that matters. It changes the way, not the rest. */
const DRAG = 1e-5;

/**
 * A flat sheet of leather that is pulled over a rigid form, quasi-static: membrane of any convex law, small bending, threads, contact
 * from one side, Coulomb friction, dead forces and tacks. Everything that goes in and comes out is by vertex of the sheet; vertices sewn
 * together share one place, and forces on either act on both. Method, sources and limits: docs/method/pull-over.md.
 *
 * Use: set {@link load}, {@link tack} or {@link free}, then {@link settle}; {@link begin} before each increment of load. Each settle starts from
 * where the sheet is.
 */
export class LeatherSheet {
  /** Dead force on each vertex, x y z N; write into it. */
  readonly load: Float64Array;
  readonly #sheet: Sheet;
  readonly #x: Float64Array;
  readonly #membrane: LawMembrane;
  readonly #bars: Bars | undefined;
  readonly #contact: Contact;
  readonly #friction: Friction;
  readonly #holds: Holds;
  readonly #newton: Newton;
  readonly #breakStretch: number;
  /** Vertex that stands for a point's tack, −1 for none. */
  readonly #tackOf: Int32Array;

  /** `start`: x y z of each vertex, mm; vertices sewn together meet half way. */
  constructor(input: LeatherSheetInput, start: Float64Array) {
    const sheet = sheetOf(input.sheet);
    must(start.length === 3 * sheet.pointOf.length, "a place for every vertex");
    this.#sheet = sheet;
    this.load = new Float64Array(start.length);
    this.#x = pointsAt(sheet, start);
    this.#membrane = new LawMembrane(sheet, input.sheet, input.law, input.axes);
    this.#bars = input.bars && new Bars(sheet, input.sheet, input.bars);
    this.#contact = new Contact(sheet, input.form, input.formStiffness ?? FORM_STIFFNESS, input.press ?? 0);
    this.#friction = new Friction(sheet, this.#contact, input.friction ?? 0, this.#x);
    this.#holds = new Holds(sheet, this.#x, input.guideStiffness ?? HOLD_STIFFNESS);
    this.#newton = new Newton({ sheet, membrane: this.#membrane, bend: input.bend, bars: this.#bars, contact: this.#contact, friction: this.#friction, holds: this.#holds }, this.#x, DRAG);
    this.#breakStretch = input.breakStretch ?? Infinity;
    this.#tackOf = new Int32Array(sheet.points).fill(-1);
    this.#contact.follow(this.#x);
  }

  get vertices(): number {
    return this.#sheet.pointOf.length;
  }

  /** Coulomb friction, as a share. */
  set friction(share: number) {
    this.#friction.share = share;
  }

  /** Pressure of light hands toward the form, N/mm². */
  set press(pressure: number) {
    this.#contact.press = pressure;
  }

  /** x y z of each vertex, mm. */
  positions(): Float64Array {
    return this.#ofVertices(this.#x, 3);
  }

  /** Lays the sheet down at these places, x y z of each vertex; friction forgets where it came from. Tacks stay as they are. */
  place(positions: Float64Array): void {
    this.#x.set(pointsAt(this.#sheet, positions));
    this.#friction.forget(this.#x);
    this.#contact.follow(this.#x);
  }

  /**
   * Begins an increment: from here on the sheet slides against friction from where it lies now. At rest nothing moves by it. Without it a
   * settle goes on with the increment before.
   */
  begin(): void {
    this.#contact.follow(this.#x);
    this.#friction.begin(this.#x);
  }

  /**
   * Tacks vertices where they are, or at the places `at` (x y z of each of them): stiff springs, N/mm. Where they are, a tack takes over the
   * load of its point, so that nothing moves, and the load becomes 0.
   */
  tack(vertices: Iterable<number>, { stiffness = HOLD_STIFFNESS, at }: { readonly stiffness?: number; readonly at?: Float64Array } = {}): void {
    const load = this.#pointLoad();
    const taken = new Set<number>();
    let k = 0;
    for (const v of vertices) {
      const p = this.#sheet.pointOf[v]!;
      const place = [0, 1, 2].map((d) => at?.[3 * k + d] ?? this.#x[3 * p + d]! + (load[3 * p + d]! + this.#holds.tackForce(this.#x, p, d)) / stiffness) as [number, number, number];
      k++;
      if (taken.has(p)) continue;
      taken.add(p);
      this.#holds.tack(p, stiffness, ...place);
      this.#tackOf[p] = v;
    }
    if (at === undefined) for (let v = 0; v < this.vertices; v++) if (taken.has(this.#sheet.pointOf[v]!)) this.load.fill(0, 3 * v, 3 * v + 3);
  }

  /** Takes the tacks of these vertices out. */
  free(vertices: Iterable<number>): void {
    for (const v of vertices) {
      const p = this.#sheet.pointOf[v]!;
      this.#holds.free(p);
      this.#tackOf[p] = -1;
    }
  }

  /** Lets the sheet come to rest. Never ends without saying how far it came: not settled, `why` tells. Positions are always finite. */
  settle({ toleranceMm = TOLERANCE_MM, residualN = RESIDUAL_N, mostSteps = MOST_STEPS, farthestMm = Infinity, watch = unwatched }: SettleOptions = {}): Settled {
    this.#holds.load.set(this.#pointLoad());
    this.#newton.reset(toleranceMm >= HASTE_MM);
    const start = this.#x.slice();
    let moveMm = Infinity, rested = false;
    for (let steps = 0; ; steps++) {
      const residual = this.#newton.look();
      const ended = (why?: Unsettled): Settled => ({ settled: why === undefined, ...(why && { why }), steps, moveMm, residualN: residual });
      if (rested && residual < residualN) return ended();
      const wrong = (this.#breakStretch < Infinity ? tornAt(this.strains().most, this.#breakStretch) : undefined) ?? awayFrom(this.#x, start, farthestMm, this.#sheet);
      if (wrong) return ended(wrong);
      if (steps === mostSteps) return ended({ what: "slow" });
      const step = this.#newton.step();
      // A step cut short says nothing about the way that is left.
      moveMm = step.moveMm;
      if (step.part === 0) return ended({ what: "stuck" });
      rested = step.moveMm < toleranceMm * step.part * step.trust;
      watch("pull over", steps / mostSteps);
    }
  }

  /** Force with which each tack holds its vertex, x y z N; 0 where there is none. Of vertices sewn together the one that was tacked first carries it. */
  tackForces(): Float64Array {
    const forces = new Float64Array(3 * this.vertices);
    this.#tackOf.forEach((v, p) => {
      if (v >= 0) for (let d = 0; d < 3; d++) forces[3 * v + d] = this.#holds.tackForce(this.#x, p, d);
    });
    return forces;
  }

  /** Height of each vertex over the form, mm; a trifle below 0 where it is pressed in. Not a number without a form. */
  heights(): Float64Array {
    return this.#perPoint((p) => this.#contact.height(this.#x, p));
  }

  /** Nearest point of the form, x y z of each vertex. */
  feet(): Float64Array {
    return this.#ofVertices(this.#contact.foot, 3);
  }

  /** Outward unit normal of the form there, x y z of each vertex. */
  normals(): Float64Array {
    const { plane } = this.#contact;
    return this.#ofVertices(Float64Array.from({ length: 3 * this.#sheet.points }, (_, k) => plane[4 * Math.floor(k / 3) + (k % 3)]!), 3);
  }

  /** Pressure of the form at each vertex, N per mm² of flat sheet, never below 0. */
  pressures(): Float64Array {
    return this.#perPoint((p) => this.#contact.force(this.#x, p) / this.#sheet.areas[p]!);
  }

  /** Normal force of the form on each vertex's point, N; vertices sewn together show the same, whole force. */
  normalForces(): Float64Array {
    return this.#perPoint((p) => this.#contact.force(this.#x, p));
  }

  /** Force of friction on each vertex's point, x y z N; vertices sewn together show the same, whole force. */
  frictionForces(): Float64Array {
    return this.#ofVertices(this.#friction.forces(this.#x), 3);
  }

  /** Stretches and tensions of every triangle. */
  strains(): TriangleState {
    return this.#membrane.state(this.#x);
  }

  /** Force in each piece of the threads, N, above 0 where it pulls. */
  barForces(): Float64Array {
    return this.#bars?.forces(this.#x) ?? new Float64Array(0);
  }

  #pointLoad(): Float64Array {
    const load = new Float64Array(3 * this.#sheet.points);
    this.#sheet.pointOf.forEach((p, v) => {
      for (let d = 0; d < 3; d++) load[3 * p + d]! += this.load[3 * v + d]!;
    });
    return load;
  }

  #perPoint(value: (p: number) => number): Float64Array {
    return this.#ofVertices(Float64Array.from({ length: this.#sheet.points }, (_, p) => value(p)), 1);
  }

  #ofVertices(values: Float64Array, each: number): Float64Array {
    return ofVertices(this.#sheet, values, each);
  }
}
