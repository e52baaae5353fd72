import { Refusal } from "#base/refusal.ts";
import type { Job } from "#job/job.ts";
import { Heard } from "./heard.ts";
import { Drawer } from "./keep/drawer.ts";
import { bytesOf } from "./read-file.ts";
import { tell } from "./state/spots.ts";
import { usualFromFile, usualOf, writeUsual, type OwnNumbers, type Usual } from "./state/usual.ts";

export interface UsualsNow {
  /** Nothing where the maker has kept none. */
  readonly usual: Usual | undefined;
  /** What became of the last thing she asked for, where that has to be said. */
  readonly said: string | undefined;
  /** The browser was looked into. */
  readonly looked: boolean;
}

/** The maker's usual numbers: kept in the browser, read from and written to a file. */
export class Usuals extends Heard<UsualsNow> implements OwnNumbers {
  readonly #drawer = new Drawer("usual numbers");

  constructor() {
    super({ usual: undefined, said: undefined, looked: false });
  }

  get usual(): Usual | undefined {
    return this.now.usual;
  }

  async open(): Promise<void> {
    try {
      const text = await this.#drawer.read();
      if (text !== undefined) this.show({ usual: usualFromFile("what this browser keeps of your usual numbers", new TextEncoder().encode(text)) });
    } catch (error) {
      this.show({ said: error instanceof Refusal ? `${tell(error.finding)} They are left as they are until you keep others.` : "Your usual numbers could not be looked up: this browser keeps nothing." });
    }
    this.show({ looked: true });
  }

  keep(job: Job): Promise<void> {
    return this.#hold(usualOf(job), undefined);
  }

  async take(name: string, bytes: Uint8Array): Promise<void> {
    return this.#hold(usualFromFile(name, bytes), `Read from ${name}.`);
  }

  async forget(): Promise<void> {
    this.show({ usual: undefined, said: undefined });
    await this.#drawer.clear().catch(() => this.show({ said: "They are forgotten on this page, but this browser could not be told so." }));
  }

  async readFrom(file: File): Promise<void> {
    try {
      await this.take(file.name, await bytesOf(file));
    } catch (error) {
      this.show({ said: error instanceof Refusal ? `${tell(error.finding)} Your usual numbers are as they were.` : `${file.name} could not be read.` });
    }
  }

  async #hold(usual: Usual, said: string | undefined): Promise<void> {
    this.show({ usual, said });
    await this.#drawer.write(new TextDecoder().decode(writeUsual(usual))).catch(() => this.show({ said: "They hold on this page, but this browser keeps nothing. Save them to a file." }));
  }
}
