import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { renamed } from "#job/files.ts";
import { isJobFile, readJobFile } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import type { Desktop } from "./desktop.ts";
import { bytesOf } from "./read-file.ts";
import { onScan } from "./state/edits.ts";
import { isPicture, type Shelf } from "./state/shelf.ts";
import { shownPhoto } from "./state/shown-photo.ts";
import { withPhotos } from "./state/tape-edits.ts";
import { isLeathersFile } from "./state/kept-leathers.ts";
import { isUsualFile, type OwnNumbers } from "./state/usual.ts";
import type { OwnLeathers } from "./leather-shelf.ts";
import { isTable } from "./state/table-file.ts";

/** The desk, as far as opening files goes. */
interface Asked {
  work(): Desktop;
  /** New work with the maker's usual numbers. */
  begun(job: Job): Job;
  /** Becomes the work when a pair can be made of it. */
  tryOut(job: Job, what: string): void;
  /** The same for a saved job, with what was found in its file. */
  tryJob(job: Job, says: readonly Finding[] | undefined): void;
  failed(error: unknown): void;
}

/** Takes files from the maker's hand: what they are, on which shelf they lie, and which work they make. */
export class Opener {
  readonly #shelf: Shelf;
  readonly #own: OwnNumbers;
  readonly #leathers: OwnLeathers;
  readonly #desk: Asked;

  constructor(shelf: Shelf, own: OwnNumbers, leathers: OwnLeathers, desk: Asked) {
    this.#shelf = shelf;
    this.#own = own;
    this.#leathers = leathers;
    this.#desk = desk;
  }

  async open(files: readonly File[]): Promise<void> {
    const first = files.find((f) => !isPicture(f.name, f.type));
    if (!first) return this.#openPictures(files);
    await this.#reading(async () => {
      const bytes = await bytesOf(first);
      if (isTable(first.name)) throw new Refusal(finding("strips-elsewhere", { file: first.name }));
      if (isLeathersFile(bytes)) await this.#leathers.take(first.name, bytes);
      else if (isUsualFile(bytes)) await this.#own.take(first.name, bytes);
      else if (isJobFile(first.name, bytes)) this.#openJob(first.name, bytes);
      else this.#desk.tryOut(this.#desk.begun(onScan(this.#job, this.#shelf.take(first.name, bytes))), `opening ${first.name}`);
    });
  }

  async openInto(files: readonly File[], edit: (job: Job, names: readonly string[]) => Job, what: string): Promise<void> {
    await this.#reading(async () => {
      const contents = await Promise.all(files.map(bytesOf));
      this.#desk.tryOut(edit(this.#job, files.map((f, i) => this.#shelf.take(f.name, contents[i]!))), what);
    });
  }

  /** Pictures join the taped pattern at hand, or the one that waits; else they begin one. */
  #openPictures(pictures: readonly File[]): Promise<void> {
    return this.openInto(pictures, (job, names) => {
      // What was just brought is what the maker wants to see.
      if (names[0] !== undefined) shownPhoto.show(names[0]);
      const onto = this.#desk.work().waiting ?? job;
      return onto.last.from === "tape" ? withPhotos(onto, names) : this.#desk.begun(withPhotos(onto, names));
    }, `opening ${pictures.map((f) => f.name).join(", ")}`);
  }

  #openJob(name: string, bytes: Uint8Array): void {
    const opened = readJobFile(name, bytes);
    let { job } = opened;
    for (const [file, content] of opened.files) job = renamed(job, file, this.#shelf.take(file, content));
    this.#desk.tryJob(job, opened.findings);
  }

  get #job(): Job {
    return this.#desk.work().history.now.job;
  }

  async #reading(how: () => Promise<void>): Promise<void> {
    try {
      await how();
    } catch (error) {
      this.#desk.failed(error);
    }
  }
}
