import { coatGPerM2 } from "./bond.ts";
import { glues, type Bond, type Glue, type Need } from "../need.ts";
import { netOf } from "./part-areas.ts";
import { grossOf, wasteOf } from "./waste.ts";
import type { About } from "./sheets.ts";

/** What stays in brush and pot, or skins over before it is used: from memory. */
export const potShare = 0.2;
const potWaste = wasteOf(potShare, "What stays in brush and pot and skins over: about a fifth of what is taken out, from memory. A thick coat takes half as much again, and more on flesh that was roughened.");

/** Grams of each glue, by the bonds that take it. */
export function glueNeeds(bonds: readonly Bond[]): readonly Need[] {
  return glues.flatMap((glue): readonly Need[] => {
    const of = bonds.filter((bond) => bond.glue === glue);
    if (of.length === 0) return [];
    const parts = of.map(({ name, g }) => ({ name, perPair: 2, net: g }));
    const net = netOf(parts);
    return [{ good: glue, measure: "mass", parts, net, gross: grossOf(net, potWaste), waste: potWaste, ...about(glue, net) }];
  });
}

function about(glue: Glue, netG: number): About {
  const rate = `${coatGPerM2[glue]} g/m² wet for each coat on each face`;
  switch (glue) {
    case "contact cement":
      return {
        kind: "for leather, with its thinner; its safety data sheet beside it",
        reason: `Holds what is pulled when walking. Leather and board take two coats, cork, steel and rubber one; ${rate}. A rough figure for a whole pair is 40 to 50 g, and 20 g of it for the outsoles; counted bond by bond this pair takes ${netG.toFixed(0)} g.`,
        source: "about 150 g/m²: a trade guide on contact adhesives; two coats on leather, one on rubber: an overview of gluing from the repair trade; 150 to 250 g/m² in practice: common practice, no source",
      };
    case "water-based cement":
      return {
        kind: "dispersion for leather and soles, without solvent; its safety data sheet beside it",
        reason: `In place of contact cement. It dries slower, half an hour to an hour until it is clear, and most kinds hold only when they are pressed warm or with their hardener: the label says which. Keep it from frost. Leather and board take two coats, cork, steel and rubber one; ${rate}. Counted bond by bond this pair takes ${netG.toFixed(0)} g.`,
        source: "coats as of contact cement; weight of a coat, drying and warming: from memory, the label of your cement comes first",
      };
    case "latex":
      return {
        kind: "or another water-based adhesive, light in colour",
        reason: `For folds, lining and sock, where solvent cement would show through and smell; one coat, ${rate}. Of the lining two thirds are counted: the forepart stays loose.`,
        source: "latex for linings and folds: a maker of footwear adhesives; weight of a coat: from memory",
      };
    default:
      return {
        kind: "of starch",
        reason: `Makes a leather stiffener hard as it dries and can be moved while it is wet; ${rate}.`,
        source: "paste for stiffeners: notes of a shoemaking course; weight of a coat: from memory",
      };
  }
}
