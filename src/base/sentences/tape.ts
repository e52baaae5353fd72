import { sentence } from "../sentence.ts";

const mm = (value: number, digits = 1): string => `${value.toFixed(digits)} mm`;
const named: Readonly<Record<"medial" | "lateral", string>> = { medial: "inner", lateral: "outer" };
type Half = keyof typeof named;

export const tapeSentences = {
  "tape-halves-missing": sentence(
    "stop",
    (d: { found: number; photos: number }) =>
      `${d.found === 0 ? "No half" : "Only one half"} of a taped upper was found in ${d.photos === 1 ? "the picture" : `the ${d.photos} pictures`}; two are needed, the inner and the outer one, cut apart along the front centre and the back. Lay them flat beside the card, apart from each other and from the edge of the picture, on a plain ground of another colour, and take the picture again.`,
  ),
  "tape-halves-many": sentence("stop", (d: { found: number }) => `${d.found} pieces in the pictures look like halves of an upper; there must be one inner and one outer half. Keep each half in one picture only, or mark the toe and the throat of the two that count.`),
  "tape-halves-same": sentence(
    "stop",
    (d: { half: Half }) => `Both pieces look like the ${named[d.half]} half of the upper. One of them lies with its other side up, or they come from two feet: turn it over and take the picture again, or mark which one is the inner half.`,
  ),
  "tape-corners-unclear": sentence("stop", (d: { photo: string }) => `In ${d.photo} one piece has the size of a half, but its toe, throat, back and seat corners cannot be told. Place these four marks by hand, or trim the corners of the tape sharp and take the picture again.`),
  "tape-mark-off": sentence("look", (d: { mark: string; offMm: number; on?: "inner half" | "outer half" | "other bottom" }) => `The mark for the ${d.mark} lies ${d.on ? `on the ${d.on}` : Number.isFinite(d.offMm) ? `${mm(d.offMm, 0)} off every traced edge` : "in a picture without a traced edge"} and was not used. Drag it onto the edge of its piece.`),
  "tape-marks-contradict": sentence("stop", (d: { photo: string; marks: readonly [string, string] }) => `In ${d.photo} the marks for the ${d.marks[0]} and the ${d.marks[1]} lie on one and the same piece. Drag each onto its own piece, or take one of them away.`),
  "tape-halves-swapped": sentence(
    "look",
    (d: { innerMm: number; outerMm: number; hollow: boolean }) =>
      `The half taken for the inner one is lower at its side (${mm(d.innerMm)}) than the outer one (${mm(d.outerMm)})${d.hollow ? ", and the hollower waist of the traced bottom lies on the other side too" : ""}; usually the inner side stands 2 to 5 mm higher. Check that the foot is said right and that the halves lie with the side up that you said.`,
  ),
  "tape-half-turned": sentence("note", (d: { half: Half }) => `By your marks the ${named[d.half]} half lies with its other side up than you said. It was turned over here.`),
  "tape-throats-differ": sentence(
    "look",
    (d: { innerMm: number; outerMm: number; mostMm: number }) =>
      `From toe to throat the inner half measures ${mm(d.innerMm)} and the outer one ${mm(d.outerMm)}; they meet there, and ${mm(d.mostMm)} is the most they may differ. Both were set to the middle. Hold the halves together along the front centre and true them.`,
  ),
  "tape-backs-differ": sentence(
    "look",
    (d: { innerMm: number; outerMm: number; mostMm: number }) =>
      `The back of the inner half is ${mm(d.innerMm)} long and that of the outer one ${mm(d.outerMm)}; they are sewn together, and ${mm(d.mostMm)} is the most they may differ. Both were set to the middle at the feather edge. Lay the halves on each other along the back and true them.`,
  ),
  "tape-centre-bows": sentence(
    "look",
    (d: { half: Half; bowMm: number; mostMm: number }) =>
      `The front centre of the ${named[d.half]} half bows ${mm(Math.abs(d.bowMm))} ${d.bowMm > 0 ? "outward" : "inward"} between toe and throat; it must lie straight within ${mm(d.mostMm)}, since the pattern is folded there. Straight is drawn here. Press the tape flat with more slits in the toe's feather edge, none in the centre.`,
  ),
  "tape-slits": sentence("note", (d: { half: Half; slits: number; openMm: number }) => `The ${named[d.half]} half has ${d.slits === 1 ? "one slit" : `${d.slits} slits`} in the feather edge, open ${mm(d.openMm)} together; the edge is drawn straight across.`),
  "tape-slits-wide": sentence(
    "look",
    (d: { half: Half; slits: number; openMm: number; mostMm: number }) =>
      `The ${d.slits === 1 ? "slit" : `${d.slits} slits`} in the feather edge of the ${named[d.half]} half stand open ${mm(d.openMm)} together; ${mm(d.mostMm)} is the most that lasting takes up easily at the toe (common practice). The edge is drawn straight across. Lay the tape flat once more, with more and shorter slits.`,
  ),
  "tape-slit-astray": sentence(
    "look",
    (d: { half: Half; openMm: number }) => `The ${named[d.half]} half is slit outside its feather edge, open ${mm(d.openMm)}. Topline, back and front centre must keep their length: a slit there makes the shoe gape. It was drawn straight across; tape the shoe last again if it is not a mere nick.`,
  ),
  "tape-feather-long": sentence(
    "note",
    (d: { half: Half; longerMm: number; mostMm: number }) => `The feather edge of the ${named[d.half]} half is ${mm(d.longerMm)} longer than the edge of the traced bottom (up to ${mm(d.mostMm, 0)} is usual for a slit pattern). That much must be gathered in lasting, mostly round the toe.`,
  ),
  "tape-feather-short": sentence(
    "look",
    (d: { half: Half; shorterMm: number; mostMm: number }) => `The feather edge of the ${named[d.half]} half is ${mm(d.shorterMm)} shorter than the edge of the traced bottom (at most ${mm(d.mostMm, 0)}). Slits may lap over each other, or the tape was trimmed above the feather edge: lay it against the last and check.`,
  ),
  "tape-halves-apart": sentence(
    "note",
    (d: { apartMm: number; share: number; mostMm: number }) =>
      `Laid on each other the toplines of the two halves lie up to ${mm(d.apartMm)} apart (${(100 * d.share).toFixed(0)} % of the way from back to throat), so each is ${mm(d.apartMm / 2)} off their mean. ${d.apartMm / 2 > d.mostMm ? `That is more than ${mm(d.mostMm, 0)}: do not make one symmetrical pattern of them.` : "Inner and outer half are kept apart here all the same, as is usual for pumps."}`,
  ),
  "tape-no-bottom": sentence(
    "look",
    (d: { lengthMm: number }) =>
      `No bottom was traced, so insole, outsole and sock are left out, and the joint and heel marks stand where they usually lie on a last of about ${mm(d.lengthMm, 0)} (within 5 mm or so). Press tape or paper to the bottom of the last, mark the feather edge on it, cut it out along the mark, lay it beside the card as it is seen from above, and add that picture.`,
  ),
  "tape-bottom-turned": sentence(
    "look",
    (d: { medialMm: number; lateralMm: number }) => `The waist of the traced bottom is hollower on the side that should be the outer one (${mm(d.lateralMm)} against ${mm(d.medialMm)}). It was turned over by its shape; if it is from the other foot, trace the right one.`,
  ),
  "tape-bottoms-many": sentence("look", (d: { found: number; photo: string; marked: boolean }) => `${d.found} outlines look like the bottom of a last; the ${d.marked ? "one you marked" : "largest"}, in ${d.photo}, was used. Keep only one in the pictures.`),
  "tape-spring": sentence("note", (d: { springMm: number }) => `A spring of ${mm(d.springMm)} is asked for. What it does to the leather can only be worked out on a last, so the taped pattern is left as you cut it.`),
  "tape-topline": sentence("note", (d: { toplineMm: number }) => `The topline stays as long as you taped it, ${mm(d.toplineMm)} in all, and nothing is added for what lies beneath. Makers cut it 2 to 3 % shorter in kid or calf so that it grips: take that off along heel and waist yourself, or work from a last.`),
  "tape-cut": sentence(
    "look",
    (d: { cut: "inner-seam" | "quarters" }) => `The upper is asked for ${d.cut === "quarters" ? "in a vamp and two quarters" : "with its seam at the inner waist"}. Where such seams run can only be laid out on a last, so the taped pattern is cut whole with a seam at the back. Draw your seams on the net card and cut it there, or work from a last.`,
  ),
  "tape-lines": sentence("note", (_: object) => "Throat, topline and back are those of your tape. Numbers asked for them have no effect: they need a last to be drawn on."),
};
