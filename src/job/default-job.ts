import { demoMeasurements } from "#last/demo.ts";
import type { Side } from "#last/last.ts";
import type { TapeSaid } from "#tape/said.ts";
import type { Job } from "./job.ts";

const fresh = { format: "lastwise job", version: 6, lines: {}, shell: {}, pieces: {}, parts: {}, leather: {}, lasting: {}, log: [], making: {}, sheets: {} } as const;

/** The example pair: an invented last from invented measurements. */
export function defaultJob(): Job {
  return { ...fresh, title: "Example pair", size: "EU 38", last: { from: "measures", measures: demoMeasurements } };
}

/** A title out of a file's name. */
const titleFrom = (file: string): string => [...file.replace(/\.[^.]*$/, "").replace(/[_-]+/g, " ").trim()].slice(0, 80).join("") || "My pair";

/** A new job on a scan; title from the file's name, size from the last itself. */
export function jobForScan(file: string, side?: Side): Job {
  return { ...fresh, title: titleFrom(file), size: "", last: side ? { from: "scan", file, said: { side } } : { from: "scan", file } };
}

/** A new job on pictures of a taped pattern; title from the first one's name. */
export function jobForTape(tape: TapeSaid): Job {
  return { ...fresh, title: titleFrom(tape.photos[0] ?? ""), size: "", last: { from: "tape", tape } };
}
