import { finding, type Finding } from "#base/findings.ts";
import { nearestOn } from "#plane/along.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import type { NetEdge, NetPanel } from "../panel.ts";
import type { Mark, Xy } from "../piece.ts";
import { edgeNames } from "../words.ts";
import { fromUpperEnd } from "./words.ts";
import { shownAt, type ToCheck } from "./to-check.ts";
import type { CutPanel } from "./widths.ts";

/** Most that two edges of a seam, or two notches that meet in it, may differ, mm. */
export const seamToleranceMm = 0.1;
/** On the flat a seam may lie so much nearer to the joint than its rule says for the last, mm. */
const flatMm = 1;
/** Notches farther apart than this do not belong together, mm. */
const partnerMm = 6;
/** A short line begins on the edge that it marks, mm. */
const onEdgeMm = 0.05;

/** One edge of a seam. */
interface Bank {
  readonly panel: NetPanel;
  readonly edge: NetEdge;
  readonly index: number;
}

/** Edges that are sewn to each other: equally long, but for the ease that is stated. */
export function checkSeams(input: ToCheck, cut: readonly CutPanel[]): readonly Finding[] {
  const findings: Finding[] = [];
  for (const [a, b] of seamsOf(input.panels).values()) {
    if (!a || !b) continue;
    const differenceMm = edgeLength(a.edge) - edgeLength(b.edge) - ((a.edge.easeMm ?? 0) - (b.edge.easeMm ?? 0));
    if (Math.abs(differenceMm) > seamToleranceMm) {
      const longer = differenceMm > 0 ? a : b;
      const at = shownAt(input, longer.panel.name, edgePoint(longer.edge, edgeLength(longer.edge) / 2));
      findings.push(finding("seam-edges-differ", { seam: seamName(a), longer: bankName(longer, a.panel === b.panel), byMm: Math.abs(differenceMm), allowedMm: seamToleranceMm }, at));
    }
    findings.push(...checkNotches(input, cut, seamName(a), a, b));
  }
  return [...findings, ...checkJoint(input)];
}

function seamsOf(panels: readonly NetPanel[]): ReadonlyMap<string, readonly Bank[]> {
  const seams = new Map<string, Bank[]>();
  for (const panel of panels) {
    panel.edges.forEach((edge, index) => {
      if (edge.seam) seams.set(edge.seam, [...(seams.get(edge.seam) ?? []), { panel, edge, index }]);
    });
  }
  return seams;
}

/** "back seam", "outer side seam". */
function seamName({ edge }: Pick<Bank, "edge">): string {
  const name = edgeNames[edge.role];
  return edge.role !== "side" ? name : `${edge.half === "medial" ? "inner" : "outer"} ${name}`;
}

const bankName = ({ panel, edge }: Bank, same: boolean): string => (same ? (edge.half === "lateral" ? "outer edge" : "inner edge") : `edge of the ${panel.name}`);

/** Notches of both edges, by how far they lie from where the seam begins. */
function checkNotches(input: ToCheck, cut: readonly CutPanel[], seam: string, a: Bank, b: Bank): readonly Finding[] {
  // Both panels are walked counter-clockwise, so the two edges run against each other.
  const ofA = notchesOn(cut, a);
  const ofB = notchesOn(cut, b).map((s) => edgeLength(b.edge) - s);
  const easeMm = Math.abs((a.edge.easeMm ?? 0) - (b.edge.easeMm ?? 0));
  const findings: Finding[] = [];
  const tell = (bank: Bank, s: number, others: readonly number[], isA: boolean): void => {
    const near = others.reduce((best, o) => (Math.abs(o - s) < Math.abs(best - s) ? o : best), Infinity);
    const own = isA ? s : edgeLength(bank.edge) - s;
    const at = shownAt(input, bank.panel.name, edgePoint(bank.edge, own));
    const fromMm = fromUpperEnd(bank.panel, bank.index, own);
    const edge = bankName(bank, a.panel === b.panel);
    if (Math.abs(near - s) > partnerMm + easeMm) findings.push(finding("seam-notch-alone", { seam, edge, fromMm }, at));
    else if (isA && Math.abs(near - s) > seamToleranceMm + easeMm) findings.push(finding("seam-notches-apart", { seam, fromMm, byMm: Math.abs(near - s), allowedMm: seamToleranceMm }, at));
  };
  for (const s of ofA) tell(a, s, ofB, true);
  for (const s of ofB) tell(b, s, ofA, false);
  return findings;
}

/** Running lengths at which the notches of a panel's piece stand on one of its edges, or the short lines that stand for them on an edge in sight. */
function notchesOn(cut: readonly CutPanel[], { panel, index }: Bank): readonly number[] {
  const own = cut.find((c) => c.panel === panel);
  return (own?.draft.marks ?? []).flatMap((mark) => {
    const at = markAt(mark);
    if (!at) return [];
    const feet = panel.edges.map((e) => ({ ...nearestOn(e.line, e.arc, at[0], at[1]), end: edgeLength(e) }));
    const best = feet.reduce((k, f, i) => (f.distance < feet[k]!.distance ? i : k), 0);
    const { s, end, distance } = feet[best]!;
    return best === index && s > 0.5 && s < end - 0.5 && (mark.kind === "notch" || distance < onEdgeMm) ? [s] : [];
  });
}

/** Where a mark of a seam stands: a notch, but for a snip that a corner needs to be turned, or the short line in its stead. */
function markAt(mark: Mark): Xy | undefined {
  if (mark.kind === "notch") return mark.use === "snip" ? undefined : mark.at;
  return mark.kind === "line" && mark.as === "notch" ? [mark.line.xy[0]!, mark.line.xy[1]!] : undefined;
}

/** Side and inner seams stay clear of the joint. */
function checkJoint(input: ToCheck): readonly Finding[] {
  const told = new Set<string>();
  return input.panels.flatMap((panel) =>
    panel.places.flatMap((place) => {
      const edge = panel.edges[place.edge]!;
      if (place.name !== "joint" || edge.role !== "feather") return [];
      const count = panel.edges.length;
      const ends = [
        { next: panel.edges[(place.edge + count - 1) % count]!, mm: place.s },
        { next: panel.edges[(place.edge + 1) % count]!, mm: edgeLength(edge) - place.s },
      ];
      return ends.flatMap(({ next, mm }) => {
        if ((next.role !== "side" && next.role !== "inner waist") || mm >= input.settings.seamClearOfJointMm - flatMm || told.has(next.seam ?? "")) return [];
        told.add(next.seam ?? "");
        const seam = seamName({ edge: next });
        return [finding("seam-near-joint", { seam, mm, neededMm: input.settings.seamClearOfJointMm }, shownAt(input, panel.name, edgePoint(edge, place.s)))];
      });
    }),
  );
}
