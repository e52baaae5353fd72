import type { Need } from "../need.ts";
import type { ThreadNeed } from "../thread/thread-need.ts";
import { bladeMm } from "../thread/needle-sizes.ts";
import { denierOfTex, texToCottonTicket } from "../thread/thread-numbers.ts";
import { wasteOf } from "./waste.ts";

/** The thread of all seams and the needle for it. */
export function sewingNeeds(thread: ThreadNeed): readonly Need[] {
  const { seams, needle } = thread;
  if (seams.length === 0) return [];
  const parts = seams.map(({ name, threadMm }) => ({ name, perPair: 2, net: threadMm }));
  const net = parts.reduce((sum, part) => sum + part.net, 0);
  const waste = wasteOf(1 - net / thread.totalMm, `Ends left at every row, ${(thread.endsMm / 1000).toFixed(1)} m in all, and ${(100 * thread.wasteShare).toFixed(0)} % on top for breaks and trials.`);
  return [
    {
      good: "thread", measure: "length", parts, net, gross: thread.totalMm, ...(thread.totalMm > net && { waste }),
      kind: `polyester, number ${thread.ticket} (tex ${thread.tex.toFixed(0)}, ${denierOfTex(thread.tex).toFixed(0)} denier, cotton ticket about ${texToCottonTicket(thread.tex).toFixed(0)}), continuous filament, bonded or lubricated`,
      reason: `${thread.reason} The seams take at most so much: real thread cuts corners and sinks in. ${thread.byHand}`,
      source: thread.source,
    },
    {
      good: "needles", measure: "count", parts: [{ name: "machine needle", perPair: 1, net: 1 }], net: 1, gross: 1, spare: 1,
      kind: `leather point or round, Nm ${needle.nm} (US ${needle.us})`,
      reason: `Its blade is ${bladeMm(needle).toFixed(2)} mm thick and goes with a thread of ${thread.diameterMm.toFixed(2)} mm. A fresh needle for each pair, and one more in hand: a blunt or bent one tears the leather.`,
      source: "size in hundredths of a millimetre of the blade: notes of a shoe research house; one a pair: common practice, no source",
    },
  ];
}
