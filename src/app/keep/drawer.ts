import { openDB, type IDBPDatabase } from "idb";

/** A drawer of its own for what outlives the work at hand: the maker's usual numbers, as the text of their file. */
export class Drawer {
  #database: Promise<IDBPDatabase> | undefined;

  async read(): Promise<string | undefined> {
    return (await (await this.#open()).get("own", "usual numbers")) as string | undefined;
  }

  async write(text: string): Promise<void> {
    await (await this.#open()).put("own", text, "usual numbers");
  }

  async clear(): Promise<void> {
    await (await this.#open()).delete("own", "usual numbers");
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
