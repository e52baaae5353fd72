import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Rules } from "#job/run-options.ts";
import type { ShellRules } from "#shell/settings.ts";
import type { Desk } from "../desk.ts";
import type { BeneathRow } from "#shell/girths.ts";
import { sayFixed } from "../state/numbers.ts";
import { PieceNumber, PieceReason } from "./piece-number.tsx";
import { SkivingOfShell, StiffenerOfShell } from "./piece-shell-words.tsx";
import { ShellNumber, ShellReason } from "./shell-number.tsx";
import { WithWhy } from "./why.tsx";

interface ShellBeneathProps {
  readonly desk: Desk;
  readonly rules: Rules & { readonly shell: ShellRules };
  /** Nothing while no pair can be made. */
  readonly pair: LastPair | undefined;
}

/** What lies between the last and the upper, which has so much farther to go. */
export function ShellBeneath({ desk, rules, pair }: ShellBeneathProps): ReactElement {
  return (
    <>
      <WithWhy name="lining beneath" spots={["pieces liningThicknessMm"]} why={<PieceReason desk={desk} rules={rules} of="liningThicknessMm" />}>
        Beneath the upper lies the lining, <PieceNumber desk={desk} rules={rules} of="liningThicknessMm" /> thick.
      </WithWhy>
      <StiffenerOfShell desk={desk} rules={rules.shell} />
      <WithWhy name="toe puff" spots={["pieces toePuffMm", "shell puffReachMm"]} why={<><PieceReason desk={desk} rules={rules} of="toePuffMm" /><ShellReason desk={desk} rules={rules.shell} of="puffReachMm" /></>}>
        Over the toe lies a puff <PieceNumber desk={desk} rules={rules} of="toePuffMm" /> thick, <ShellNumber desk={desk} rules={rules.shell} of="puffReachMm" /> back from the toe point.
      </WithWhy>
      <SkivingOfShell desk={desk} rules={rules.shell} />
      {pair && <Added rows={pair.beneath} />}
    </>
  );
}

const lengths: readonly (readonly [BeneathRow["key"], string])[] = [
  ["joint", "half round the joint"],
  ["heel", "half round the heel"],
  ["topline", "topline"],
  ["feather", "feather edge"],
  ["back", "back curve"],
  ["centre", "front centre"],
];

/** How much longer each way is over what lies beneath than on the last itself. */
function Added({ rows }: { readonly rows: readonly BeneathRow[] }): ReactElement {
  const added = (r: BeneathRow): string => sayFixed(r.overMm - r.onLastMm);
  return (
    <table className="figures">
      <caption>What lies beneath adds, mm</caption>
      <thead><tr><th scope="col">way</th><th scope="col">inner</th><th scope="col">outer</th></tr></thead>
      <tbody>
        {lengths.map(([key, name]) => {
          const [first, second] = rows.filter((r) => r.key === key);
          return first && (
            <tr key={key}>
              <th scope="row">{name}</th>
              {second ? <><td>{added(first)}</td><td>{added(second)}</td></> : <td colSpan={2}>{added(first)}</td>}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
