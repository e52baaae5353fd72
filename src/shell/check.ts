import { finding, type Finding } from "#base/findings.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import type { Half } from "#lines/feather.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { checkCard, handFactor, layCardBack } from "./check-card.ts";
import { findGapes, type Gape, type LaidBack } from "./check-gapes.ts";
import type { CheckInput } from "./check-input.ts";
import { checkRows, mostStandOffMm, nickedMm, type CheckRow } from "./check-rows.ts";

/** The net card laid back on the last, and all that a maker would check by hand. */
export interface LastCheck {
  readonly rows: readonly CheckRow[];
  /** The coarse shell that was wrapped, where it should lie: over what lies beneath the upper. */
  readonly mesh: Mesh;
  /** x y z a vertex, mm: on the last itself, and where the wrapped card lies. */
  readonly onLast: Float64Array;
  readonly wrapped: Float64Array;
  /** How far each vertex of the wrapped card stands above the surface that it should lie on, mm, never below 0. */
  readonly standOff: Float64Array;
  readonly gapes: readonly Gape[];
  /** How much the card's feather edge is longer than the last's where it is nicked, mm. */
  readonly nicked: Readonly<Record<Half, { readonly seatMm: number; readonly toeMm: number }>>;
  readonly findings: readonly Finding[];
}

/**
 * Lays the flat card back on the last as a sheet that hardly stretches, and measures it against the last. Method, limits and the error
 * to expect: docs/method/check.md.
 */
export function checkOnLast(input: CheckInput, watch: Watch = unwatched): LastCheck {
  const { coarse } = input;
  const laid = laidBack(input, watch);
  const wrapped = laid.usual;
  const rows = checkRows(input, wrapped);
  const gapes = findGapes(input, laid);
  return {
    rows,
    mesh: coarse.shell.mesh,
    onLast: coarse.onLast.mesh.positions,
    wrapped: wrapped.positions,
    standOff: wrapped.height.map((h) => Math.max(0, h)),
    gapes,
    nicked: { medial: nickedMm(input, "medial"), lateral: nickedMm(input, "lateral") },
    findings: [...(wrapped.settled ? [] : [finding("card-does-not-rest", { moveMm: wrapped.steps.at(-1)!.moveMm })]), ...rows.flatMap(rowFinding), ...gapes.map(gapeFinding)],
  };
}

/** The card under three hands, since nobody knows how firmly it will be held. */
function laidBack({ coarse, flat }: CheckInput, watch: Watch): LaidBack {
  const under = (press: number, part: number) => layCardBack(coarse, flat.shell.mesh, (stage, fraction) => watch(stage, (part + fraction) / 3), { ...checkCard, press });
  return { usual: under(checkCard.press, 0), firm: under(checkCard.press * handFactor, 1), light: under(checkCard.press / handFactor, 2) };
}

/** A gape is told by itself, so the flanks' rows say nothing more. */
function rowFinding({ key, half, onLastMm, onCardMm, leastMm, mostMm, holds, at }: CheckRow): readonly Finding[] {
  if (holds || key === "flank") return [];
  return [finding("card-off", { key, ...(half && { half }), onLastMm, onCardMm, leastMm, mostMm }, at)];
}

/** A tight topline that a firm hand draws into the hollow is good to know; one that lies slack is too long under any hand, and to be looked at. */
function gapeFinding({ half, at, fromBackMm, standOffMm, firmMm, lightMm, why, change }: Gape): Finding {
  const off = { standOffMm, firmMm, lightMm, ...change };
  if (why === "instep-hollow") return finding("card-spans-instep", off, at);
  const closes = why === "waist-hollow" && firmMm <= mostStandOffMm;
  return finding(closes ? "card-gapes-lightly" : "card-gapes", { ...off, half, fromBackMm, why }, at);
}
