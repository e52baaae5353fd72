import { openDB, type IDBPDatabase } from "idb";

type DrawerName = "usual numbers" | "leathers" | "workshop";

/** A drawer of its own for what outlives the work at hand: the maker's usual numbers, her leathers, or prices and shelf of her workshop, as the text of their file. */
export class Drawer {
  readonly #name: DrawerName;
  #database: Promise<IDBPDatabase> | undefined;

  constructor(name: DrawerName) {
    this.#name = name;
  }

  async read(): Promise<string | undefined> {
    return (await (await this.#open()).get("own", this.#name)) as string | undefined;
  }

  async write(text: string): Promise<void> {
    await (await this.#open()).put("own", text, this.#name);
  }

  async clear(): Promise<void> {
    await (await this.#open()).delete("own", this.#name);
  }

  #open(): Promise<IDBPDatabase> {
    const opened = (this.#database ??= openDB("lastwise own", 1, { upgrade: (database) => void database.createObjectStore("own") }));
    // The next change tries again: a full disk may have been cleared meanwhile.
    opened.catch(() => {
      if (this.#database === opened) this.#database = undefined;
    });
    return opened;
  }
}
