import { finding, type Finding } from "#base/findings.ts";
import type { Draft } from "../draft.ts";
import { edgeLength } from "../net-upper.ts";
import type { EdgeRole, NetPanel } from "../panel.ts";
import type { GroundName, Xy } from "../piece.ts";
import { Boxed } from "../boxed.ts";
import { shownAt, type ToCheck } from "./to-check.ts";
import { edgeNames } from "../words.ts";
import type { CutPanel } from "./widths.ts";

/** Less than this is less than a scriber's line, mm. */
const roundingMm = 0.05;
/** So near to the end of a lasting edge at a seam the two cannot be compared: lining and upper are divided elsewhere, mm. */
const seamMm = 20;
const cornerMm = 0.01;
/** Sheets that lie as the upper does, about one centre line. */
const likeUpper: readonly GroundName[] = ["lining", "upper"];

/**
 * A lining reaches nowhere beyond its upper but at the topline, where it is trimmed, and at seams of its own. Quarter linings and heel pocket,
 * which lie about no centre line, are compared by their lengths (../lining/check.ts).
 */
export function checkLinings(input: ToCheck, cut: readonly CutPanel[]): readonly Finding[] {
  const upper = cut.find(({ panel }) => panel.centre);
  if (!upper) return [];
  const linings = input.drafts.filter((d) => !d.net && d.material === "lining leather" && d.ground !== undefined && likeUpper.includes(d.ground) && d.marks.some((m) => m.kind === "line" && m.use === "centre"));
  return linings.flatMap((lining) => beyond(input, lining, upper));
}

function beyond(input: ToCheck, lining: Draft, { panel, cut }: CutPanel): readonly Finding[] {
  const worst = new Map<EdgeRole, { readonly mm: number; readonly at: Xy }>();
  const ring = ringOf(panel);
  const { xy } = lining.outline;
  // Every fourth point, one in 3 mm: edges as smooth as these do not reach out and back in between.
  for (let i = 0; i < xy.length; i += 8) {
    const x = xy[i]!, y = xy[i + 1]!;
    if (cut.holds(x, y)) continue;
    const { mm } = cut.nearest(x, y);
    const role = ring.roleNear(x, y);
    if (mm <= roundingMm || !role || mm <= (worst.get(role)?.mm ?? 0)) continue;
    worst.set(role, { mm, at: [x, y] });
  }
  return (["feather", "back"] as const).flatMap((role) => {
    const found = worst.get(role);
    return found ? [finding("lining-outside-upper", { piece: lining.name, byMm: found.mm, where: edgeNames[role] }, shownAt(input, lining.ground, found.at))] : [];
  });
}

/** Says which edge of a panel a point lies at: none at the topline and its own seams, where nothing can be told. */
function ringOf({ edges }: NetPanel): { readonly roleNear: (x: number, y: number) => EdgeRole | undefined } {
  const points: number[] = [];
  const starts: number[] = [];
  let s = 0;
  for (const edge of edges) {
    starts.push(s);
    s += edgeLength(edge);
    for (let i = 0; i + 2 < edge.line.xy.length; i++) points.push(edge.line.xy[i]!);
  }
  const net = new Boxed({ xy: Float64Array.from(points) });
  const roleOf = (e: number): EdgeRole => edges[(e + edges.length) % edges.length]!.role;
  /** What holds within so much of a corner with another edge. */
  const atCorner = (own: EdgeRole, other: EdgeRole, mm: number): EdgeRole | undefined => {
    if (other === "side" || other === "inner waist") return mm < seamMm ? undefined : own;
    if (mm >= cornerMm) return own;
    // The corner at the topline belongs to the trim, that at the seat to the lasting margin.
    return other === "topline" ? undefined : "feather";
  };
  return {
    roleNear: (x, y) => {
      const foot = net.nearest(x, y);
      let e = edges.length - 1;
      while (e > 0 && starts[e]! > foot.s) e--;
      const role = roleOf(e);
      if (role !== "feather" && role !== "back") return undefined;
      const along = foot.s - starts[e]!;
      const first = atCorner(role, roleOf(e - 1), along);
      return first && atCorner(first, roleOf(e + 1), edgeLength(edges[e]!) - along);
    },
  };
}
