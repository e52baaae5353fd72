import type { Half } from "#lines/feather.ts";
import type { GroundName } from "./piece.ts";
import type { Edge } from "./net-upper.ts";

/** What an edge of the upper's net is: what is added to it, and what meets it, follows from this alone. */
export type EdgeRole = "feather" | "topline" | "back" | "inner waist" | "side";

/** One edge of a panel between two corners. */
export interface NetEdge extends Edge {
  readonly role: EdgeRole;
  /** Which half of the shoe it lies in; the whole feather or topline of a panel over both halves has none. */
  readonly half?: Half;
  /** The seam that it is one bank of: both banks carry the same name; they are equally long, or `easeMm` says by how much this one is longer. */
  readonly seam?: string;
  readonly easeMm?: number;
}

/** A place of the last on an edge of the panel, by its running length. */
export interface NetPlace {
  readonly name: PlaceName;
  readonly half?: Half;
  /** Number of the edge. */
  readonly edge: number;
  readonly s: number;
}

export type PlaceName = "toe" | "throat" | "joint" | "waist" | "breast" | "seat" | "back" | "quarter 1/4" | "quarter 1/2" | "quarter 3/4" | "lowest" | "seam";

/**
 * One connected part of the net upper (or lining), always as of a right shoe seen from outside: fair edges that run counter-clockwise,
 * each beginning where the one before ends.
 */
export interface NetPanel {
  readonly name: GroundName;
  readonly edges: readonly NetEdge[];
  readonly places: readonly NetPlace[];
  /** Where the centre line lies in it, throat → toe; a quarter has none. */
  readonly centre?: readonly [from: readonly [number, number], to: readonly [number, number]];
}
