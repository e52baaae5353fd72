import { useId, useState, type ReactElement } from "react";
import type { Caution } from "#making/care/caution.ts";

/** What can hurt at a step: one short line for each, and all that is to be said of them behind one word. */
export function StepCare({ of, title }: { readonly of: readonly Caution[]; readonly title: string }): ReactElement | null {
  const [open, setOpen] = useState(false);
  const id = useId();
  if (of.length === 0) return null;
  return (
    <div className="step-care">
      <p>
        <b>Take care</b>: {of.map((c) => c.short).join(" ")}{" "}
        <button type="button" className="word why" aria-expanded={open} aria-controls={id} aria-label={`more: what can hurt at “${title}”`} onClick={() => setOpen(!open)}>more</button>
      </p>
      <div className="safety" id={id} hidden={!open}>
        {open && of.map((c) => (
          <section key={c.hazard} aria-label={c.title}>
            <p><b>{c.title}.</b> {c.what}</p>
            <ul>{c.care.map((line) => <li key={line}>{line}</li>)}</ul>
            {c.limits && c.limits.length > 0 && <p className="follows">Limits for the air, with their date and who set them, stand under tools and care.</p>}
          </section>
        ))}
        {open && [...new Set(of.map((c) => c.first))].map((first) => <p key={first}>{first}</p>)}
      </div>
    </div>
  );
}
