/**
 * Truth for a woven sheet that does not stretch along its threads: the Chebyshev net on a ball of radius 1 whose two threads through the
 * pole are great circles at right angles. With u, v the lengths along the threads and ω the angle between them, Gauss's curvature 1 asks
 * for ω_uv = −sin ω (Chebyshev 1878, Sur la coupe des vêtements; from memory), and a great circle does not turn in the surface, so
 * ω = π/2 on both axes. Those data stay the same when u grows and v shrinks alike, so ω hangs on z = uv alone:
 *   (z ω′)′ = −sin ω,   ω(0) = π/2.
 * Solved by its power series: with sin ω = Σ sₙ zⁿ, cos ω = Σ cₙ zⁿ: (n + 1)² aₙ₊₁ = −sₙ. Shares nothing with the sheet.
 */
export class ChebyshevNet {
  readonly #terms: readonly number[];

  constructor(terms = 80) {
    const a = [Math.PI / 2], s = [1], c = [0];
    for (let n = 0; n + 1 < terms; n++) {
      a.push(-s[n]! / (n + 1) ** 2);
      // sin′ = ω′ cos, cos′ = −ω′ sin, term by term.
      let up = 0, down = 0;
      for (let k = 1; k <= n + 1; k++) [up, down] = [up + k * a[k]! * c[n + 1 - k]!, down - k * a[k]! * s[n + 1 - k]!];
      s.push(up / (n + 1));
      c.push(down / (n + 1));
    }
    this.#terms = a;
  }

  /** Angle between the threads at (u, v), lengths over the ball's radius; |uv| below 1. */
  angle(u: number, v: number): number {
    return this.#terms.reduceRight((sum, term) => sum * u * v + term, 0);
  }

  /** How far off the series is at z: what its last term adds. */
  lastTerm(z: number): number {
    return Math.abs(this.#terms.at(-1)! * z ** (this.#terms.length - 1));
  }

  /**
   * Way from the pole to the place u = v = s along the great circle between the threads, over the ball's radius: by mirror the diagonal
   * goes along it, 2 cos(ω/2) for each ds. Simpson's rule.
   */
  diagonal(s: number, parts = 400): number {
    const at = (k: number): number => 2 * Math.cos(this.angle((s * k) / parts, (s * k) / parts) / 2);
    let sum = at(0) + at(parts);
    for (let k = 1; k < parts; k++) sum += (k % 2 === 0 ? 2 : 4) * at(k);
    return (sum * s) / parts / 3;
  }
}
