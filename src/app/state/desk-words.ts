import type { Job } from "#job/job.ts";

/** That the program itself is at fault; `back`: the last good work is shown again. */
export const brokeWords = (doing: string, why: string, back: boolean): string =>
  `Something went wrong in the program itself while ${doing} (${why}). ${back ? "What you had before is still here: try it another way" : "Your work is safe; take the last change back"}, or reload the page and try again.`;

/** Kept work that this version cannot read. */
export const unreadable =
  "The work that another version kept in this browser cannot be read here. It was set aside, and the example is shown: open the file that you saved your work to, or the scan once more.";

/** What is being done when a scan or photographs are opened. */
export const openingWords = ({ last }: Job): string => (last.from === "scan" ? `opening ${last.file}` : "opening photographs of a tape");
