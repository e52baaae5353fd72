// All pieces of a pair after its shell lies flat: lining and heel part laid flat, panels where the cut has them, edges faired, every
// piece drawn, both sides made and looked over. Each run follows a new throat, so that nothing above the bottom is taken over. The peer is the
// shell's own way to flat in the same run: laid free, its topline drawn.
// Aims on one thread of a 2-core machine: a whole-cut pair in under 150 ms, 30 pieces with lining and bottom in under 400 ms.
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import type { Job } from "#job/job.ts";

const runs = 9;
const after = ["panels", "lining", "heel part", "heel", "pieces"] as const;
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
const sum = (times: Readonly<Record<string, number>>, stages: readonly string[]): number => stages.reduce((ms, stage) => ms + (times[stage] ?? 0), 0);
/** The processor's own time, which on a shared machine is nearer to a quiet one's; ms. */
const processor = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

function measure(name: string, parts: Job["parts"]): void {
  const pipeline = new Pipeline();
  const job = { ...defaultJob(), parts };
  const run = (k: number) => pipeline.run({ ...job, lines: { throatDepthMm: 70 + k / 10 } }, new Map(), { now: processor });
  const first = run(0);
  const laid: number[] = [], cut: number[] = [], shares = new Map<string, number[]>();
  for (let k = 1; k <= runs; k++) {
    const { timesMs } = run(k);
    laid.push(sum(timesMs, ["flatten", "tension"]));
    cut.push(sum(timesMs, after));
    for (const stage of after) if (timesMs[stage] !== undefined) shares.set(stage, [...(shares.get(stage) ?? []), timesMs[stage]]);
  }
  const pieces = first.pieces.filter((p) => p.side === "right").length;
  const stages = [...shares].map(([stage, ms]) => `${stage} ${median(ms).toFixed(0)}`).join(", ");
  console.log(
    `${name.padEnd(34)} ${String(pieces).padStart(3)} pieces a shoe: ${median(cut).toFixed(0).padStart(4)} ms (${stages}), the first time ${sum(first.timesMs, after).toFixed(0)}; ${(median(cut) / median(laid)).toFixed(1)} times the shell's way to flat`,
  );
  const edit: number[] = [];
  for (let k = 1; k <= runs; k++) edit.push(sum(pipeline.run({ ...job, lines: { throatDepthMm: 70 + runs / 10 }, pieces: { toplineFoldMm: 4 + k / 100 } }, new Map(), { now: processor }).timesMs, ["pieces"]));
  console.log(`${"".padEnd(34)} after an edit of the fold ${median(edit).toFixed(0)} ms`);
}

measure("whole cut, lined in one", { lining: "one" });
measure("whole cut, lined in three", {});
measure("inner seam, lined in three", { cut: "inner-seam" });
measure("quarters with every extra", { cut: "quarters", seam: "lapped", backStrip: true, toeCap: true, strap: true, gore: true, bow: true, sideLining: true });
