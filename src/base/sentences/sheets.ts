import { sentence } from "../sentence.ts";

export const sheetSentences = {
  "scale-wrong": sentence("stop", (d: { file: string; foundMm: number; wantedMm: number }) => `${d.file} was read back at ${mm(d.foundMm)} where ${mm(d.wantedMm)} was wanted, so it was not kept. Nothing was written; this is a fault of ours, not of your last.`),
  "outline-off": sentence("stop", (d: { file: string; piece: string; offMm: number }) => `${d.file} was read back with the outline of the ${d.piece} ${Number.isFinite(d.offMm) ? `${mm(d.offMm)} off its place` : "missing"}, so it was not kept. Nothing was written; this is a fault of ours, not of your last.`),
};

const mm = (v: number): string => (Number.isFinite(v) ? `${v.toFixed(2)} mm` : "no length in mm");
