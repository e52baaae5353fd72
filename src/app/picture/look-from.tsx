import type { ReactElement } from "react";
import { eyeNames, type EyeName } from "./eyes.ts";

/** Words that turn the last to be seen from there. */
export function LookFrom({ onLook }: { readonly onLook: (name: EyeName) => void }): ReactElement {
  return (
    <p>
      <span>Look from</span>
      {eyeNames.map((name) => <button key={name} type="button" className="word" onClick={() => onLook(name)}>{name}</button>)}
    </p>
  );
}
