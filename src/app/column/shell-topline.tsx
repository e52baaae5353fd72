import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import { shellChoices } from "#shell/rules.ts";
import { leathers, toplineEdges, type ShellRules } from "#shell/settings.ts";
import { springRange } from "#shell/spring-range.ts";
import type { Desk } from "../desk.ts";
import { setShell } from "../state/edits.ts";
import { mm, percent } from "../state/numbers.ts";
import { edgeWords, leatherWords } from "../state/shell-words.ts";
import { ShellNumber, ShellReason } from "./shell-number.tsx";
import { toplineWords } from "./station-lines.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const { usual, most } = springRange;

interface ShellToplineProps {
  readonly desk: Desk;
  readonly rules: ShellRules;
  /** Nothing while no pair can be made. */
  readonly pair: LastPair | undefined;
}

/** How much shorter the topline is cut than it is on the last, by leather and edge, and the spring. */
export function ShellTopline({ desk, rules, pair }: ShellToplineProps): ReactElement {
  const { leather = shellChoices.leather, edge = shellChoices.edge, springMm = 0 } = desk.job.shell;
  return (
    <>
      <WithWhy name="topline" spots={["shell toplineShorter"]} why={<ShellReason desk={desk} rules={rules} of="toplineShorter" />}>
        In <WordChoice label="leather of the upper" value={leather} options={leathers} say={(o) => leatherWords[o]} onChange={(v) => desk.change(setShell(desk.job, { leather: v }), "the leather of the upper")} />, with the
        topline <WordChoice label="edge of the topline" value={edge} options={toplineEdges} say={(o) => edgeWords[o]} onChange={(v) => desk.change(setShell(desk.job, { edge: v }), "the edge of the topline")} />, the
        topline is cut <ShellNumber desk={desk} rules={rules} of="toplineShorter" limits={{ least: 0, most: 8 }} /> shorter than it is on the last.
      </WithWhy>
      {pair && <p className="follows">{toplineWords(pair)} {halvesWords(pair)}</p>}
      <WithWhy name="spring" spots={["shell springMm"]} why={<ShellReason desk={desk} rules={rules} of="springMm" />}>
        The heel ends are swung together by <ShellNumber desk={desk} rules={rules} of="springMm" limits={{ least: -most, most }} /> at the topline, from where they lie of themselves.
      </WithWhy>
      {(springMm > usual.max || springMm < usual.min) && (
        <p className="follows">That is far more than the few millimetres that are usual: sew a trial in scrap before you cut.</p>
      )}
    </>
  );
}

/** By how much each half is shorter, in mm and percent. */
function halvesWords({ flat: { tension } }: LastPair): string {
  const half = ({ onLastMm, flatMm }: { readonly onLastMm: number; readonly flatMm: number }): string => `${mm(onLastMm - flatMm)} (${percent(1 - flatMm / onLastMm, 2)})`;
  return `The inner half is ${half(tension.medial)} shorter, the outer ${half(tension.lateral)}.`;
}
