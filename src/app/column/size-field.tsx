import type { ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import type { Desk } from "../desk.ts";
import { sizeWords } from "../state/measure-rule.ts";

interface SizeFieldProps {
  readonly desk: Desk;
  readonly pair: Pair | undefined;
}

/** The size as the maker says it; empty, the nominal one of the last stands in its place. */
export function SizeInput({ desk, pair }: SizeFieldProps): ReactElement {
  const { size } = desk.job;
  const nominal = size === "" ? (pair?.labels.size ?? "") : "";
  return (
    <input
      className="words"
      aria-label="size written on every piece"
      value={size}
      placeholder={nominal || (desk.job.last.from === "tape" ? "none" : "")}
      size={Math.max(5, (size || nominal).length)}
      onChange={(e) => desk.change({ ...desk.job, size: e.target.value }, "the size", "typing the size")}
      onBlur={() => desk.settle()}
      maxLength={40}
    />
  );
}

/** The size in its sentence, and where it comes from. */
export function SizeField(props: SizeFieldProps): ReactElement {
  const { last, size } = props.desk.job;
  const taped = last.from === "tape";
  const own = size !== "" && !(last.from === "measures" && size === sizeWords(last.measures));
  const from = taped ? "A tape tells no size. Type the one you call it by; empty, none is written." : "From the stick length without the point of the toe, in Paris points; say your own if you call it otherwise.";
  return (
    <div className="sentence">
      <p>Its size is <SizeInput {...props} />, written on every piece.</p>
      <p className="follows">{!own ? from : taped ? "As you say it." : "As you say it. Clear it to have it from the stick length."}</p>
    </div>
  );
}
