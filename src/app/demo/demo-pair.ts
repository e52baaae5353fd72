import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { valueToBytes } from "./value-bytes.ts";

/** The demonstration pair, worked out once when the app is built, so that the page opens with it. */
export function demoPairBytes(): Uint8Array {
  return valueToBytes(new Pipeline().run(defaultJob(), new Map()));
}
