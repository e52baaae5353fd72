import type { ReactElement } from "react";
import { severityOf, type Finding } from "#base/findings.ts";
import { tell } from "../state/spots.ts";
import { pinNumber, stationOfFinding } from "../state/stations.ts";

const words = { note: "Note", look: "Look at this before you cut", stop: "Cannot be used" } as const;
/** Nothing is cut by a price or a date. */
const headOf = (f: Finding): string => (severityOf(f) === "look" && stationOfFinding(f) === "Making" ? "Look at this" : words[severityOf(f)]);

/** All that was found, in words, in the order of the work. */
export function FindingsList({ findings, all }: { readonly findings: readonly Finding[]; readonly all: readonly Finding[] }): ReactElement | null {
  if (findings.length === 0) return null;
  // Several pictures may say the same of the one card.
  const once = findings.filter((f, i) => findings.findIndex((g) => JSON.stringify(g) === JSON.stringify(f)) === i);
  return (
    <ol className="findings" aria-label="What to look at">
      {once.map((f, i) => (
        <li key={`${f.code} ${i}`} className={severityOf(f)}>
          <b>{headOf(f)}{f.at ? ` (${pinNumber(all, f)} in the picture)` : ""}.</b> {tell(f)}
        </li>
      ))}
    </ol>
  );
}
