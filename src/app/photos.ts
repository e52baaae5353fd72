import { useEffect, useMemo, useSyncExternalStore } from "react";
import { explain, type Finding } from "#base/findings.ts";
import type { Pair } from "#job/pair.ts";
import type { TracedPhoto } from "#photo/trace-photo.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import type { Desk } from "./desk.ts";
import type { Desktop } from "./desktop.ts";
import type { FromPhotoWorker, SeenPhoto, ToPhotoWorker } from "./photo-talk.ts";
import { rescaledPhoto } from "./state/rescaled-photo.ts";
import { tapeOf } from "./state/tape-edits.ts";

/** How far a photograph has been looked at. */
export type Sight =
  | { readonly is: "awaited"; readonly fraction: number }
  | { readonly is: "seen"; readonly seen: SeenPhoto }
  | { readonly is: "refused"; readonly sentence: string; readonly finding?: Finding };

interface Entry {
  readonly bytes: Uint8Array;
  readonly barMm: number | undefined;
  readonly traced: TracedPhoto | undefined;
  readonly sight: Sight;
}

/** The photographs of the work as they are shown: each is laid flat once, one after the other, in a worker of its own. */
class Photos {
  #entries: ReadonlyMap<string, Entry> = new Map();
  readonly #ears = new Set<() => void>();
  #worker: Worker | undefined;
  #running: { readonly id: number; readonly name: string; readonly entry: Entry } | undefined;
  #id = 0;

  readonly listen = (ear: () => void): (() => void) => {
    this.#ears.add(ear);
    return () => this.#ears.delete(ear);
  };
  readonly look = (): ReadonlyMap<string, Entry> => this.#entries;

  /** Asks for these photographs and lets all others go. */
  want(names: readonly string[], files: ReadonlyMap<string, Uint8Array>, barMm: number | undefined, traced: readonly TracedPicture[]): void {
    const next = new Map<string, Entry>();
    for (const name of names) {
      const bytes = files.get(name);
      const known = this.#entries.get(name);
      const now = traced.find((t) => t.photo === name)?.traced;
      if (known && known.bytes === bytes && known.barMm === barMm) next.set(name, known);
      else if (known && known.bytes === bytes && known.sight.is === "seen" && now) next.set(name, { bytes, barMm, traced: now, sight: { is: "seen", seen: rescaledPhoto(known.sight.seen, now) } });
      else if (bytes) next.set(name, { bytes, barMm, traced: now, sight: { is: "awaited", fraction: 0 } });
    }
    if (next.size === this.#entries.size && [...next].every(([name, entry]) => this.#entries.get(name) === entry)) return;
    this.#show(next);
    // What runs for a photograph that nobody wants any more need not end first.
    if (this.#running && next.get(this.#running.name) !== this.#running.entry) this.#end();
    this.#next();
  }

  #next(): void {
    if (this.#running) return;
    const waiting = [...this.#entries].find(([, { sight }]) => sight.is === "awaited");
    // The worker's memory goes with it: photographs are large and rarely change.
    if (!waiting) return this.#end();
    const [name, entry] = waiting;
    const id = ++this.#id;
    this.#running = { id, name, entry };
    const worker = (this.#worker ??= this.#spawn());
    worker.postMessage({ id, name, bytes: entry.bytes, barMm: entry.barMm, traced: entry.traced } satisfies ToPhotoWorker);
  }

  #hear(message: FromPhotoWorker): void {
    if (message.id !== this.#running?.id) return;
    if (message.say === "progress") return this.#see({ is: "awaited", fraction: message.fraction }, true);
    if (message.say === "seen") this.#see({ is: "seen", seen: message.seen });
    else if (message.say === "refused") this.#see({ is: "refused", sentence: explain(message.finding), finding: message.finding });
    else this.#see({ is: "refused", sentence: broke(message.why) });
    this.#next();
  }

  /** What is known now of the photograph that is being looked at. */
  #see(sight: Sight, goesOn = false): void {
    const { id, name, entry } = this.#running!;
    const seen = { ...entry, sight };
    this.#running = goesOn ? { id, name, entry: seen } : undefined;
    this.#show(new Map(this.#entries).set(name, seen));
  }

  #spawn(): Worker {
    const worker = new Worker(new URL("./photo-worker.ts", import.meta.url), { type: "module", name: "photographs" });
    worker.addEventListener("message", (event: MessageEvent<FromPhotoWorker>) => worker === this.#worker && this.#hear(event.data));
    worker.addEventListener("error", (event) => {
      if (worker !== this.#worker || !this.#running) return;
      this.#see({ is: "refused", sentence: broke(event.message || "its worker could not be started") });
      this.#end();
      this.#next();
    });
    return worker;
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#running = undefined;
  }

  #show(entries: ReadonlyMap<string, Entry>): void {
    this.#entries = entries;
    for (const ear of this.#ears) ear();
  }
}

const broke = (why: string): string => `Something went wrong in the program itself while laying this photograph flat (${why}). The work goes on without this picture of it; reload the page to try again.`;

const byDesk = new WeakMap<Desk, Photos>();

function photosOf(desk: Desk): Photos {
  let photos = byDesk.get(desk);
  if (!photos) byDesk.set(desk, (photos = new Photos()));
  return photos;
}

/** What to look at: the photographs by name, and what is known of them. */
export interface Wanted {
  readonly names: readonly string[];
  readonly barMm: number | undefined;
  /** What was traced in them when the pair was made; without it each is traced anew. */
  readonly traced: readonly TracedPicture[];
}

/** Looks at these photographs of the work, for as long as they are shown. */
export function useSights(desk: Desk, { names, barMm, traced }: Wanted): ReadonlyMap<string, Sight> {
  const photos = photosOf(desk);
  const entries = useSyncExternalStore(photos.listen, photos.look);
  const list = names.join("\n");
  useEffect(() => photos.want(list === "" ? [] : list.split("\n"), desk.files, barMm, traced), [photos, desk, list, barMm, traced]);
  return useMemo(() => new Map(list.split("\n").flatMap((name) => {
    const sight = entries.get(name)?.sight;
    return sight ? [[name, sight] as const] : [];
  })), [entries, list]);
}

const none: Wanted = { names: [], barMm: undefined, traced: [] };

/** The photographs to show with a pair: those it was made from. */
export function photosOfPair(pair: Pair | undefined): Wanted {
  if (pair?.from === "tape" && pair.job.last.from === "tape") return { names: pair.job.last.tape.photos, barMm: pair.job.last.tape.barMm, traced: pair.traced };
  if (pair?.from === "last" && pair.job.last.from === "measures" && pair.traces) return { names: pair.traces.map((t) => t.photo), barMm: pair.job.last.outlines?.barMm, traced: pair.traces };
  return none;
}

/** Those of a tape that makes no pattern yet, as they were last worked out. */
export function photosOfTape({ waitingTraced }: Pick<Desktop, "waitingTraced">): Wanted {
  const said = waitingTraced && tapeOf(waitingTraced.job);
  return said ? { names: said.photos, barMm: said.barMm, traced: waitingTraced.pictures } : none;
}
