import type { ReactElement, RefObject } from "react";

interface ChooserProps {
  readonly at: RefObject<HTMLInputElement | null>;
  readonly label: string;
  /** Endings or kinds of files that are offered. */
  readonly accept: string;
  readonly onFiles: (files: readonly File[]) => void;
}

/** The browser's own way to choose files, opened by a word elsewhere on the page. */
export function Chooser({ at, label, accept, onFiles }: ChooserProps): ReactElement {
  return (
    <input ref={at} type="file" multiple hidden aria-label={label} accept={accept} onChange={(e) => {
      const files = [...(e.target.files ?? [])];
      // So that the same file can be chosen again.
      e.target.value = "";
      if (files.length > 0) onFiles(files);
    }} />
  );
}
