import { explain, type Finding } from "./findings.ts";

/**
 * Input that cannot be used. Carries the finding that says what is wrong, where, and what to do; caught once, at the edge
 * (pipeline, command line, app). Anything else that is thrown is our own bug.
 */
export class Refusal extends Error {
  override readonly name = "Refusal";
  readonly finding: Finding;
  constructor(finding: Finding) {
    super(explain(finding));
    this.finding = finding;
  }
}
