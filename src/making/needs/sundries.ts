import type { MakingInput } from "../input.ts";
import type { Need } from "../need.ts";
import { countOf, netOf, piecesOf } from "./part-areas.ts";
import { grossOf, sheetWaste } from "./waste.ts";

/** What closes a strap, card for the patterns and what finishes the edges. */
export const sundryNeeds = (input: MakingInput): readonly Need[] => [...fastenings(input), ...card(input), ...edgeFinish(input)];

function fastenings({ pieces, settings: { strapWidthMm } }: MakingInput): readonly Need[] {
  const count = countOf(pieces.filter(({ name }) => name === "instep strap"));
  if (count === 0) return [];
  return [{
    good: "fastenings", measure: "count", parts: [{ name: "instep strap", perPair: count, net: count }], net: count, gross: count,
    kind: `a button for each strap, about ${digits(strapWidthMm)} mm across, or a buckle for a strap ${digits(strapWidthMm)} mm wide; with a button 40 mm of round elastic where it is to give`,
    reason: "Closes the strap; set last, with the shoe on the foot.",
    source: "common practice, no source",
  }];
}

const digits = (mm: number): string => String(Number(mm.toFixed(1)));

/** Every pattern of one shoe is cut in card once and turned over for the other; a shank is bought in its form. */
function card({ pieces }: MakingInput): readonly Need[] {
  const parts = pieces.filter(({ side, material }) => side === "right" && material !== "shank").map(({ name, areaMm2 }) => ({ name, perPair: 1, net: areaMm2 }));
  const net = netOf(parts);
  if (net === 0) return [];
  return [{
    good: "pattern card", measure: "area", parts, net, gross: grossOf(net, sheetWaste), waste: sheetWaste, again: true,
    kind: "firm, 0.4 to 0.6 mm",
    reason: "Each pattern of one shoe once; turned over for the other. Paper of the printed sheets does for a first try.",
    source: "common practice, no source",
  }];
}

/** Edge dye and wax: two coats, so thick as a coat of dye lies on an edge, mm (from memory). */
const edgeCoats = 2, coatMm = 0.2;

/** Edges of sole and heel that are dyed and waxed: their length as cut by their thickness. */
function edgeFinish({ pieces, made, settings }: MakingInput): readonly Need[] {
  const thick = new Map<string, number>(made?.heel?.layers.map(({ name, backMm, breastMm }) => [name, (backMm + breastMm) / 2]) ?? []);
  const edges = [...piecesOf(pieces, "sole leather").map((piece) => ({ piece, mm: settings.soleMm })), ...piecesOf(pieces, "heel leather").flatMap((piece) => (thick.has(piece.name) ? [{ piece, mm: thick.get(piece.name)! }] : []))];
  const names = [...new Set(edges.map(({ piece }) => piece.name))];
  const parts = names.map((name) => {
    const same = edges.filter(({ piece }) => piece.name === name);
    return { name, perPair: same.reduce((sum, { piece }) => sum + piece.perPair, 0), net: same.reduce((sum, { piece, mm }) => sum + piece.perPair * piece.perimeterMm * mm * edgeCoats * coatMm, 0) };
  });
  const net = netOf(parts);
  if (net === 0) return [];
  return [{
    good: "edge finish", measure: "volume", parts, net, gross: net,
    kind: "edge dye or ink and wax",
    reason: "A little: two coats round sole and heel. Raw edges of the upper take a drop of the same.",
    source: "from memory",
  }];
}
