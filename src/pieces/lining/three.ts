import type { Finding } from "#base/findings.ts";
import { halves, type Half } from "#lines/feather.ts";
import { partsInside } from "#plane/clip.ts";
import type { Outline } from "#plane/outline.ts";
import { apart } from "#plane/measure.ts";
import type { Draft } from "../draft.ts";
import { cutPanel } from "../edges/cut-panel.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { panelOutline } from "../edges/panel-outline.ts";
import { placeOn, pointOf } from "../edges/places.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { readable } from "../labels.ts";
import { lastingMargin, liningToeIn } from "../margins.ts";
import { lineMark } from "../marks.ts";
import { edgeLength, edgePoint, type NetUpper } from "../net-upper.ts";
import { onPiece } from "../inside-piece.ts";
import type { NetPanel } from "../panel.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { upperLabels } from "../upper/labels.ts";
import { stretchArrow } from "../upper/marks.ts";
import { liningAllowances, topWords, type Lasting } from "./finish.ts";
import type { HeelNet } from "./heel-net.ts";
import type { LiningJoints } from "./joints.ts";
import { edgeMarks, jointMarks, sharedMarks } from "./marks.ts";
import { jointName, quarterPanel, vampPanel } from "./panels.ts";
import { pocketPanel } from "./pocket.ts";

export interface ThreeInput {
  readonly net: NetUpper;
  readonly heel: HeelNet;
  readonly joints: LiningJoints;
  readonly settings: PieceSettings;
  /** The settings with what the lining's own flat is smaller by already taken off. */
  readonly lacking: PieceSettings;
  readonly bagged: boolean;
  readonly labels: Labels;
}

/** The lining's net panels, from the toe to the heel. */
export interface LiningPanels {
  readonly vamp: NetPanel;
  readonly quarters: Readonly<Record<Half, NetPanel>>;
  readonly pocket: NetPanel;
  readonly findings: readonly Finding[];
}

export function liningPanels({ net, heel, joints, settings, lacking }: Pick<ThreeInput, "net" | "heel" | "joints" | "settings" | "lacking">): LiningPanels {
  const { panel, quarterFoot, findings } = pocketPanel(heel, net, joints, settings, lacking);
  const quarters = { medial: quarterPanel(net, "medial", joints, quarterFoot.medial), lateral: quarterPanel(net, "lateral", joints, quarterFoot.lateral) };
  return { vamp: vampPanel(net, joints), quarters, pocket: panel, findings };
}

/** Vamp lining, both quarter linings and the heel pocket, all drawn from outside. */
export function liningInThree(input: ThreeInput, { vamp, quarters, pocket }: LiningPanels): readonly Draft[] {
  const { net, joints, lacking } = input;
  const upper = lastingMargin(net, lacking), toeIn = liningToeIn(net, lacking);
  const shorter = lacking.liningLastingShorterMm;
  /** Along a panel's feather line, which begins at a length of the whole one's. */
  const from = (start: number): Lasting => ({ takenInMm: (s) => toeIn(start + s), marginMm: (s) => upper(start + s) - shorter - toeIn(start + s) });
  const heelMm = lacking.lastingHeelMm - shorter;
  return [
    drawVamp(vamp, from(joints.vamp.lateral.foot), input),
    ...halves.map((half) => drawQuarter(quarters[half], half, from(half === "medial" ? joints.vamp.medial.foot : joints.pocket.lateral.foot), input)),
    drawPocket(pocket, { takenInMm: () => 0, marginMm: () => heelMm }, input),
  ];
}

/** Which joints a piece goes under, and what lies over it there. */
interface Laps {
  readonly under: (seam: string) => boolean;
  readonly laid: string;
}

const vampJoints: readonly string[] = halves.map((half) => jointName("vamp", half));

/** What a piece has beside the marks of all; `within` is its net outline. */
type OwnMarks = (within: Outline) => readonly Drawn[];

interface Words {
  readonly name: string;
  readonly notes: readonly string[];
  readonly directionDeg: number;
}

function drawPiece(panel: NetPanel, lasting: Lasting, { under, laid }: Laps, { name, notes, directionDeg }: Words, { lacking, bagged, labels }: ThreeInput, own: OwnMarks = (within) => stretchArrow(panel, within)): Draft {
  const cut = cutPanel(panel, liningAllowances(panel, lasting, lacking, bagged, under));
  const marks = onPiece(cut.outline, [...edgeMarks(cut, laid), ...jointMarks(cut, lacking.liningLapMm), ...sharedMarks(cut, bagged ? 0 : lacking.liningTrimMm, lasting.marginMm), ...own(panelOutline(panel))]);
  const lines = pieceLines({ name, material: "lining leather", notes: [...notes, "with lasting margin,", topWords(bagged).slice(0, -1)], count: 1, labels });
  return { name, material: "lining leather", net: false, outline: cut.outline, marks, labels: upperLabels(panel, panelOutline(panel), marks, lines), directionDeg, ground: panel.name };
}

const drawVamp = (panel: NetPanel, lasting: Lasting, input: ThreeInput): Draft =>
  drawPiece(panel, lasting, { under: () => true, laid: "quarter lining" }, { name: "vamp lining", notes: ["flesh side up,", "joints skived to lap,"], directionDeg: 0 }, input);

function drawQuarter(panel: NetPanel, half: Half, lasting: Lasting, input: ThreeInput): Draft {
  const name = half === "medial" ? "inner quarter lining" : "outer quarter lining";
  return drawPiece(panel, lasting, { under: (seam) => !vampJoints.includes(seam), laid: "heel pocket" }, { name, notes: ["flesh side up,", "skived to lap at the heel,"], directionDeg: alongTopline(panel) }, input);
}

/** The arrow of the pocket stands so far beside its back line, and so far from both edges, mm. */
const arrowBesideMm = 14, arrowOffMm = 7;

/**
 * The pocket's flesh side lies to the foot, so that the heel does not slip; from outside its grain is seen. It is to stretch round the
 * heel, so that it least stretches up and down.
 */
function drawPocket(panel: NetPanel, lasting: Lasting, input: ThreeInput): Draft {
  const [seat, back] = (["seat", "back"] as const).map((name) => pointOf(panel, placeOn(panel, name)!)) as [Xy, Xy];
  const [dx, dy] = [back[0] - seat[0], back[1] - seat[1]], size = Math.sqrt(dx * dx + dy * dy);
  const aside = ([x, y]: Xy): Xy => [x + (arrowBesideMm * dy) / size, y - (arrowBesideMm * dx) / size];
  const marks: OwnMarks = (within) => [
    lineMark("back line", "centre", { xy: Float64Array.of(...seat, ...back) }),
    ...partsInside(within, aside(seat), aside(back)).slice(0, 1).map(([a, b]): Drawn => ({ kind: "arrow", name: "least stretch", from: toward(a, b, arrowOffMm), to: toward(b, a, arrowOffMm) })),
  ];
  const directionDeg = readable((Math.atan2(dy, dx) * 180) / Math.PI);
  return drawPiece(panel, lasting, { under: () => false, laid: "" }, { name: "heel pocket", notes: ["flesh side to the foot,", "grain side up,"], directionDeg }, input, marks);
}

/** A point moved so far toward another. */
function toward(a: Xy, b: Xy, mm: number): Xy {
  const size = apart(a, b);
  return [a[0] + (mm * (b[0] - a[0])) / size, a[1] + (mm * (b[1] - a[1])) / size];
}

/** Direction of a panel's topline from end to end, in which it must not stretch; degrees in [−90, 90). */
function alongTopline({ edges }: NetPanel): number {
  const topline = edges.find(({ role }) => role === "topline")!;
  const [[ax, ay], [bx, by]] = [edgePoint(topline, 0), edgePoint(topline, edgeLength(topline))];
  return readable((Math.atan2(by - ay, bx - ax) * 180) / Math.PI);
}
