import { severityOf, type Finding } from "#base/findings.ts";
import type { LastPair } from "#job/pair.ts";
import type { Proof } from "#job/proof.ts";
import type { Point3 } from "#last/last.ts";
import { mm } from "../state/numbers.ts";
import { findingsAt, pinNumber, type Station } from "../state/stations.ts";
import { nearestIndex } from "./nearest-index.ts";

/** A finding as a short note, and its place on the last, mm. */
interface Note {
  readonly key: string;
  readonly text: string;
  readonly at: Point3;
}
/** Its place on the card as well, mm. */
interface NoteOnBoth extends Note {
  readonly onCard: readonly number[];
}

/** Findings of one station that speak of a place: at the station Last those about the last itself. */
export function notesOnLast({ findings }: { readonly findings: readonly Finding[] }, station: Station = "Last"): readonly Note[] {
  return findingsAt(station, findings).flatMap((f) => noteOf(findings, f));
}

/** All findings that speak of a place; on the card at the nearest point of the shell. */
export function notesOf({ findings, shell, flat }: LastPair, proof: Proof | undefined): readonly NoteOnBoth[] {
  return [...findings.flatMap((f) => noteOf(findings, f)), ...(proof ? gapeNotes(proof) : [])].map((note) => {
    const v = nearestIndex(shell.mesh.positions, note.at);
    return { ...note, onCard: [flat.uv[2 * v]!, flat.uv[2 * v + 1]!] };
  });
}

function noteOf(all: readonly Finding[], f: Finding): readonly Note[] {
  if (!f.at) return [];
  const number = pinNumber(all, f);
  return [{ key: `note ${number}`, text: `${number} · ${severityOf(f) === "note" ? "note" : "look here"}`, at: f.at }];
}

/** Where the card laid back on the last stands off, and by how much. */
function gapeNotes({ check: { gapes } }: Proof): readonly Note[] {
  return gapes.map(({ at, standOffMm }, i) => ({ key: `gape ${i}`, text: `stands off ${mm(standOffMm)}`, at }));
}
