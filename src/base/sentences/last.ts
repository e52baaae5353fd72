import { sentence } from "../sentence.ts";
import { landmarkName, measureName } from "./names.ts";

const unitNames: Readonly<Record<string, string>> = { m: "metres", dm: "decimetres", cm: "centimetres", mm: "millimetres", in: "inches" };
const inUnit = (u: string): string => unitNames[u] ?? u;
const mm = (v: number): string => `${v.toFixed(0)} mm`;
const mm1 = (v: number): string => `${v.toFixed(1)} mm`;
const percent = (v: number): string => `${(100 * v).toFixed(0)} %`;


const percent1 = (v: number): string => `${(100 * v).toFixed(1)} %`;
const stretched = (v: number): string => (Math.abs(v) < 5e-5 ? "neither larger nor smaller" : `${(100 * Math.abs(v)).toFixed(2)} % ${v > 0 ? "larger" : "smaller"}`);
const leftOver = (d: { measure: string; leftMm: number; share: number }): string =>
  Math.abs(d.leftMm) < 0.05 ? `${measureName(d.measure)} agrees` : `${measureName(d.measure)} reads ${mm1(Math.abs(d.leftMm))} (${(100 * Math.abs(d.share)).toFixed(2)} %) ${d.leftMm > 0 ? "more" : "less"} than yours`;
const howTaken = (m: string): string => (m === "ballWidth" ? "ball width across the bottom from edge to edge, square to the axis" : "stick length from heel to toe, level with the ground");

const rough = (d: { noiseMm: number }): string =>
  `The surface of the scan is rough by about ${d.noiseMm.toFixed(2)} mm. It was smoothed; girths may read about ${mm1(5 * d.noiseMm)} off and the feather line about ${mm1(2 * d.noiseMm)}.`;
const coarse = (d: { edgeMm: number }): string =>
  `The triangles of the scan are large: edges of ${mm1(d.edgeMm)} and more. Round places lie up to ${mm1((d.edgeMm * d.edgeMm) / 160)} inside the true last.`;

export const lastSentences = {
  "not-a-last": sentence("stop", (d: { why: string }) => `This does not look like a shoe last: ${d.why}. Load the scan of one last, bottom and sides complete.`),
  "looks-like-shoe": sentence(
    "stop",
    (d: { why: string }) => `This looks like a shoe, not a last: ${d.why}. A pattern is taken from the solid last inside it: scan the last without the shoe.`,
  ),
  "bottom-missing": sentence(
    "stop",
    (d: { share: number }) => `The bottom of the last is missing along ${percent(d.share)} of its edge, so the feather line cannot be found. Scan the last once more, turned over as well.`,
  ),
  "part-not-scanned": sentence(
    "stop",
    (d: { ofAll: number; ofBottom: number }) =>
      `Only part of the last was scanned: ${percent(d.ofAll)} of its surface${d.ofBottom > 0.05 ? `, ${percent(d.ofBottom)} of the side it lies on,` : ""} is missing and would be a guess. A last that stands on the table hides its bottom, one that lies hides a side: scan it standing, then lying on its other side or held by the comb, and let the scanner's program join both.`,
  ),
  "end-not-scanned": sentence(
    "stop",
    (d: { end: "toe" | "heel"; share: number }) => `The scan has no ${d.end} end: ${percent(d.share)} of it is missing and would be a guess, and every length with it. Scan the last once more with that end in view.`,
  ),
  "bottom-guessed": sentence(
    "look",
    (d: { share: number }) => `The scan has nothing on ${percent(d.share)} of the bottom; it was closed over there by guess. Heel height, toe spring and last length can be 1 to 2 mm off: scan the bottom as well, with the last lying on its side.`,
  ),
  "last-size-absurd": sentence(
    "stop",
    (d: { length: number; asMm: number }) =>
      `The scan is ${Number(d.length.toPrecision(4))} units long. In no unit of length (mm, cm, dm, m, inches) is that a last, which is 180 to 330 mm long; the nearest would be ${mm(d.asMm)}. Scale the scan and load it again.`,
  ),
  "last-unusual-length": sentence(
    "look",
    (d: { unit: string; lengthMm: number }) =>
      `Read in ${inUnit(d.unit)} the last is ${mm(d.lengthMm)} long; lasts for adults are 180 to 330 mm. Measure the last from heel to toe and scale the scan if it differs.`,
  ),
  "unit-doubtful": sentence(
    "look",
    (d: { unit: string; lengthMm: number; other: string; otherMm: number }) =>
      `The unit is taken to be ${inUnit(d.unit)}, which makes the last ${mm(d.lengthMm)} long; in ${inUnit(d.other)} it would be ${mm(d.otherMm)}. Measure the last from heel to toe before you cut.`,
  ),
  "unit-read": sentence(
    "note",
    (d: { unit: string; lengthMm: number }) =>
      `Read in ${inUnit(d.unit)}: the last is ${mm1(d.lengthMm)} long. The scale of a scan is its commonest fault, so compare this length with the last itself.`,
  ),
  "size-counts-point": sentence(
    "note",
    (d: { stickMm: number; byStick: number; withoutPoint: number; pointMm: number }) =>
      `By its stick length of ${mm1(d.stickMm)} this last is EU ${d.byStick}, but its narrow toe makes up about ${mm(d.pointMm)} of that, which no foot fills. Without the point it is about EU ${d.withoutPoint}, and that size is marked unless you enter one. How much of a point counts is common practice without a source: go by the size stamped on the last.`,
  ),
  "pose-doubtful": sentence("look", () => "Which way the last lies is not sure from its shape. Look whether its bottom is down and its toe in front before you go on."),
  "comb-missing": sentence(
    "look",
    () => "No flat comb was found on top of the last. Its heel pitch is taken from the seat and the tread instead, so heel height and toe spring can be 1 to 2 mm off.",
  ),
  "pitch-doubtful": sentence(
    "look",
    (d: { degrees: number; heelHeightMm: number }) =>
      `The comb lies ${d.degrees.toFixed(1)} degrees off level when the last stands on its tread, so it is not used. Heel height (${mm1(d.heelHeightMm)}) and toe spring follow from seat and tread and can be 1 to 2 mm off: hold the last on its heel block and compare.`,
  ),
  "side-doubtful": sentence(
    "look",
    (d: { side: string }) => `Taken for a ${d.side} last, but its two sides differ little. If it is for the other foot, say so: inside and outside would change places.`,
  ),
  "side-against-shape": sentence(
    "look",
    (d: { side: string; shape: string }) => `You call it a ${d.side} last; by waist, joints and cone it looks like a ${d.shape} one. Inside and outside follow your word: check it.`,
  ),
  "edge-soft": sentence(
    "look",
    (d: { lengthMm: number; where: string }) =>
      `The feather edge is soft along ${mm(d.lengthMm)} ${d.where}: there the line is the likeliest one, no more. Feel for the edge on the last, and where the line lies beside it put a point on the edge; three or four are enough.`,
  ),
  "edge-drawn": sentence(
    "note",
    (d: { points: number; mostMm: number }) =>
      `The feather line runs through ${d.points === 1 ? "the point" : `the ${d.points} points`} you gave, up to ${mm1(d.mostMm)} beside where it was found. Along clear edges away from there it is as found.`,
  ),
  "edge-none": sentence(
    "look",
    (d: { share: number }) =>
      `There is no feather edge on ${percent(d.share)} of the way round: this looks like a foot or a very worn last. The line is taken where the sole turns up, and every height above it is only as good as that.`,
  ),
  "pull-far-off": sentence(
    "stop",
    (d: { point: number; of: number; mm: number; mostMm: number }) =>
      `Point ${d.point} of the ${d.of} you gave for the feather line lies ${mm(d.mm)} from the edge; one farther off than ${mm(d.mostMm)} cannot be meant for it. Take it out, or put it on the edge.`,
  ),
  "pulls-zigzag": sentence(
    "stop",
    (d: { one: number; other: number; of: number; alongMm: number; acrossMm: number }) =>
      `Points ${d.one} and ${d.other} of the ${d.of} you gave for the feather line lie ${mm1(d.acrossMm)} apart across the edge but only ${mm1(d.alongMm)} along it; one edge cannot run through both. Take one of them out.`,
  ),
  "scale-set": sentence(
    "note",
    (d: { stretch: number; by: readonly string[]; given: number; left: readonly { measure: string; leftMm: number; share: number }[] }) =>
      `Your ${d.by.map(measureName).join(" and ")} ${d.by.length > 1 ? "set" : "sets"} the scale: the scan was made ${stretched(d.stretch)}.${d.given > 1 ? (d.left.length > 0 ? ` On it, ${d.left.map(leftOver).join(", ")}.` : "") : " One measure cannot check itself: with a second one (stick length heel to toe, ball width from edge to edge of the bottom) both would be judged."}`,
  ),
  "scale-leaves": sentence(
    "look",
    (d: { measure: string; leftMm: number; share: number; usualMm: number }) =>
      `With the scale set, the ${measureName(d.measure)} of the scan still reads ${mm1(Math.abs(d.leftMm))} (${percent1(Math.abs(d.share))}) ${d.leftMm > 0 ? "more" : "less"} than yours; scans by telephone are usually within ${mm1(d.usualMm)}. Measure it once more (${howTaken(d.measure)}), then look at the joint points on the picture.`,
  ),
  "scale-far": sentence(
    "look",
    (d: { stretch: number; by: readonly string[] }) =>
      `By your ${d.by.map(measureName).join(" and ")} the scan had to be made ${stretched(d.stretch)}, more than a fault of scale explains. Check that the measure is in millimetres and of this last. If the scan was put together from photographs without a scale, it is as it should be.`,
  ),
  "measure-slip": sentence(
    "stop",
    (d: { measure: string; saidMm: number; foundMm: number; alone: boolean }) =>
      `Your ${measureName(d.measure)} of ${mm(d.saidMm)} is ${percent(Math.abs(d.saidMm / d.foundMm - 1))} ${d.saidMm > d.foundMm ? "more" : "less"} than the scan's ${mm(d.foundMm)}; no fault of scale is that large. Check the reading (${howTaken(d.measure)}, in millimetres), or the unit of the scan.${d.alone ? " If the scan has no scale of its own, give stick length and ball width both." : ""}`,
  ),
  "scale-contradicts": sentence(
    "look",
    (d: { first: string; firstStretch: number; second: string; secondStretch: number; leftMm: number }) =>
      `Your two measures contradict each other: by the ${measureName(d.first)} the scan should be ${stretched(d.firstStretch)}, by the ${measureName(d.second)} ${stretched(d.secondStretch)}. The ${measureName(d.first)} alone was followed, as a slip counts least on the longer one; that leaves the ${measureName(d.second)} ${mm1(Math.abs(d.leftMm))} off yours. Measure both once more: ${howTaken(d.first)}; ${howTaken(d.second)}.`,
  ),
  "own-measure-differs": sentence(
    "look",
    (d: { measure: string; saidMm: number; foundMm: number; limitMm: number }) =>
      `The ${measureName(d.measure)} of the scan reads ${mm1(d.foundMm)}, ${mm1(Math.abs(d.saidMm - d.foundMm))} ${d.saidMm > d.foundMm ? "less" : "more"} than yours of ${mm1(d.saidMm)}; up to ${mm1(d.limitMm)} is usual between hand and scan. Measure once more at the place shown; if yours stands, the scale, the feather line or that place on the scan is wrong.`,
  ),
  "edge-hidden": sentence(
    "look",
    (d: { share: number }) => `The scan has gaps along ${percent(d.share)} of the feather edge; the line is carried straight over them. Look at it there.`,
  ),
  "scan-rough": sentence("note", rough),
  "scan-very-rough": sentence("look", (d: { noiseMm: number }) => `${rough(d)} Measure the girths on the last, or scan it once more in better light.`),
  "scan-coarse": sentence("note", coarse),
  "scan-very-coarse": sentence("look", (d: { edgeMm: number }) => `${coarse(d)} Export the scan at a finer resolution; edges of 2 mm are fine enough.`),
  "gap-on-centre": sentence(
    "look",
    (d: { lengthMm: number }) => `The scan has a gap of ${mm(d.lengthMm)} on the centre line; lengths along it go straight over the gap.`,
  ),
  "landmark-off-line": sentence(
    "look",
    (d: { landmark: string; offMm: number; line: string }) =>
      `The ${landmarkName(d.landmark)} you placed lies ${mm1(d.offMm)} off the ${d.line}, where it belongs. It was taken to the nearest place there: look whether that is what you meant.`,
  ),
  "landmark-far-from-found": sentence(
    "look",
    (d: { landmark: string; farMm: number; toward: "toe" | "heel" | "" }) =>
      `The ${landmarkName(d.landmark)} you placed lies ${mm(d.farMm)} ${d.toward === "" ? "to the side of" : `nearer the ${d.toward} than`} where it was found. It stays where you placed it, and what is measured there follows it: look whether you meant that place.`,
  ),
  "landmarks-swapped": sentence(
    "look",
    (d: { inner: string; outer: string; side: string }) =>
      `The ${landmarkName(d.inner)} and the ${landmarkName(d.outer)} you placed look swapped: each lies where the other was found. Inner is the side of the big toe; exchange them. If you are sure of both, this is no ${d.side} last: say which foot it is for.`,
  ),
  "landmark-on-other-side": sentence(
    "stop",
    (d: { landmark: string; other: string; side: string }) =>
      `The ${landmarkName(d.landmark)} you placed lies on the other side of the last, where the ${landmarkName(d.other)} was found. Inner is the side of the big toe: place it over there. If you are sure of it, this is no ${d.side} last: say which foot it is for.`,
  ),
  "vamp-point-too-high": sentence(
    "stop",
    (d: { leftMm: number; neededMm: number }) =>
      `The vamp point you placed leaves only ${mm(d.leftMm)} of ridge behind it, and the instep point is sought ${mm(d.neededMm)} behind it. Place the vamp point nearer the toe, over the joints, or place the instep point as well.`,
  ),
  "landmarks-out-of-order": sentence(
    "look",
    () => "Vamp point, waist point and instep point do not follow each other up the ridge as they are placed. Look at the points you placed; girths there are measured where they stand.",
  ),
  "measure-not-a-length": sentence(
    "stop",
    (d: { measure: string; value: string }) => `The ${measureName(d.measure)} is given as ${d.value}, which is no length. Enter it in millimetres.`,
  ),
  "measure-out-of-range": sentence(
    "stop",
    (d: { measure: string; askedMm: number; fromMm: number; toMm: number }) =>
      `The ${measureName(d.measure)} asked for is ${mm1(d.askedMm)}; a women's low-heel last can be made here with ${mm(d.fromMm)} to ${mm(d.toMm)}. Measure once more, or scan the last instead.`,
  ),
  "measures-contradict": sentence(
    "stop",
    (d: { measure: string; askedMm: number; against: string; againstMm: number; fromMm: number; toMm: number }) =>
      `The ${measureName(d.measure)} asked for (${mm1(d.askedMm)}) contradicts the ${measureName(d.against)} (${mm1(d.againstMm)}): with that, ${mm(d.fromMm)} to ${mm(d.toMm)} would fit. Measure both once more; neither is altered in silence.`,
  ),
  "stand-in-for-shape": sentence(
    "note",
    () =>
      "This last is built from numbers: lengths, widths and girths are as you gave them, but between them the shape is a stand-in. Hold a card of the pattern to your own last before you cut leather.",
  ),
};
