import type { ToolWords } from "./tool-need.ts";

/** Pattern, cutting and skiving. */
export const cuttingTools = {
  "scale square": { use: "To measure on each printed sheet that the printer kept true size.", standIn: "A steel rule on the bars of each sheet.", must: true, buy: "first" },
  "steel rule": { use: "To measure, and to guide the knife along straight edges.", noStandIn: "Nothing: a wooden or plastic rule gets cut, and guides no knife.", must: true, buy: "first" },
  "tape measure": { use: "To measure round the last and the foot.", standIn: "A strip of paper and the rule.", must: true, buy: "first" },
  dividers: { use: "To carry a length from the one last to the other, and to scribe margins.", standIn: "A strip of stiff card with two marks.", must: false, buy: "first" },
  awl: { use: "To prick marks through the pattern into the leather.", standIn: "A thick needle in a cork.", must: true, buy: "first" },
  "silver pen": { use: "To draw round the pattern on the grain; it rubs off most leathers. Try it on a scrap.", standIn: "A soft white pencil, tried on a scrap first.", must: true, buy: "first" },
  pencil: { use: "To mark flesh sides, boards and lasts.", standIn: "A ballpoint pen on boards alone: on leather it shows through for ever.", must: true, buy: "first" },
  scissors: { use: "To cut card, tapes and linings.", standIn: "The clicking knife.", must: false, buy: "first" },
  "clicking knife": { use: "To cut leather along the pattern in one pull.", standIn: "A craft knife with new snap-off blades, one blade a shoe.", must: true, buy: "first" },
  "cutting board": { use: "To cut on without blunting the knife.", standIn: "The back of thick lino, or a plastic kitchen board.", must: true, buy: "first" },
  "skiving knife": { use: "To thin edges so that folds and laps do not show.", standIn: "A broad craft blade, freshly stropped, held flat. Practise on scraps.", must: true, buy: "first" },
  "paring stone": { use: "To skive on: hard, smooth and level.", standIn: "A marble or granite tile, or a thick pane of glass with ground edges.", must: true, buy: "first" },
  "sharpening stone": { use: "To give knives their edge back.", standIn: "Wet abrasive paper, 600 and 1200, stuck flat on the tile.", must: true, buy: "first" },
  strop: { use: "To polish the edge before each piece; a keen knife slips less.", standIn: "A strip of veg leather, flesh side up, on a slat, with polishing paste.", must: true, buy: "first" },
  "thickness gauge": { use: "To read how thick leather and skived edges are.", standIn: "A calliper, closed with no force; or ten layers measured together.", must: false, buy: "later" },
  "hole punch": { use: "To end a slit round, and to punch holes.", standIn: "The awl, turned; a slit still wants a round end.", must: false, buy: "later" },
  "pinking snips": { use: "To cut the zigzag of a decorated edge.", standIn: "Punching tooth by tooth, or leave the edge plain.", must: false, buy: "later" },
} as const satisfies Readonly<Record<string, ToolWords>>;
