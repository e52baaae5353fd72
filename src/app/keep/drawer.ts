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

  /** Reads and writes in one breath, whatever other tabs do meanwhile. @param how the next text, or nothing where it is to stay */
  async change(how: (text: string | undefined) => string | undefined): Promise<void> {
    const { store, done } = (await this.#open()).transaction("own", "readwrite");
    // Where it fails, a request of it fails first, and that is heard.
    done.catch(() => undefined);
    const next = how((await store.get(this.#name)) as string | undefined);
    if (next !== undefined) await store.put(next, this.#name);
    await done;
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
