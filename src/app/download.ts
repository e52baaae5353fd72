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
