/** What the needle goes through, from its side down. */
export interface Ply {
  /** "upper", "lining", "seam tape". */
  readonly of: string;
  readonly mm: number;
  readonly count: number;
}

/** One line of stitches as the machine runs it, on one shoe; both shoes have it alike. */
export interface Stitched {
  /** "back seam", "topline", "outer side seam". */
  readonly name: string;
  /** Names of the pieces it joins or lies on. */
  readonly joins: readonly string[];
  readonly plies: readonly Ply[];
  /** Sum of the plies, mm. */
  readonly stackMm: number;
  /** Of one row, along the line of the stitches as it lies flat, mm. */
  readonly lengthMm: number;
  readonly rows: number;
  readonly stitch: "lockstitch" | "zigzag";
  /** Decides how close the stitches stand. */
  readonly use: "closing" | "topline" | "lapped" | "lining" | "trimming";
}
