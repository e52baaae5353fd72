import { correctFlat } from "./correct.ts";
import { fabricOf } from "./fabric.ts";
import type { Making, Mechanics } from "./lasting-case.ts";
import { pullOver } from "./pull-over.ts";
import { wholeUpper } from "./upper.ts";

/** Level 1 and level 2 as they are. */
export const trueMechanics: Mechanics = {
  pull: ({ flat, uv, ...making }, { last, lines, margins }, watch) => pullOver({ cut: wholeUpper({ ...flat, uv }), last, lines, fabric: fabricFor(making), settings: making.settings, margins }, { watch }),
  propose: ({ flat, ...making }, { last }) => correctFlat(flat, fabricFor(making), making.settings, { last }).flat.uv,
};

const fabricFor = ({ upper, lining, settings, edge }: Making) => fabricOf(upper, lining, settings, edge);
