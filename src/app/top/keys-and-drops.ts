import { useEffect, useState } from "react";
import { finding } from "#base/findings.ts";
import type { UpperLayer } from "#leather/leather.ts";
import type { Desk } from "../desk.ts";
import { makingTables } from "../making-tables.ts";
import { isTable } from "../state/table-file.ts";
import { stripTables } from "../strip-tables.ts";

/**
 * Undo and redo by keys anywhere on the page, and files dropped anywhere. True while a file hangs over the page.
 * @param leather the layer that is looked at, at the station of leathers: a table that is dropped there holds its strips
 * @param making the station of making is open: a table that is dropped there holds prices or what lies on the shelf
 */
export function useKeysAndDrops(desk: Desk, leather: UpperLayer | undefined, making: boolean): boolean {
  const [dropping, setDropping] = useState(false);
  useEffect(() => {
    const key = (e: KeyboardEvent): void => {
      if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
      const letter = e.key.toLowerCase();
      if (letter !== "z" && letter !== "y") return;
      // Free text has an undo of its own while it is being typed.
      if (e.target instanceof HTMLInputElement && e.target.classList.contains("words")) return;
      e.preventDefault();
      if (letter === "y" || e.shiftKey) desk.redo();
      else desk.undo();
    };
    const over = (e: DragEvent): void => {
      if (!e.dataTransfer?.types.includes("Files")) return;
      e.preventDefault();
      setDropping(true);
    };
    const leave = (e: DragEvent): void => {
      if (e.relatedTarget === null) setDropping(false);
    };
    const drop = (e: DragEvent): void => {
      setDropping(false);
      const [file, ...more] = e.dataTransfer?.files ?? [];
      if (!file) return;
      e.preventDefault();
      if (e.dataTransfer?.items[0]?.webkitGetAsEntry()?.isDirectory) desk.refuse(finding("file-is-folder", { file: file.name }));
      else if (leather && isTable(file.name)) void stripTables.open(desk, leather, file);
      else if (making && isTable(file.name)) void makingTables.open(desk, file);
      else void desk.openFiles([file, ...more]);
    };
    const pairs = [["keydown", key], ["dragover", over], ["dragleave", leave], ["drop", drop]] as const;
    for (const [name, ear] of pairs) addEventListener(name, ear as EventListener);
    return () => {
      for (const [name, ear] of pairs) removeEventListener(name, ear as EventListener);
    };
  }, [desk, leather, making]);
  return dropping;
}
