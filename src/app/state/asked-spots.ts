import type { Job } from "#job/job.ts";
import type { Point3 } from "#last/last.ts";
import type { LandmarkName } from "#last/said.ts";
import { toLast } from "./file-place.ts";
import { pointKeys } from "./point-names.ts";
import type { SeenLast } from "./seen-last.ts";
import { saidOf } from "./scan-edits.ts";

/** Where the maker has put things, in the frame of the last that is shown; the last itself may still be behind. */
interface AskedSpots {
  readonly pulls: readonly Point3[];
  /** Pulls that the line shown does not know of yet. */
  readonly newPulls: readonly Point3[];
  readonly points: Readonly<Record<LandmarkName, Point3>>;
  /** Points placed by hand. */
  readonly placed: ReadonlySet<LandmarkName>;
}

export function askedSpots(job: Job, { job: shown, last }: Pick<SeenLast, "job" | "last">): AskedSpots {
  const said = saidOf(job);
  const known = new Set((saidOf(shown).featherThrough ?? []).map(String));
  const here = (p: Point3): Point3 => toLast(last.placement, p);
  const through = said.featherThrough ?? [];
  const behind = job.last !== shown.last;
  const points = Object.fromEntries(pointKeys.map((name) => {
    const placed = said.landmarks?.[name];
    // What is shown has been brought on to the line that the point belongs to.
    return [name, placed && behind ? here(placed) : last.landmarks[name]];
  })) as Record<LandmarkName, Point3>;
  return {
    pulls: through.map(here),
    newPulls: through.filter((p) => !known.has(String(p))).map(here),
    points,
    placed: new Set(pointKeys.filter((name) => said.landmarks?.[name] !== undefined)),
  };
}
