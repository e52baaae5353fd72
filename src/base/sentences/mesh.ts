import { sentence } from "../sentence.ts";

const kinds = "STL, OBJ, PLY or GLB";
const count = (n: number): string => n.toLocaleString("en-GB").replaceAll(",", " ");
const some = (n: number, one: string, many = `${one}s`): string => `${count(n)} ${n === 1 ? one : many}`;

export const meshSentences = {
  "file-empty": sentence("stop", (d: { file: string }) => `${d.file} is empty. Export the scan again.`),
  "file-not-mesh": sentence("stop", (d: { file: string }) => `${d.file} does not hold a 3-D surface that can be read here. Export the scan as ${kinds}.`),
  "file-other-kind": sentence("stop", (d: { file: string; kind: string }) => `${d.file} is a ${d.kind} file, which is not read here. Export the scan as ${kinds}.`),
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
};
