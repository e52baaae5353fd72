import type { Desk } from "./desk.ts";

/** Hands a file to the maker. */
export function downloadBytes(name: string, bytes: Uint8Array, mime: string): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mime }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the bytes after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** The job with its scan as one file. When it cannot be written, the desk says why. */
export function saveJob(desk: Desk): void {
  const bytes = desk.jobFile();
  if (bytes) downloadBytes(`${fileName(desk.job.title)}.lastwise`, bytes, "application/zip");
}

/** A title as a file's name: no characters that a file system refuses. */
const fileName = (title: string): string =>
  [...title]
    .map((c) => (c < " " || '\\/:*?"<>|'.includes(c) ? " " : c))
    .join("")
    .replace(/\s+/g, " ")
    .trim()
    .slice(0, 60) || "pair";
