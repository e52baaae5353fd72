import { halfName } from "#base/sentences/names.ts";
import { halves, type Half } from "#lines/feather.ts";
import { evenWidth, offsetEdge } from "#plane/edge-offset.ts";
import { lengthOf } from "#plane/measure.ts";
import type { Draft } from "../draft.ts";
import { jointName } from "../lining/panels.ts";
import type { NetPanel } from "../panel.ts";
import type { Stitched } from "../stitching.ts";
import { ply, skived, stitched } from "./plies.ts";
import type { ToStitch } from "./to-stitch.ts";
import { acrossPiece, mean } from "./ways.ts";

/** The seams within the lining: its back seam where it is cut in one, or its four laps, one row each inside the edge that lies over. */
export function liningSeams(input: ToStitch): readonly Stitched[] {
  return input.liningPanels ? joints(input, input.liningPanels) : backSeam(input);
}

/** Grain to grain along the stitch line, which is drawn on both banks; not skived. */
function backSeam({ lining, settings }: ToStitch): readonly Stitched[] {
  const [a, b] = lining.flatMap(({ marks }) => marks).flatMap((mark) => (mark.kind === "line" && mark.use === "stitch" && mark.name.startsWith("back seam") ? [lengthOf(mark.line)] : []));
  if (a === undefined || b === undefined) return [];
  return [stitched({ name: "lining back seam", joins: lining.map(({ name }) => name), plies: [ply("lining", settings.liningThicknessMm, 2)], lengthMm: mean(a, b), use: "lining" })];
}

/** The rear piece lies over at every joint: the quarter linings over the vamp lining, the heel pocket over them. */
function joints({ lining, settings }: ToStitch, { quarters, pocket }: NonNullable<ToStitch["liningPanels"]>): readonly Stitched[] {
  const quarterName = (half: Half): string => `${halfName(half)} quarter lining`;
  const { liningThicknessMm: mm, liningLapMm, skiveRawMm, stitchInMm } = settings;
  // The lap is feathered all over.
  const plies = [ply("lining", skived(mm, "raw", skiveRawMm, stitchInMm)), ply("lining", skived(mm, "lap", liningLapMm, liningLapMm - stitchInMm))];
  const joint = (name: string, over: NetPanel, overName: string, underName: string, seam: string): readonly Stitched[] => {
    const lengthMm = rowMm(over, seam, stitchInMm, lining.find((draft) => draft.name === overName));
    return lengthMm === undefined ? [] : [stitched({ name, joins: [overName, underName], plies, lengthMm, use: "lining" })];
  };
  return halves.flatMap((half) => [
    ...joint(`${halfName(half)} vamp lining joint`, quarters[half], quarterName(half), "vamp lining", jointName("vamp", half)),
    ...joint(`${halfName(half)} heel pocket joint`, pocket, "heel pocket", quarterName(half), jointName("pocket", half)),
  ]);
}

/** From the lasting margin's cutting edge to that above the topline. */
function rowMm({ edges }: NetPanel, seam: string, inMm: number, draft: Draft | undefined): number | undefined {
  const edge = edges.find((one) => one.seam === seam);
  return edge && draft && lengthOf(acrossPiece(draft.outline, offsetEdge(edge.line, evenWidth(edge.line, -inMm))));
}
