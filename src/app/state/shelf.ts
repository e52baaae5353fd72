import { filesOf } from "#job/files.ts";
import type { Job } from "#job/job.ts";

/** The files that lie beside the work, in the page's memory, each under a name of its own. */
export class Shelf {
  readonly #files = new Map<string, Uint8Array>();

  get files(): ReadonlyMap<string, Uint8Array> {
    return this.#files;
  }

  put(name: string, bytes: Uint8Array): void {
    this.#files.set(name, bytes);
  }

  /** Takes a file in; gives the name it lies under, which is another one when that of the file is taken by other content. */
  take(name: string, bytes: Uint8Array): string {
    const free = freeName(name, (n) => this.#files.has(n) && !sameBytes(this.#files.get(n)!, bytes));
    if (!this.#files.has(free)) this.#files.set(free, bytes);
    return free;
  }

  keepOnly(names: ReadonlySet<string>): void {
    for (const name of this.#files.keys()) if (!names.has(name)) this.#files.delete(name);
  }
}

/**
 * Pictures start the way of the taped pattern, also those of kinds that cannot be read here, so that the reader of pictures says so;
 * all else is a scan or a saved job.
 */
export const isPicture = (name: string, type = ""): boolean => type.startsWith("image/") || /\.(jpe?g|png|hei[cf]|avif|webp|tiff?|bmp|gif|pdf)$/i.test(name);

/** `name`, or the first of "name 2", "name 3" … that `taken` does not know; the ending stays. */
export function freeName(name: string, taken: (name: string) => boolean): string {
  if (!taken(name)) return name;
  const dot = name.lastIndexOf(".");
  const [stem, ending] = dot > 0 ? [name.slice(0, dot), name.slice(dot)] : [name, ""];
  for (let n = 2; ; n++) {
    const next = `${stem} ${n}${ending}`;
    if (!taken(next)) return next;
  }
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((v, i) => v === b[i]);
}

/** The pictures of a work: where it is not on a scan, all its files are. */
export const picturesOf = (job: Job): readonly string[] => (job.last.from === "scan" ? [] : filesOf(job));
