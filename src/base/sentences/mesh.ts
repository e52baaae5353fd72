import { sentence } from "../sentence.ts";

const kinds = "STL, OBJ, PLY, GLB, 3MF or OFF";
const count = (n: number): string => n.toLocaleString("en-GB").replaceAll(",", " ");
const some = (n: number, one: string, many = `${one}s`): string => `${count(n)} ${n === 1 ? one : many}`;
const percent = (share: number): string => `${share < 0.1 ? (share * 100).toFixed(1) : Math.round(share * 100)} %`;

const closedHow = { smooth: "smoothly", lid: "with a flat lid", edged: "on both sides of the edge that crosses it" } as const;

/** A hole that was closed; `where`: in the words of the trade, once it is known how the last lies. */
interface Hole {
  readonly edges: number;
  readonly across: number;
  readonly shape: "smooth" | "lid" | "edged";
  readonly where?: string;
}
const placed = (where: string | undefined): string => (where === undefined ? "" : ` ${where}`);

export const meshSentences = {
  "file-empty": sentence("stop", (d: { file: string }) => `${d.file} is empty. Export the scan again.`),
  "file-not-mesh": sentence("stop", (d: { file: string }) => `${d.file} does not hold a 3-D surface that can be read here. Export the scan as ${kinds}.`),
  "file-other-kind": sentence("stop", (d: { file: string; kind: string }) => `${d.file} is ${d.kind}, which is not read here. Export the scan as ${kinds}.`),
  "file-truncated": sentence(
    "stop",
    (d: { file: string; promised: number; held: number; what: string }) =>
      `${d.file} is cut short: it says it holds ${count(d.promised)} ${d.what}, but there is room for only ${count(d.held)}. Copy or export it again.`,
  ),
  "file-ends-early": sentence("stop", (d: { file: string; after: string }) => `${d.file} is cut short: it ends ${d.after}. Copy or export it again.`),
  "file-damaged": sentence("stop", (d: { file: string; where: string; why: string }) => `${d.file} is damaged at ${d.where}: ${d.why}. Export it again.`),
  "file-packed": sentence("stop", (d: { file: string; how: string }) => `${d.file} holds its surface ${d.how}, which is not read here. Export it as a plain GLB without compression, or as STL.`),
  "file-parts-outside": sentence("stop", (d: { file: string; part: string }) => `${d.file} keeps its points in another file (${d.part}). Export everything into one GLB, or as STL.`),
  "mesh-no-triangles": sentence("stop", (d: { file: string; vertices: number }) =>
    d.vertices > 0
      ? `${d.file} holds ${some(d.vertices, "point")} but no surface between them. Let the scanner's program make a mesh of triangles and export that.`
      : `${d.file} holds no surface: no points and no triangles. Export the scan again.`,
  ),
  "mesh-too-few-triangles": sentence("stop", (d: { file: string; triangles: number }) => `${d.file} holds only ${some(d.triangles, "triangle")}, which cannot enclose a body. A last needs some thousands: export the whole scan.`),
  "mesh-too-large": sentence("stop", (d: { file: string; triangles: number; most: number }) => `${d.file} holds ${count(d.triangles)} triangles; at most ${count(d.most)} are read. Export it at a lower resolution: an edge of 1 mm is plenty for a last.`),
  "index-out-of-range": sentence("stop", (d: { file: string; where: string; index: number; vertices: number }) => `${d.file} is damaged at ${d.where}: a triangle asks for point ${d.index}, but there are only ${count(d.vertices)}. Export it again.`),
  "points-not-numbers": sentence("stop", (d: { file: string; triangles: number; of: number }) => `In ${d.file} ${count(d.triangles)} of ${some(d.of, "triangle")} have corners that are no numbers. The scan is damaged: export it again.`),
  "dropped-not-numbers": sentence("note", (d: { triangles: number }) => `${some(d.triangles, "triangle")} with corners that are no numbers ${d.triangles === 1 ? "was" : "were"} left out.`),
  "mesh-no-body": sentence("stop", (d: { why: string }) => `The scan encloses no body: ${d.why}. Scan the last from all sides and export the closed surface.`),
  "two-bodies": sentence("stop", (d: { parts: number; share: number }) => `The scan holds ${d.parts} bodies of like size (the second has ${Math.round(d.share * 100)} % of the surface of the first). Export one last on its own: the other one is made as its mirror.`),
  "inner-wall-dropped": sentence("note", (d: { share: number }) => `The scan is hollow; its inner wall (${Math.round(d.share * 100)} % of the outer surface) was left out.`),
  "debris-dropped": sentence("note", (d: { parts: number; triangles: number }) => `${some(d.parts, "loose bit")} of ${some(d.triangles, "triangle")} that ${d.parts === 1 ? "does" : "do"} not hang together with the last ${d.parts === 1 ? "was" : "were"} left out.`),
  "far-dropped": sentence("note", (d: { triangles: number }) => `${some(d.triangles, "triangle")} with corners far away from the last ${d.triangles === 1 ? "was" : "were"} left out.`),
  "duplicates-dropped": sentence("note", (d: { triangles: number }) => `${some(d.triangles, "triangle")} lay twice in the scan; the second copies were left out.`),
  "triangles-turned": sentence("note", (d: { triangles: number }) => `${some(d.triangles, "triangle")} showed ${d.triangles === 1 ? "its" : "their"} inside out and ${d.triangles === 1 ? "was" : "were"} turned.`),
  "mesh-turned": sentence("note", () => "The whole scan was inside out and was turned."),
  "flaps-dropped": sentence("note", (d: { triangles: number }) => `${some(d.triangles, "triangle")} that hung on the surface like a flap ${d.triangles === 1 ? "was" : "were"} left out.`),
  "touching-parted": sentence("note", (d: { edges: number; dropped: number }) => `At ${some(d.edges, "edge")} more than two triangles met; they were parted${d.dropped > 0 ? `, and ${some(d.dropped, "triangle")} left out` : ""}.`),
  "cracks-sewn": sentence("note", (d: { points: number; share: number }) => `Along cracks in the scan ${some(d.points, "point")} ${d.points === 1 ? "was" : "were"} sewn together; the widest crack was ${(d.share * 100).toFixed(2)} % of the scan's size.`),
  "crossings-cut": sentence(
    "look",
    (d: { triangles: number; where?: string }) => `The scan ran through itself at ${some(d.triangles, "triangle")}${d.where === undefined ? "" : `, first ${d.where}`}; that part was cut out and closed anew. Look at the surface there.`,
  ),
  "made-anew": sentence("look", (d: { why: string; triangles: number; open: number }) =>
    `The scan could not be mended as it was: ${d.why}. Its surface was made anew, in ${some(d.triangles, "triangle")} that lie on the scan${d.open > 0.005 ? `, except for ${percent(d.open)} where the scan has nothing` : ""}. Tight edges may be rounded by up to 0.1 mm: check the measures with tape and callipers.`),
  "mesh-in-bits": sentence("stop", (d: { parts: number }) => `The scan encloses no body: ${d.parts === 1 ? "its surface does not close around one" : `it falls apart into ${count(d.parts)} pieces that do not make up a closed surface`}. Scan the last from all sides and export it as one joined surface.`),
  "one-sided": sentence("look", (d: { edges: number }) => `At ${some(d.edges, "edge")} inside and outside could not be told apart. Look at the surface there before you cut.`),
  "table-dropped": sentence("look", (d: { share: number }) => `A flat piece (${percent(d.share)} of the surface), most likely the table, had grown on to the scan and was taken off. Check that the edge it was on is the true edge of the last.`),
  "outer-wall-kept": sentence(
    "look",
    () => "The scan is a shell with an open mouth, an outer and an inner wall. The outer one was kept and the mouth closed over. If this is a shoe, no pattern can be taken from it: scan the last without the shoe.",
  ),
  "hole-closed": sentence("note", (d: Hole) => `A hole${placed(d.where)} was closed ${closedHow[d.shape]}; it had ${some(d.edges, "edge")}, ${percent(d.across)} of the scan's length across.`),
  "holes-closed": sentence(
    "note",
    (d: { holes: number; across: number; where?: string }) =>
      `${some(d.holes, "small hole")}, none wider than ${percent(d.across)} of the scan's length, ${d.holes === 1 ? "was" : "were"} closed smoothly${d.where === undefined ? "" : d.holes === 1 ? `, ${d.where}` : `; the widest lies ${d.where}`}.`,
  ),
  "big-hole-closed": sentence(
    "look",
    (d: Hole) =>
      `A hole ${d.where === undefined ? `${percent(d.across)} of the scan's length across` : `${d.where}, ${percent(d.across)} of the scan's length across,`} was closed ${closedHow[d.shape]}. The surface there is a guess. On the cone top compare heel height and toe spring with the last, which go by the comb; anywhere else scan that side again.`,
  ),
  "mesh-thinned": sentence("note", (d: { from: number; to: number; share: number }) => `The scan is finer than is needed and was thinned from ${count(d.from)} to ${count(d.to)} triangles. That moved its surface by at most ${(d.share * 100).toFixed(2)} % of its length.`),
};
