import type { ReactElement } from "react";
import type { ShellNumbers, ShellRules } from "#shell/settings.ts";
import type { Desk } from "../desk.ts";
import { ShellNumber, ShellReason } from "./shell-number.tsx";
import { WithWhy } from "./why.tsx";

interface ShellWordsProps {
  readonly desk: Desk;
  readonly rules: ShellRules;
}

/** The numbers of stiffener and puff that the upper hangs on as well; they stand at the station Shell too. */
export function StiffenerOfShell(props: ShellWordsProps): ReactElement {
  const [number, why] = speakers(props);
  return (
    <WithWhy name="stiffener" spots={["shell counterMm", "shell counterBelowMm", "shell counterInnerMm", "shell counterOuterMm"]} why={why("counterMm", "counterBelowMm", "counterInnerMm", "counterOuterMm")}>
      Round the heel stands a stiffener {number("counterMm")} thick, up to {number("counterBelowMm")} below the topline; its wings reach {number("counterInnerMm")} along the inner side and {number("counterOuterMm")} along the outer.
    </WithWhy>
  );
}

export function PuffOfShell(props: ShellWordsProps): ReactElement {
  const [number, why] = speakers(props);
  return <WithWhy name="reach of the toe puff" spots={["shell puffReachMm"]} why={why("puffReachMm")}>The toe puff goes {number("puffReachMm")} back from the toe point.</WithWhy>;
}

export function SkivingOfShell(props: ShellWordsProps): ReactElement {
  const [number, why] = speakers(props);
  return (
    <WithWhy name="skiving" spots={["shell skiveMm", "shell skiveFeatherMm"]} why={why("skiveMm", "skiveFeatherMm")}>
      Stiffener and puff are skived to nothing over {number("skiveMm")}, and over {number("skiveFeatherMm")} toward the feather line.
    </WithWhy>
  );
}

function speakers(props: ShellWordsProps): readonly [(of: keyof ShellNumbers) => ReactElement, (...keys: readonly (keyof ShellNumbers)[]) => ReactElement] {
  return [(of) => <ShellNumber {...props} of={of} />, (...keys) => <>{keys.map((of) => <ShellReason key={of} {...props} of={of} />)}</>];
}
