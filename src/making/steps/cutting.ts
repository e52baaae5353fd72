import { listed } from "#base/listed.ts";
import { notchDepthMm } from "#pieces/marks.ts";
import type { Facts } from "./facts.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import { counted, mm, stripLong, those } from "./words.ts";

/** Leathers looked over, uppers, linings and what stiffens them cut. */
export const cuttingSteps = (facts: Facts): readonly MayStep[] => [
  must("look-over-leather", "cutting", [], () => lookOver(facts)),
  must("cut-upper", "cutting", ["look-over-leather", "cut-cards"], () => cutUpper(facts)),
  must("cut-lining", "cutting", ["look-over-leather", "cut-cards"], () => cutLining(facts)),
  may("cut-stiffening", "cutting", ["cut-cards"], facts.has("stiffener") || facts.has("toe puff") || facts.countOf("side lining") > 0, () => cutStiffening(facts)),
];

function lookOver({ settings, leathers }: Facts): Said {
  const { upperThicknessMm, liningThicknessMm } = settings;
  return {
    title: "Look the leathers over",
    todo: [
      `Measure the thickness in several places: the pattern reckons with ${mm(upperThicknessMm)} for the upper (${leathers.upper.name}) and ${mm(liningThicknessMm)} for the lining (${leathers.lining.name}).`,
      "Hold the skin by the light, grain and flesh, and ring every scar, hole and loose place with the silver pen.",
      "Pull 100 mm between your thumbs lengthwise, across and aslant. Draw an arrow on the flesh side where it gives least; do so again in each quarter of the skin.",
      "Push the grain inward with a thumb: fine wrinkles are firm, coarse ones are loose leather that is kept for small parts.",
    ],
    needs: { goods: ["upper leather", "lining leather"], tools: ["thickness gauge", "silver pen", "steel rule"] },
    right: ["Thickness within 0.2 mm of what the pattern reckons with.", "Arrows cover the whole skin, not its middle alone."],
    fails: ["Trusting one arrow: toward belly and legs the tight way turns."],
    minutes: 10,
    shoes: "together",
    hazards: [],
  };
}

function cutUpper({ namesOf, countOf, settings, corrected, leathers, strip, folds, edge, pairs }: Facts): Said {
  const names = namesOf("upper leather");
  const binding = strip("topline binding");
  return {
    title: "Cut the uppers",
    todo: those(
      `For each shoe: ${listed(names)}; ${counted(countOf("upper leather"), "piece")} for the pair. Lay each card print up on the grain side: so it cuts the shoe it names.`,
      "Lay the card's arrow along the leather's own, and right and left on like places of the skin, so that both give alike. The best of it goes to the forepart and the topline.",
      `All allowances are in the outline, a lasting margin of ${mm(settings.lastingToeMm)} at the toe and ${mm(settings.lastingHeelMm)} at the heel among them: cut along its edge, nowhere inside.`,
      corrected && `These pieces are cut smaller for ${leathers.upper.name}. Do not make them up to the net card: the drafts bring them there.`,
      binding && `Cut ${counted(binding.perPair, "binding strip")} ${mm(binding.widthMm)} wide and ${stripLong(binding)} long, ${mm(settings.stripEndsMm)} to trim at each end counted in, across the tight way, so that they go round the curve; split or skive them to ${mm(settings.bindingThickMm)}.`,
      `Before you lift the card, prick its marks through to the flesh side and notch the edge as deep as drawn: ${mm(notchDepthMm)} in the lasting margin, never past half of a narrower allowance${folds || edge === "bagged" ? "" : "; none in the topline"}. Write right or left${pairs > 1 ? ` and which of the ${pairs} pairs` : ""} on each piece.`,
    ),
    needs: { goods: ["upper leather"], tools: ["clicking knife", "cutting board", "steel rule", "awl", "silver pen"] },
    right: ["Laid grain to grain, left and right cover each other within 0.5 mm.", "The arrow of each piece runs along the leather's own."],
    fails: ["Two right shoes: the same card used twice.", "One foot from the back and one from the belly: it will stretch more and can never be matched.", "Pulling the leather flat while cutting: the piece shrinks when you let go."],
    minutes: 20,
    shoes: "together",
    hazards: ["knife"],
  };
}

function cutLining({ namesOf, countOf, settings, threeLinings, edge }: Facts): Said {
  const sock = countOf("sock leather"), small = (name: string): boolean => name.startsWith("strap") || name.startsWith("bow");
  const names = namesOf("lining leather"), linings = [...names.filter((name) => !small(name)), ...names.filter(small)];
  return {
    title: sock > 0 ? "Cut the linings and socks" : "Cut the linings",
    todo: those(
      `For each shoe: ${listed(linings)}; ${counted(countOf("lining leather"), "piece")} for the pair. These cards lie print up on the flesh side.`,
      threeLinings && "The heel pocket is turned: its flesh side grips the foot, so its card lies print up on the grain side.",
      threeLinings
        ? "Lay the arrows along the tight way here too: along the topline the linings must not grow. The pocket's own arrow runs up the back: it may give round the heel, where lining and upper hold it, and keeps its height."
        : "Lay the arrows along the tight way here too, or the topline grows with every wearing.",
      edge !== "bagged" && settings.liningTrimMm > 0 && `${mm(settings.liningTrimMm)} stand above the topline; they are cut away once the topline is stitched.`,
      sock > 0 && `${counted(sock, "sock")} of sock leather. Keep them flat until the very end.`,
      "Prick the marks and write right or left.",
    ),
    needs: { goods: sock > 0 ? ["lining leather", "sock leather"] : ["lining leather"], tools: ["clicking knife", "cutting board", "awl", "silver pen"] },
    right: ["The lining is smaller than the upper at heel and toe, as it is drawn."],
    fails: ["Making the lining as big as the upper: it lies inside, on a shorter way, and folds at the heel."],
    minutes: 20,
    shoes: "together",
    hazards: ["knife"],
  };
}

function cutStiffening({ has, countOf, stiff, settings, stiffenerOfLeather, puffOfLeather }: Facts): Said {
  const sides = countOf("side lining") > 0;
  const skived = has("stiffener") || has("toe puff");
  return {
    title: skived ? "Cut and skive what stiffens heel and toe" : "Cut the side linings",
    todo: those(
      has("stiffener") && `Two stiffeners of ${stiffenerOfLeather ? "firm vegetable-tanned leather" : "stiffener board"}, ${mm(stiff.counterMm)} thick, mirrored.`,
      has("toe puff") && `Two toe puffs of ${puffOfLeather ? "skived leather" : "puff sheet"}, ${mm(settings.toePuffMm)} thick.`,
      sides && `Two inner and two outer side linings, ${mm(settings.sideLiningMm)} thick.`,
      skived && `Skive them to nothing all round: over ${mm(stiff.skiveMm)} at every edge that lies inside the upper, over ${mm(stiff.skiveFeatherMm)} along the feather line, where ${mm(settings.stiffLeftMm)} may be left.`,
      "Prick the centre through and write right or left.",
    ),
    needs: {
      goods: [...(has("stiffener") ? (["stiffener"] as const) : []), ...(has("toe puff") ? (["toe puff"] as const) : []), ...(sides ? (["side lining"] as const) : [])],
      tools: ["clicking knife", "skiving knife", "paring stone", "cutting board", "thickness gauge"],
    },
    right: skived ? ["Close your eyes and draw a finger over the edge: no step is to be felt.", "Right and left are equally thick in the middle, within 0.1 mm."] : ["Left and right cover each other."],
    fails: skived ? ["An edge that was left thick shows through the upper for as long as the shoe lives.", "A puff made longer to stop creases: it ends where the foot bends and makes more of them."] : ["Too long: it must lie on the skived ends of stiffener and puff, not beyond."],
    minutes: skived ? 15 : 8,
    shoes: "together",
    hazards: skived ? ["knife", "dust"] : ["knife"],
  };
}
