import { listed } from "#base/listed.ts";
import { bondHolds, cementTools, dryToTouch, firstCoat, lastCoat, overnightMin, wakeHazards, wakeTools, wakeWords } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { heelLeathers } from "./heel.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import { counted, digits, mm, mmMeasured, those } from "./words.ts";

/** Insoles, shanks and what is cut for the bottom; none of it waits for the upper. */
export const bottomPartSteps = (facts: Facts): readonly MayStep[] => [
  must("cut-bottom", "bottom parts", ["cut-cards"], () => cut(facts)),
  may("soak-insoles", "bottom parts", ["cut-bottom", "mark-lasts"], facts.insoleOfLeather, () => soak(facts)),
  must("block-boards", "bottom parts", ["cut-bottom", "mark-lasts", "soak-insoles"], () => block(facts)),
  must("prime-boards", "bottom parts", ["block-boards", "cut-cards"], () => prime(facts)),
  must("coat-boards", "bottom parts", ["prime-boards"], () => coat(facts)),
  must("glue-boards", "bottom parts", ["coat-boards"], () => glue(facts)),
];

/** Layers of one thickness in one breath: "lift 2 and lift 3, 5 mm each". */
function layersToCut({ made, has, settings: s }: Facts): string {
  const named = new Map<string, readonly string[]>(has("split lift") ? [[mm(s.splitLiftMm), ["split lift"]]] : []);
  for (const { name, backMm, breastMm } of made?.heel?.layers ?? []) {
    const thick = `${mmMeasured(Math.max(backMm, breastMm))}${name === "top piece" ? ", from the butt" : ""}`;
    named.set(thick, [...(named.get(thick) ?? []), name]);
  }
  return [...named].map(([thick, names]) => `${listed(names)}, ${thick}${names.length > 1 ? " each" : ""}`).join("; ");
}

function cut(facts: Facts): Said {
  const { made, settings: s, countOf, has } = facts;
  return {
    title: made ? "Cut the bottom parts" : "Draw and cut the bottom parts",
    todo: made
      ? those(
          `${counted(countOf("insole board"), "insole")} of ${mm(s.firstBoardMm)} ${facts.insoleOfLeather ? "shoulder leather" : "fibre board"}; ${counted(countOf("second board"), "second board")} of ${mm(s.secondBoardMm)}. The cards are seen from above.`,
          `${counted(countOf("sole leather"), "outsole")} from bend, ${mm(s.soleMm)}, arrow along its length; the grain will walk on the ground.`,
          countOf("heel leather") > 0 && `For the heels ${counted(countOf("heel leather"), "piece")}, a right and a left one each, of leather as thick as the layer is to be at its thickest: ${layersToCut(facts)}.`,
          !made.heel && `Lifts of ${mm(s.liftMm)} and top pieces of ${mm(s.topPieceMm)} from the seat's outline with ${mm(s.heelOverMm)} beyond it, as many as your last's height asks for; split lifts of ${mm(s.splitLiftMm)}, a horseshoe ${mm(s.splitLiftWideMm)} wide.`,
          has("bottom filler") && `${counted(countOf("filler"), "filler")} of cork or felt.`,
          "Cut upright: an undercut edge gives the upper nothing to turn over. Write right, left and inside on each.",
          "None of the bottom parts waits for the upper: make them while something else dries.",
        )
      : [
          `This pattern has no bottom. Draw round each last's bottom on card along the feather line and cut the insole ${mm(s.insoleInMm)} inside it, from ${facts.insoleOfLeather ? "shoulder leather" : "fibre board"} of ${mm(s.firstBoardMm)}; inside and outside marked.`,
          `Second board, ${mm(s.secondBoardMm)}: the same outline from the seat to ${mm(s.secondBehindMm)} behind the joint.`,
          "Cut upright: an undercut edge gives the upper nothing to turn over. Write right, left and inside on each.",
          "Filler, outsoles and lifts are drawn off the lasted shoe once its margins are down, the sock once the last is out.",
        ],
    needs: { goods: ["insole board", "second board", ...(made ? (["sole leather", ...heelLeathers(facts), ...(has("bottom filler") ? (["filler"] as const) : [])] as const) : (["pattern card"] as const))], tools: ["clicking knife", "cutting board", "steel rule", "sharpening stone", "cut-resistant glove", ...(made ? [] : (["pencil"] as const))] },
    right: ["Held to the last's bottom the insole meets the feather line all round and stands out nowhere.", "Right and left cover each other, turned over."],
    fails: ["A sliver too much off one side: the shoe fits another foot.", "Two right insoles."],
    minutes: made ? 18 : 25,
    shoes: "together",
    hazards: ["knife"],
  };
}

function soak({ settings: s }: Facts): Said {
  return {
    title: "Soak the insoles",
    todo: [`These insoles are leather, ${mm(s.firstBoardMm)}: lay them in lukewarm water for an hour or more, right under it, and do something else meanwhile.`],
    needs: { goods: ["insole board"], tools: ["bowl of water"] },
    right: ["No bubbles rise any more, and it bends round your hand."],
    fails: ["Only damped: it stays stiff inside and springs off the last."],
    minutes: 2,
    wait: { leastMin: 60, wellMin: 60, mostMin: mostSoakMin, what: "the insoles soak", source: "soaked for an hour or more: a maker's notes, of the shank board; for insoles of leather, and that they do not lie in it for a day, common practice, no source" },
    shoes: "together",
    hazards: [],
  };
}

/** Leather left in water for longer loses what it was tanned with (common practice, no source), minutes. */
const mostSoakMin = 4 * 60;

function block({ pairs, lasts, insoleOfLeather }: Facts): Said {
  return {
    title: "Block the insoles to the lasts",
    todo: those(
      insoleOfLeather ? "Take the leather insoles out of the water and let them drip off: they bend without cracking and nothing runs out." : "These insoles are fibre board and need no soaking: damp them on both sides until they bend without cracking.",
      "Lay each on its last, toe and seat on the marks of the centre. Two turns of bandage about the toe and two about the heel hold it there: see that no edge stands over.",
      "Bind it down with a strap or bandage, wound from the toe to the heel, tightest at the waist, where it has to bend in.",
      "Damp and bind the second boards over them where they are stiff. Leave both on the lasts, in the air of the room and off the heater.",
      lasts < pairs && `From here until it is slipped a pair of shoes keeps its lasts. With ${counted(lasts, "pair")} of lasts for ${pairs} pairs of shoes you last in rounds; write on each insole which pair it belongs to.`,
    ),
    needs: { goods: ["insole board", "second board"], tools: ["lasts", "bowl of water", "bandages", "pencil"] },
    right: ["Taken off dry, it keeps the last's form and does not rock on it."],
    fails: ["Dried in a hurry by heat: it warps as soon as it is free.", "Bound askew: it dries a millimetre off and is lasted so."],
    minutes: 10,
    wait: { leastMin: overnightMin, wellMin: 24 * 60, what: "the insoles dry on the lasts", source: "the shank board soaked for an hour or more, strapped on the last and dried: a maker's notes; the same with the insole, and overnight to a day, are common practice, no source" },
    shoes: "together",
    hazards: [],
  };
}

/** So many heights of the shank's bend are told, at even distances. */
const toldBends = 3;
/** What nobody sees on a strip of steel is not told, mm (our own). */
const leastBendMm = 0.05;

function bendWords({ made }: Facts): string {
  const inner = (made?.shank.bend ?? []).slice(1, -1);
  if (inner.length === 0) return "Bend them to the last's bottom along the line from the seat to the waist, a little at a time.";
  const told = Array.from({ length: toldBends }, (_, k) => inner[Math.round(((k + 0.5) / toldBends) * (inner.length - 1))]!).filter(({ riseMm }) => riseMm >= leastBendMm);
  if (told.length === 0) return "Hold them to the last's bottom along the line from the seat to the waist: they stay as good as straight.";
  return `Bend them to the card of the bend, a little at a time. Over the straight line between its ends the last rises by ${told.map(({ alongMm, riseMm }) => `${mmMeasured(riseMm)} at ${Math.round(alongMm)}`).join(", ")} mm from the heel end.`;
}

function prime(facts: Facts): Said {
  const { made, settings: s, cement } = facts;
  const shank = made?.shank;
  return {
    title: "Bend the shanks and prime the boards",
    todo: [
      `Two shanks, ${mm(shank?.lengthMm ?? s.shankMm)} long, ${mm(s.shankWideMm)} wide and ${mm(s.shankThickMm)} thick; the round end to the front, the square one to the heel. File a cut end round.`,
      bendWords(facts),
      `Skive the second board's front to nothing over ${mm(s.secondSkiveMm)}.`,
      `Draw on the insole's lower face where the second board ends, ${mm(s.secondBehindMm)} behind the joint, and where the shank lies${shank ? `: heel end ${mmMeasured(shank.fromSeatMm)} from the seat, front end ${mmMeasured(shank.behindJointMm)} behind the joint` : `: ${mm(s.shankRearMm)} or more from the seat's edge, ${mm(s.shankFrontMm)} or more behind the joint`}.`,
      "Roughen both boards where they meet, and the shank; draw the dust off before you open the cement.",
      "First coat on both boards where they meet, thin. They drink it.",
    ],
    needs: { goods: ["shanks", "insole board", "second board", cement], tools: ["lasts", "lasting hammer", "skiving knife", "abrasive paper", "steel rule", "pencil", "vacuum cleaner", ...cementTools[cement]] },
    right: ["On the last no light shows beneath the shank, and nothing rocks.", "Both shanks are bent alike: one lies on the other."],
    fails: ["A shank fitted flat and left to the boards to bend: it springs the waist open.", "A second board that reaches into the bend of the foot: it breaks, or its edge is felt."],
    minutes: 15,
    wait: firstCoat(cement, "the first coat on the boards dries"),
    shoes: "together",
    hazards: ["hammer and nails", "knife", "dust"],
  };
}

function coat({ cement }: Facts): Said {
  return {
    title: "Second coat on boards and shanks",
    todo: ["Second coat on both boards, and one on the shank's two faces: thin, even, to the edge.", "Lay them down where no dust falls, and look at the clock."],
    needs: { goods: ["shanks", "insole board", "second board", cement], tools: cementTools[cement] },
    right: [dryToTouch[cement]],
    fails: ["Coated thickly: it stays wet beneath its own skin."],
    minutes: 5,
    wait: lastCoat(cement, "the second coat on boards and shanks dries"),
    shoes: "together",
    hazards: [],
  };
}

function glue({ settings: s, cement }: Facts): Said {
  return {
    title: "Glue shank and second board on",
    todo: those(
      wakeWords(cement),
      "Put the insole on its last again and lay the shank on its line: along seat and waist, not toward the toe.",
      "Lay the second board over it from the heel forward; it sticks where it touches.",
      "Press and hammer from the middle outward, against the last, so that the boards keep its form.",
      `Pare the edges level with the insole, upright, ${mm(s.insoleInMm)} inside the feather line.`,
      `Roughen the lower face all round, ${mm(s.marginLeftMm)} wide and a little more, while it is easy to reach: the lasted margin will be stuck there.`,
    ),
    needs: { goods: ["insole board", "second board", "shanks"], tools: ["lasts", "lasting hammer", "roller", "clicking knife", "abrasive paper", "vacuum cleaner", ...wakeTools(cement)] },
    right: [`${digits(s.firstBoardMm + s.secondBoardMm)} mm thick behind the skive, and a little more over the shank.`, "It bends at the joint and nowhere behind it."],
    fails: ["Glued on the table: it is flat for good.", "Insole stuck to the last: cement came over the edge."],
    minutes: 12,
    wait: bondHolds(cement, "the boards' cement comes to its first strength", 60),
    shoes: "one after the other",
    hazards: ["hammer and nails", "knife", "dust", ...wakeHazards(cement)],
  };
}
