import { sentence } from "../sentence.ts";

const mm1 = (v: number): string => `${v.toFixed(1)} mm`;

const unitNames: Readonly<Record<string, string>> = { m: "metres", dm: "decimetres", cm: "centimetres", mm: "millimetres", in: "inches" };

export const footSentences = {
  "foot-unit-read": sentence(
    "note",
    (d: { unit: string; lengthMm: number }) => `Read in ${unitNames[d.unit] ?? d.unit}: the scan is ${mm1(d.lengthMm)} long. The scale of a scan is its commonest fault, so compare a length with the foot itself.`,
  ),
  "is-a-foot": sentence(
    "look",
    () => "This is the scan of a foot, not of a last: it has no feather edge. It is measured as a foot; a pattern needs a last. Choose or make a last by these measures (a last is longer than its foot and often tighter), then scan it.",
  ),
  "foot-has-no-pattern": sentence(
    "stop",
    () => "This is the scan of a foot, not of a last, so no pattern can be made on it: a foot has no feather edge, no toe room and no heel pitch. Scan a last that suits the foot, or make one from a last's measures; the foot's own measures are told on the command line (measure).",
  ),
  "foot-side-doubtful": sentence("look", (d: { side: string }) => `Taken for a ${d.side} foot, but toes and arch do not agree on it: look which foot it is.`),
  "foot-side-kept": sentence("look", (d: { side: string; said: string }) => `You said that it is a ${d.said} one, but the side of a foot is read from toes and arch alone: it is measured as a ${d.side} foot. If it is a ${d.said} foot, look whether the scan is mirrored, and do not use the ball measures.`),
  "foot-level-from-axis": sentence("note", () => "What is level was taken from the axes of the file, because the scan has no leg cut off straight."),
  "foot-level-from-rest": sentence(
    "look",
    () => "What is level was taken from how the foot would rest, because the scan has no leg cut off straight and lies in no upright axis. Lengths that take in the leg can be 5 mm off: let the foot stand on a level plate when you scan it, and keep it upright in the file.",
  ),
  "foot-unusual": sentence(
    "look",
    (d: { what: string; mm: number; fromMm: number; toMm: number; of: string }) =>
      `The ${d.what} of ${mm1(d.mm)} lies outside ${mm1(d.fromMm)} to ${mm1(d.toMm)}, ${d.of}. Feet differ, but so do scans: measure it with a tape.`,
  ),
};
