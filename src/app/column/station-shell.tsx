import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Rules } from "#job/pipeline.ts";
import type { Desk } from "../desk.ts";
import type { MapOf } from "../picture/strain.ts";
import type { StretchMap } from "../picture/stretch-map.ts";
import { ShellBeneath } from "./shell-beneath.tsx";
import { ShellStretch } from "./shell-stretch.tsx";
import { ShellTopline } from "./shell-topline.tsx";

interface StationShellProps {
  readonly desk: Desk;
  readonly rules: Rules;
  /** Both nothing while no pair can be made. */
  readonly pair: LastPair | undefined;
  readonly map: StretchMap | undefined;
  readonly onMap: (of: MapOf) => void;
}

/** The upper between last and flat card: its topline, what lies beneath it, and what the flat piece asks of the leather. */
export function StationShell({ desk, rules, pair, map, onMap }: StationShellProps): ReactElement {
  const { shell } = rules;
  return (
    <>
      {shell && <ShellTopline desk={desk} rules={shell} pair={pair} />}
      {shell && <ShellBeneath desk={desk} rules={{ ...rules, shell }} />}
      {pair && map && <ShellStretch pair={pair} map={map} onMap={onMap} />}
    </>
  );
}
