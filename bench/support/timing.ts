/** Times of one piece of work, ms: best and worst of three medians of five, and the best median of the processor's own time. */
export interface Timing {
  readonly best: number;
  readonly worst: number;
  /** On a shared machine nearer to a quiet one's. */
  readonly processor: number;
}

const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Runs the work once to warm the engine up, then three times `runs`: medians of so many. */
export function timed(work: () => unknown, runs = 5): Timing {
  work();
  const rounds = Array.from({ length: 3 }, () => {
    const times = Array.from({ length: runs }, () => {
      const [wall, processor] = [performance.now(), processorMs()];
      work();
      return [performance.now() - wall, processorMs() - processor] as const;
    });
    return [0, 1].map((k) => times.map((t) => t[k]!).sort((a, b) => a - b)[runs >> 1]!);
  });
  const [wall, processor] = [0, 1].map((k) => rounds.map((r) => r[k]!).sort((a, b) => a - b));
  return { best: wall![0]!, worst: wall![2]!, processor: processor![0]! };
}

export const shown = ({ best, worst, processor }: Timing): string => `${best.toFixed(1)} (… ${worst.toFixed(1)}; ${processor.toFixed(0)})`.padEnd(26);

/** Exponent x of times ∝ n^x, by least squares over the logarithms. */
export function growth(sizes: readonly number[], times: readonly number[]): number {
  const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  const [x, y] = [sizes.map(Math.log), times.map(Math.log)];
  const [mx, my] = [mean(x), mean(y)];
  return x.reduce((sum, v, k) => sum + (v - mx) * (y[k]! - my), 0) / x.reduce((sum, v) => sum + (v - mx) ** 2, 0);
}
