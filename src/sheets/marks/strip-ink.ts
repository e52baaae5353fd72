import { textWidth } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";

/** How a strip lies on the page: to the right, or upward with its measuring edge on the right or on the left, as it lies on an outer side whose toe points right, and on its mirror. */
export type StripLie = "right" | "up, edge right" | "up, edge left";

/** Draws in a strip's own measures: `u` from its zero along the measuring edge, `v` away from that edge; words read with the edge below. */
export class StripInk {
  readonly #ink: PageInk;
  readonly #x: number;
  readonly #y: number;
  readonly #lie: StripLie;

  constructor(ink: PageInk, x: number, y: number, lie: StripLie) {
    this.#ink = ink;
    this.#x = x;
    this.#y = y;
    this.#lie = lie;
  }

  #at(u: number, v: number): readonly [number, number] {
    if (this.#lie === "right") return [this.#x + u, this.#y + v];
    return [this.#lie === "up, edge right" ? this.#x - v : this.#x + v, this.#y + u];
  }

  /** Words are read against the way in which `u` counts. */
  get backward(): boolean {
    return this.#lie === "up, edge left";
  }

  line(u0: number, v0: number, u1: number, v1: number): void {
    this.#ink.line(...this.#at(u0, v0), ...this.#at(u1, v1));
  }

  named(name: string, u0: number, v0: number, u1: number, v1: number): void {
    this.#ink.named(name, () => this.line(u0, v0, u1, v1));
  }

  ring(uv: readonly number[]): void {
    const xy: number[] = [];
    for (let i = 0; i < uv.length; i += 2) xy.push(...this.#at(uv[i]!, uv[i + 1]!));
    this.#ink.stroke(xy, true);
  }

  style(widthMm: number, dashMm: readonly number[] = []): void {
    this.#ink.style(widthMm, dashMm);
  }

  /** Words that take up the room from `u` on, base line at `v`. */
  words(text: string, u: number, v: number, heightMm: number, bold = false): void {
    // With the edge on the left they are read downward, so they begin at their far end.
    const start = this.backward ? u + textWidth(text, heightMm, bold) : u;
    const [x, y] = this.#at(start, v);
    this.#ink.text(text, x, y, heightMm, { bold, angleDeg: this.#lie === "right" ? 0 : this.#lie === "up, edge right" ? 90 : -90 });
  }
}
