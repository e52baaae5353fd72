import type { ReactElement } from "react";
import type { Session, Stint } from "#making/calendar/calendar.ts";

/** One session drawn to its length: stretches of work as blocks, and beneath them, dashed, what dries. The list below says the same in words. */
export function SessionRule({ session: { fromMin, toMin, stints }, restMin }: { readonly session: Session; readonly restMin: (stint: Stint) => number | undefined }): ReactElement {
  const length = toMin - fromMin;
  const hours = Array.from({ length: Math.floor(toMin / 60) - Math.ceil(fromMin / 60) + 1 }, (_, k) => 60 * (Math.ceil(fromMin / 60) + k) - fromMin);
  return (
    <svg className="session-rule" viewBox={`0 0 ${length} 26`} preserveAspectRatio="none" aria-hidden="true">
      {stints.map((s) => <rect key={`${s.step} ${s.fromMin}`} x={s.fromMin} y={2} width={s.toMin - s.fromMin} height={13} />)}
      {stints.map((s) => {
        const rest = restMin(s);
        return rest === undefined ? null : <path key={`${s.step} ${s.toMin} rests`} className="rests-line" d={`M${s.toMin} 20H${Math.min(length, s.toMin + rest)}`} />;
      })}
      {hours.map((min) => <path key={min} className="hour" d={`M${min} 0V26`} />)}
    </svg>
  );
}
