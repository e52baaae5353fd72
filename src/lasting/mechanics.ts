import { correctFlat } from "./correct.ts";
import { fabricOf } from "./fabric.ts";
import type { Making, Mechanics } from "./lasting-case.ts";
import { lastingBoard, pullOver } from "./pull-over.ts";
import { wholeUpper } from "./upper.ts";

/** Level 1 and level 2 as they are. */
export const trueMechanics: Mechanics = {
  puller: (flat, { last, lines, margins }, rough = false) => {
    const board = last.side === "right" ? { board: lastingBoard({ cut: wholeUpper(flat), last, lines }) } : {};
    return (making, uv, watch) => pullOver({ cut: wholeUpper({ ...flat, uv }), last, lines, fabric: fabricFor(making), settings: making.settings, margins }, { watch, rough, ...board });
  },
  propose: (flat, making, { last }) => correctFlat(flat, fabricFor(making), making.settings, { last }).flat.uv,
};

const fabricFor = ({ upper, lining, settings, edge }: Making) => fabricOf(upper, lining, settings, edge);
