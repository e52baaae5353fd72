import type { ReactElement } from "react";
import { severityOf, type Finding } from "#base/findings.ts";
import { FindingsList } from "./findings-list.tsx";
import { Fold } from "./fold.tsx";

/** What was found when the upper was pulled over: the gravest thing in full, the others a word away. */
export function LastingFound({ findings }: { readonly findings: readonly Finding[] }): ReactElement | null {
  // Their places are pinned in the picture with words of their own, not with numbers.
  const told = findings.map(({ at: _, ...rest }) => rest as Finding).sort((a, b) => Number(severityOf(a) === "note") - Number(severityOf(b) === "note"));
  if (told.length === 0) return null;
  return (
    <>
      <FindingsList findings={told.slice(0, 1)} all={[]} />
      {told.length > 1 && <Fold name="More that was found" holds={told.length === 2 ? "one more thing" : `${told.length - 1} more things`}><FindingsList findings={told.slice(1)} all={[]} /></Fold>}
    </>
  );
}
