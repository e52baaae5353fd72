import { type Finding, severityOf } from "#base/findings.ts";

/** What the command says to the shell: done, done but look before cutting, could not. */
export const exit = { done: 0, look: 1, refused: 2 } as const;

export const exitFor = (findings: readonly Finding[]): number => (findings.some((f) => severityOf(f) === "look") ? exit.look : exit.done);
