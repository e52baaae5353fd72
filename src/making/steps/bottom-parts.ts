import { lastCoat, bondHolds, cementTools, dryToTouch, overnightMin } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { must, type MayStep, type Said } from "./plan.ts";
import { counted, digits, mm, mmMeasured, those } from "./words.ts";

/** Insoles, shanks and what is cut for the bottom; none of it waits for the upper. */
export const bottomPartSteps = (facts: Facts): readonly MayStep[] => [
  must("cut-bottom", "bottom parts", ["cut-cards"], () => cut(facts)),
  must("block-boards", "bottom parts", ["cut-bottom", "mark-lasts"], block),
  must("bend-shanks", "bottom parts", ["cut-cards"], () => bend(facts)),
  must("coat-boards", "bottom parts", ["block-boards", "bend-shanks"], () => coat(facts)),
  must("glue-boards", "bottom parts", ["coat-boards"], () => glue(facts)),
];

function cut({ made, settings: s, countOf, has, namesOf }: Facts): Said {
  const lifts = namesOf("heel leather").filter((name) => name.startsWith("lift")).length;
  return {
    title: made ? "Cut the bottom parts" : "Draw and cut the bottom parts",
    todo: made
      ? those(
          `${counted(countOf("insole board"), "insole")} of ${mm(s.firstBoardMm)} board or shoulder leather; ${counted(countOf("second board"), "second board")} of ${mm(s.secondBoardMm)}. The cards are seen from above.`,
          `${counted(countOf("sole leather"), "outsole")} from bend, ${mm(s.soleMm)}, arrow along its length; the grain will walk on the ground.`,
          countOf("heel leather") > 0 && `Heel leather: ${counted(countOf("heel leather"), "piece")}, ${those(has("split lift") && `split lifts ${mm(s.splitLiftMm)}`, lifts > 0 && `lifts ${mm(s.liftMm)}`, has("top piece") && `top pieces ${mm(s.topPieceMm)} from the butt`).join(", ")}.`,
          has("bottom filler") && `${counted(countOf("filler"), "filler")} of cork or felt.`,
          "Cut upright: an undercut edge gives the upper nothing to turn over. Write right, left and inside on each.",
        )
      : [
          `This pattern has no bottom. Draw round each last's bottom on card along the feather line and cut the insole ${mm(s.insoleInMm)} inside it, from board of ${mm(s.firstBoardMm)}; inside and outside marked.`,
          `Second board, ${mm(s.secondBoardMm)}: the same outline from the seat to ${mm(s.secondBehindMm)} behind the joint.`,
          `Outsoles from bend, ${mm(s.soleMm)}: draw round the lasted shoe, and add ${mm(s.soleFinishForepartMm)} at the forepart, ${mm(s.soleFinishWaistMm)} at the waist and ${mm(s.soleFinishHeelMm)} at the heel.`,
          `Lifts of ${mm(s.liftMm)} and top pieces of ${mm(s.topPieceMm)} from the seat's outline with ${mm(s.heelOverMm)} beyond it; split lifts of ${mm(s.splitLiftMm)}, a horseshoe ${mm(s.splitLiftWideMm)} wide.`,
          "Filler and sock are drawn once the margins are down and the last is out.",
        ],
    needs: { goods: ["insole board", "second board", "sole leather", "heel leather", "filler"], tools: ["clicking knife", "cutting board", "steel rule", "sharpening stone", ...(made ? [] : (["pencil"] as const))] },
    right: ["Held to the last's bottom the insole meets the feather line all round and stands out nowhere.", "Right and left cover each other, turned over."],
    fails: ["A sliver too much off one side: the shoe fits another foot.", "Two right insoles."],
    minutes: made ? 20 : 35,
    shoes: "together",
    hazards: ["knife"],
  };
}

function block(): Said {
  return {
    title: "Block the insoles to the lasts",
    todo: [
      "Leather: soak the insoles for an hour or more. Board: damp it on both sides until it bends without cracking.",
      "Bind each to its last's bottom with a strap or bandage, wound from the toe to the heel, tightest at the waist.",
      "Damp and bind the second boards over them where they are stiff. Leave both on the lasts, in the air of the room and off the heater.",
    ],
    needs: { goods: ["insole board", "second board"], tools: ["lasts", "bowl of water", "clamps"] },
    right: ["Taken off dry, it keeps the last's form and does not rock on it."],
    fails: ["Dried in a hurry by heat: it warps as soon as it is free.", "Bound askew: it dries a millimetre off and is lasted so."],
    minutes: 10,
    wait: { leastMin: overnightMin, wellMin: 24 * 60, what: "the insoles dry on the lasts", source: "soaked for an hour or more, strapped on the last and dried: a maker's notes; overnight to a day is common practice, no source" },
    shoes: "together",
    hazards: [],
  };
}

/** At most so many heights of the shank's bend are told, at even distances. */
const toldBends = 3;

function bend({ made, settings: s }: Facts): Said {
  const bends = made?.shank.bend ?? [];
  const inner = bends.slice(1, -1);
  const told = inner.length > 0 ? Array.from({ length: toldBends }, (_, k) => inner[Math.round(((k + 0.5) / toldBends) * (inner.length - 1))]!) : [];
  const lengthMm = made?.shank.lengthMm ?? s.shankMm;
  return {
    title: "Bend the shanks",
    todo: those(
      `Two shanks, ${mm(lengthMm)} long, ${mm(s.shankWideMm)} wide and ${mm(s.shankThickMm)} thick. The round end goes to the front, the square one to the heel.`,
      told.length > 0 && `Bend them to the card of the bend, a little at a time. From the rear end the last's bottom lies over the straight line: ${told.map(({ alongMm, riseMm }) => `${mmMeasured(riseMm)} at ${Math.round(alongMm)}`).join(", ")} mm along.`,
      told.length === 0 && "Bend them to the last's bottom along the line from the seat to the waist, a little at a time.",
      "File a cut end round.",
    ),
    needs: { goods: ["shanks"], tools: ["lasts", "lasting hammer", "goggles"] },
    right: ["On the last no light shows beneath, and nothing rocks.", "Both are bent alike: one on the other."],
    fails: ["Fitted flat and left to the boards to bend: it springs the waist open."],
    minutes: 10,
    shoes: "together",
    hazards: ["hammer and nails"],
  };
}

function coat({ made, settings: s }: Facts): Said {
  const shank = made?.shank;
  return {
    title: "Coat boards and shanks",
    todo: those(
      `Skive the second board's front to nothing over ${mm(s.secondSkiveMm)}.`,
      `Draw on the insole's lower face where the second board ends, ${mm(s.secondBehindMm)} behind the joint, and where the shank lies${shank ? `: its rear end ${mmMeasured(shank.fromSeatMm)} from the seat, its front end ${mmMeasured(shank.behindJointMm)} behind the joint` : `: ${mm(s.shankRearMm)} or more from the seat's edge, ${mm(s.shankFrontMm)} or more behind the joint`}.`,
      "Roughen the insole there, both faces of the shank and the second board; brush the dust off before you open the cement.",
      "Coat all of them thinly to the edge.",
    ),
    needs: { goods: ["insole board", "second board", "shanks", "contact cement"], tools: ["skiving knife", "abrasive paper", "steel rule", ...cementTools] },
    right: [dryToTouch],
    fails: ["A second board that reaches into the bend: it breaks, or its edge is felt.", "Coated thickly: it stays wet beneath its own skin."],
    minutes: 12,
    wait: lastCoat("the cement on boards and shanks dries"),
    shoes: "together",
    hazards: ["solvent cement", "knife", "dust"],
  };
}

function glue({ settings: s }: Facts): Said {
  return {
    title: "Glue shank and second board on",
    todo: [
      "Put the insole on its last again and lay the shank on its line: along seat and waist, not toward the toe.",
      "Lay the second board over it from the heel forward; it sticks where it touches.",
      "Press and hammer from the middle outward, against the last, so that the boards keep its form.",
      `Pare the edges level with the insole, upright, ${mm(s.insoleInMm)} inside the feather line.`,
    ],
    needs: { goods: ["insole board", "second board", "shanks"], tools: ["lasts", "lasting hammer", "roller", "clicking knife"] },
    right: [`${digits(s.firstBoardMm + s.secondBoardMm)} mm thick behind the skive, and a little more over the shank.`, "It bends at the joint and nowhere behind it."],
    fails: ["Glued on the table: it is flat for good.", "Insole stuck to the last: cement came over the edge."],
    minutes: 13,
    wait: bondHolds("the boards' cement comes to its first strength", 60),
    shoes: "one after the other",
    hazards: ["hammer and nails", "knife"],
  };
}
