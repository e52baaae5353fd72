import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import { checkedJob } from "#job/job-file.ts";
import { filesOf, revived as revivedWith, type History } from "../state/history.ts";

interface Drawer extends DBSchema {
  work: { key: "now" | "set aside"; value: { readonly revision: number; readonly history: History } };
  files: { key: string; value: Uint8Array };
}

/** The work as it was found in the browser's database. */
export interface Kept {
  readonly history: History;
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/** Another tab has written since this one last read or wrote. */
export class ElsewhereChanged extends Error {
  override readonly name = "ElsewhereChanged";
}

/**
 * Keeps the history and its scans in the browser's database, each change at once and whole: history and scans change in one
 * transaction, so that a tab killed in the middle leaves the state before. Writes go one after the other, the newest last.
 */
export class Keep {
  #database: Promise<IDBPDatabase<Drawer>> | undefined;
  #revision = 0;
  #written = new Map<string, Uint8Array>();

  /** Nothing where nothing was kept; `unreadable` where it was, by another version, in a form that cannot be taken for work here. */
  async read(): Promise<Kept | "unreadable" | undefined> {
    const transaction = (await this.#open()).transaction(["work", "files"]);
    const work = await transaction.objectStore("work").get("now");
    if (!work) return undefined;
    const history = revived(work.history);
    if (!history) return this.#setAside(work);
    const files = new Map<string, Uint8Array>();
    for (const name of filesOf(history)) {
      const bytes = await transaction.objectStore("files").get(name);
      if (bytes) files.set(name, bytes);
    }
    this.#revision = work.revision;
    this.#written = new Map(files);
    return { history, files };
  }

  /** What cannot be read is not thrown away, and does not stand in the way of new work. */
  async #setAside(work: Drawer["work"]["value"]): Promise<"unreadable"> {
    await (await this.#open()).put("work", work, "set aside");
    this.#revision = work.revision;
    return "unreadable";
  }

  async write(history: History, files: ReadonlyMap<string, Uint8Array>): Promise<void> {
    const transaction = (await this.#open()).transaction(["work", "files"], "readwrite", { durability: "strict" });
    const work = transaction.objectStore("work");
    const shelf = transaction.objectStore("files");
    // A full disk fails the request that met it and the transaction with it; the first is told below, the second must not go unheard.
    transaction.done.catch(() => {});
    const found = await work.get("now");
    if (found && found.revision !== this.#revision) {
      transaction.abort();
      throw new ElsewhereChanged();
    }
    const revision = this.#revision + 1;
    const needed = filesOf(history);
    await work.put({ revision, history }, "now");
    for (const name of needed) {
      const bytes = files.get(name);
      if (bytes && this.#written.get(name) !== bytes) await shelf.put(bytes, name);
    }
    for (const name of await shelf.getAllKeys()) if (!needed.has(name)) await shelf.delete(name);
    await transaction.done;
    this.#revision = revision;
    this.#written = new Map([...files].filter(([name]) => needed.has(name)));
  }

  #open(): Promise<IDBPDatabase<Drawer>> {
    const opened = (this.#database ??= openDB<Drawer>("lastwise", 1, {
      upgrade: (database) => {
        database.createObjectStore("work");
        database.createObjectStore("files");
      },
    }));
    // The next change tries again: a full disk may have been cleared meanwhile.
    opened.catch(() => {
      if (this.#database === opened) this.#database = undefined;
    });
    return opened;
  }
}

const revived = (kept: History): History | undefined => revivedWith(kept, (job) => checkedJob("the work kept in this browser", job));
