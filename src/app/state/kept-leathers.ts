import { z } from "zod";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { checkedJob } from "#job/job-file.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import type { ShoeEntry } from "#lasting/log.ts";
import type { LeatherSaid, UpperLayer } from "#leather/leather.ts";

/** A leather that the maker keeps for other pairs: what she said of it, its strips, and the shoes that were made of it. */
export interface KeptLeather {
  readonly name: string;
  readonly said: LeatherSaid;
  readonly shoes: readonly ShoeEntry[];
}

const format = "lastwise leathers";
const version = 1;

/** The leather of one layer as it would be kept; nothing while it has no name to be found by. */
export function leatherToKeep(job: Job, layer: UpperLayer): KeptLeather | undefined {
  const said = job.leather[layer], name = said?.name;
  return said && name?.trim() ? { name, said, shoes: job.log.filter(({ leather }) => leather === name) } : undefined;
}

/** The job with a kept leather for one layer; shoes of it that the log lacks are written after the others. */
export function withKept(job: Job, layer: UpperLayer, { said, shoes }: KeptLeather): Job {
  const known = new Set(job.log.map(asRead)), lacking = shoes.filter((shoe) => !known.has(asRead(shoe)));
  const last = job.log.reduce((most, { pair }) => Math.max(most, pair), 0);
  // Both shoes of a pair keep one number.
  const pairs = [...new Set(lacking.map(({ pair }) => pair))].sort((a, b) => a - b);
  const log = [...job.log, ...lacking.map((shoe) => ({ ...shoe, pair: last + 1 + pairs.indexOf(shoe.pair) }))];
  return { ...job, leather: { ...job.leather, [layer]: said }, ...(lacking.length > 0 && { log }) };
}

/** Whether a layer of the job is this very leather, with no shoe more or less. */
export function isKept(job: Job, layer: UpperLayer, kept: KeptLeather): boolean {
  const own = leatherToKeep(job, layer);
  return own?.name === kept.name && ordered(own.said) === ordered(kept.said) && own.shoes.map(asRead).sort().join() === kept.shoes.map(asRead).sort().join();
}

/** A shoe but for its number, which another job counts anew. */
const asRead = ({ pair: _, ...shoe }: ShoeEntry): string => ordered(shoe);
const ordered = (of: object): string => JSON.stringify(Object.entries(of).sort(([a], [b]) => (a < b ? -1 : 1)));

/** All kept leathers with one more, by name; one of that name gives way. */
export const withLeather = (all: readonly KeptLeather[], kept: KeptLeather): readonly KeptLeather[] => [...withoutLeather(all, kept.name), kept].sort((a, b) => a.name.localeCompare(b.name, "en"));
export const withoutLeather = (all: readonly KeptLeather[], name: string): readonly KeptLeather[] => all.filter((k) => k.name !== name);

/** As a file of our own. */
export function writeLeathers(leathers: readonly KeptLeather[]): string {
  return `${JSON.stringify({ format, version, leathers }, null, 2)}\n`;
}

/** Whether a text is such a file, whatever else is wrong with it. */
export const isLeathersFile = (bytes: Uint8Array): boolean => bytes[0] === 0x7b && new TextDecoder().decode(bytes.subarray(0, 200)).includes(`"${format}"`);

const outside = z.strictObject({ format: z.literal(format), version: z.literal(version), leathers: z.array(z.strictObject({ name: z.string().min(1).max(80), said: z.unknown(), shoes: z.array(z.unknown()) })) });

/**
 * Reads kept leathers out of a file or the browser's database, each checked field by field as a job is.
 * @throws Refusal that names what is wrong
 */
export function readLeathers(file: string, text: string): readonly KeptLeather[] {
  const none = new Refusal(finding("job-unreadable", { file, why: "it holds no leathers saved by Lastwise" }));
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    throw none;
  }
  const saved = typeof raw === "object" && raw !== null ? (raw as { readonly format?: unknown; readonly version?: unknown }) : {};
  if (saved.format !== format) throw none;
  if (typeof saved.version === "number" && saved.version > version) throw new Refusal(finding("job-newer", { file, version: saved.version }));
  const read = outside.safeParse(raw);
  if (!read.success) throw new Refusal(finding("job-field-wrong", { file, field: read.error.issues[0]!.path.join(" → ") || "as a whole", why: "is not what belongs there" }));
  return read.data.leathers.map(({ name, said, shoes }) => {
    const { leather, log } = checkedJob(file, { ...defaultJob(), leather: { upper: said }, log: shoes });
    return { name, said: leather.upper ?? {}, shoes: log };
  });
}
