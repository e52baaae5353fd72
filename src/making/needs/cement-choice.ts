import { finding, type Finding } from "#base/findings.ts";
import type { MakingSaid } from "../said.ts";

/** What soles and margins are stuck with. */
export const cements = ["contact cement", "water-based cement"] as const;
export type Cement = (typeof cements)[number];

/** What is meant by a cement's name as it was written; nothing where it is none of ours. */
function cementNamed(written: string): Cement | undefined {
  const plain = written.trim().toLowerCase().replaceAll(/[\s_-]+/gu, " ").replace(/ cement$/u, "");
  return plain === "" || plain === "contact" ? "contact cement" : plain === "water based" ? "water-based cement" : undefined;
}

/** The cement that the maker chose; contact cement where nothing is said, or nothing that can be read. */
export const cementOf = ({ cement = "" }: Pick<MakingSaid, "cement">): Cement => cementNamed(cement) ?? "contact cement";

/** Tells a choice that cannot be read. */
export function readCement({ cement = "" }: Pick<MakingSaid, "cement">, findings: Finding[]): Cement {
  if (cementNamed(cement) === undefined) findings.push(finding("cement-unread", { got: cement.trim() }));
  return cementOf({ cement });
}
