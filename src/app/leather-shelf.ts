import { Refusal } from "#base/refusal.ts";
import { Heard } from "./heard.ts";
import { Drawer } from "./keep/drawer.ts";
import { bytesOf } from "./read-file.ts";
import { readLeathers, withLeather, withoutLeather, writeLeathers, type KeptLeather } from "./state/kept-leathers.ts";
import { tell } from "./state/spots.ts";

export interface ShelfNow {
  readonly leathers: readonly KeptLeather[];
  /** What became of the last thing asked for, where that has to be said. */
  readonly said: string | undefined;
  /** The leather that gave way, as long as it can be had back. */
  readonly former: KeptLeather | undefined;
}

/** Takes kept leathers out of a file of theirs; throws a Refusal. */
export interface OwnLeathers {
  take(name: string, bytes: Uint8Array): Promise<void>;
}

const unheld = "It holds on this page, but this browser keeps nothing. Save your leathers to a file.";

/** The leathers that the maker keeps for other pairs: in the browser, beside the work, and in files of their own. */
export class LeatherShelf extends Heard<ShelfNow> implements OwnLeathers {
  readonly #drawer = new Drawer("leathers");

  constructor() {
    super({ leathers: [], said: undefined, former: undefined });
  }

  async open(): Promise<void> {
    try {
      this.show({ leathers: await this.#held() });
    } catch (error) {
      this.show({ said: error instanceof Refusal ? `${tell(error.finding)} They are left as they are.` : "Your leathers could not be looked up: this browser keeps nothing." });
    }
  }

  keep(kept: KeptLeather): Promise<void> {
    const former = this.now.leathers.find(({ name }) => name === kept.name);
    return this.#change((all) => withLeather(all, kept), former ? `${kept.name} is kept as it is now.` : `${kept.name} is kept.`, former);
  }

  forget(name: string): Promise<void> {
    return this.#change((all) => withoutLeather(all, name), `${name} is forgotten.`, this.now.leathers.find((k) => k.name === name));
  }

  /** The leather that gave way stands on the shelf again. */
  async takeBack(): Promise<void> {
    const { former } = this.now;
    if (former) await this.#change((all) => withLeather(all, former), `${former.name} is kept as it was.`, undefined);
  }

  /** Those of a file join the others; where two have one name, both stay. */
  async take(name: string, bytes: Uint8Array): Promise<void> {
    const read = readLeathers(name, new TextDecoder().decode(bytes));
    await this.#change((all) => read.reduce((kept, leather) => joined(kept, leather), all), `Read from ${name}: ${read.map((k) => k.name).join(", ") || "no leather"}.`, undefined);
  }

  async readFrom(file: File): Promise<void> {
    try {
      await this.take(file.name, await bytesOf(file));
    } catch (error) {
      this.show({ said: error instanceof Refusal ? `${tell(error.finding)} Your leathers are as they were.` : `${file.name} could not be read.` });
    }
  }

  /** Changes what the browser holds, which another tab may have added to; what cannot be read there is not written over. */
  async #change(edit: (all: readonly KeptLeather[]) => readonly KeptLeather[], said: string, former: KeptLeather | undefined): Promise<void> {
    let held: readonly KeptLeather[] | undefined;
    try {
      held = await this.#held();
    } catch (error) {
      if (error instanceof Refusal) return this.show({ said: `${tell(error.finding)} Nothing was changed; save your leathers to a file.` });
    }
    const leathers = edit(held ?? this.now.leathers);
    this.show({ leathers, said: undefined, former });
    // Told only once it is held.
    await this.#drawer.write(writeLeathers(leathers)).then(() => this.show({ said }), () => this.show({ said: unheld }));
  }

  async #held(): Promise<readonly KeptLeather[]> {
    const text = await this.#drawer.read();
    return text === undefined ? [] : readLeathers("what this browser keeps of your leathers", text);
  }
}

/** One more leather, under a name that is free unless it is the very same. */
function joined(all: readonly KeptLeather[], leather: KeptLeather): readonly KeptLeather[] {
  const same = (other: KeptLeather): boolean => JSON.stringify({ ...other, name: "", said: { ...other.said, name: "" } }) === JSON.stringify({ ...leather, name: "", said: { ...leather.said, name: "" } });
  if (all.some((k) => k.name === leather.name && same(k))) return all;
  let name = leather.name;
  for (let n = 2; all.some((k) => k.name === name); n++) name = `${leather.name} (${n})`;
  return withLeather(all, name === leather.name ? leather : { name, said: { ...leather.said, name }, shoes: leather.shoes.map((shoe) => ({ ...shoe, leather: name })) });
}
