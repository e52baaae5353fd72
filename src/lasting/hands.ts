import type { Watch } from "#base/watch.ts";
import { vertexMeans } from "#shell/strain.ts";
import type { Ground } from "#wrap/ground.ts";
import type { FeatherRing } from "./feather-ring.ts";
import type { Settled } from "./forward/settled.ts";
import type { Frame } from "./lasted.ts";
import { PulledSheet, startOf, type SheetOptions } from "./pulled-sheet.ts";
import { loadOf, type Stage } from "./sequence.ts";
import type { EndsGauge } from "./ends.ts";
import { MarkSearch, type PullTaken } from "./mark-search.ts";
import type { CutUpper, Fabric } from "./upper.ts";

/**
 * Pressure of hands toward the last, N/mm²: while it is laid on (0.6 N under a thumb), and while it is pulled, when they hardly touch it,
 * since what they press drags on the last (our own choices).
 */
const handPress = { laying: 0.002, pulling: 0.0002 } as const;
/** How firmly the back is held in its place while the upper is laid on, N/mm. */
const backHold = 5;
/** Every so many steps a picture is kept on the way, but no more than so many altogether, so that those at the end of each stage have room. */
const pictureSteps = 6, mostPictures = 30;
/** Near enough to rest on the way, and at the end of a rough pull-over; else at the end the sheet's own, finer measure counts. */
const onTheWay = { toleranceMm: 0.3, residualN: 1 } as const;
/** Finer where a mark is to be met: there a newton more or less shows in the height. */
const atTheMark = { toleranceMm: 0.1, residualN: 0.2 } as const;
const roughRest = { toleranceMm: 0.05, residualN: 0.1 } as const;
/** Still on its way by more than this, what follows would not mean anything. */
const lost = { moveMm: 2, residualN: 5 } as const;
/** What has gone farther than this is no place of a lasted upper, mm. */
const farthestMm = 60;

/** Stages of the whole: laid on, six times drafts, between them, rest; and steps that one usually takes, for telling how far it has come. */
const stages = 9;
const usualSteps = 40;

/** Why it was stopped: torn, gone astray, or not come to rest. */
export type Stopped = { readonly stage: string } & ({ readonly what: "torn"; readonly vertex: number; readonly stretch: number } | { readonly what: "astray" } | { readonly what: "restless" });

/** How far it came, and where it stopped short. */
export interface Reached {
  readonly settled: boolean;
  readonly steps: number;
  readonly moveMm: number;
  readonly residualN: number;
  readonly stopped?: Stopped;
}

export interface HandsInput {
  readonly cut: CutUpper;
  readonly fabric: Fabric;
  readonly ring: FeatherRing;
  readonly ground: Ground;
  readonly friction: number;
  /** Tells where the topline stands to its marks. */
  readonly gauge: Pick<EndsGauge, "overMark">;
  /** What light hands pull at each place of the ring, N. */
  readonly light: Float64Array;
  readonly watch: Watch;
  /** Whether pictures are kept. */
  readonly keep: boolean;
  readonly rough?: boolean;
}

/** Does one stage after the other, and none after one that went wrong. */
export class Hands {
  pulled: PulledSheet;
  reached: Reached = { settled: false, steps: 0, moveMm: Infinity, residualN: Infinity };
  readonly frames: Frame[] = [];
  readonly #input: HandsInput;
  readonly #start: Float64Array;
  /** Stages that are done, of {@link stages}. */
  #done = 0;

  constructor(input: HandsInput) {
    this.#input = input;
    this.#start = startOf(input.cut);
    this.pulled = this.#sheetAt(this.#start, { friction: 0, press: handPress.laying, guided: true });
  }

  #sheetAt(start: Float64Array, options: SheetOptions): PulledSheet {
    const { cut, fabric, ring, ground, light } = this.#input;
    const pulled = new PulledSheet(cut, fabric, ring, ground, start, options);
    pulled.pull(Uint32Array.from(light, (_, k) => k), light);
    return pulled;
  }

  /** Where it finds its place under light hands, the back held at its height and the centre line on the last's; then friction holds it. */
  layOn(): void {
    const { sheet, sheetOf } = this.pulled;
    const back = Array.from(this.#input.cut.over.edges.backMedial, (v) => sheetOf[v]!);
    sheet.tack(back, { stiffness: backHold, at: Float64Array.from(back.flatMap((v) => [0, 1, 2].map((d) => this.#start[3 * v + d]!))) });
    this.#settle("laid on", onTheWay);
    this.#done++;
    this.#picture("laid on");
    this.pulled = this.#sheetAt(sheet.positions(), { friction: this.#input.friction, press: handPress.pulling });
  }

  /**
   * Pulls, to the marks where drafts have them, then tacks what it has pulled. Pulls that grow in two or four parts end within 0.05 mm of the
   * same place (docs/method/lasting.md).
   */
  draft(stage: Stage): readonly PullTaken[] {
    if (this.reached.stopped) return [];
    const { sheet } = this.pulled, before = sheet.positions();
    const overMarks = (): readonly (number | undefined)[] => {
      const positions = this.pulled.shellPositions();
      return stage.pulls.map(({ mark }) => mark && this.#input.gauge.overMark(mark, positions) - mark.stopAboveMm);
    };
    const search = new MarkSearch(stage.pulls, overMarks());
    const marked = stage.pulls.some(({ mark }) => mark);
    for (let first = true; ; first = false) {
      if (!first) sheet.place(before);
      sheet.begin();
      this.pulled.pull(stage.places, loadOf(stage, search.pullsN));
      this.#settle(stage.what, marked ? atTheMark : onTheWay);
      if (this.reached.stopped || !search.goesOn(overMarks())) break;
    }
    this.pulled.tack(stage.places);
    this.#done++;
    this.#picture(stage.what);
    return search.taken;
  }

  /** All is tacked and the hands leave it. */
  rest(): void {
    if (this.reached.stopped) return;
    const { sheet } = this.pulled;
    sheet.press = 0;
    sheet.begin();
    this.#settle(atRest, this.#input.rough ? roughRest : {});
    this.#picture(atRest);
    if (!this.reached.stopped) this.reached = { ...this.reached, settled: true };
  }

  #settle(what: string, near: { readonly toleranceMm?: number; readonly residualN?: number }): void {
    const { sheet } = this.pulled, { watch } = this.#input;
    const before = sheet.positions();
    let steps = 0;
    const settled = sheet.settle({
      ...near,
      farthestMm,
      watch: () => {
        watch(what, (this.#done + Math.min(0.99, ++steps / usualSteps)) / stages);
        if (steps % pictureSteps === 0 && this.frames.length < mostPictures) this.#picture(`${what}, part of it`);
      },
    });
    const stopped = this.#stoppedBy(what, settled, before);
    this.reached = { settled: false, steps: this.reached.steps + settled.steps, moveMm: settled.moveMm, residualN: settled.residualN, ...(stopped && { stopped }) };
  }

  #picture(what: string): void {
    if (this.#input.keep) this.frames.push({ what, positions: Float32Array.from(this.pulled.sheet.positions()) });
  }

  /** A stage that has led astray is taken back. */
  #stoppedBy(stage: string, { settled, why, moveMm, residualN }: Settled, before: Float64Array): Stopped | undefined {
    const { sheet } = this.pulled, { cut, fabric } = this.#input;
    const positions = sheet.positions();
    if (why?.what === "away" || !(farthest(positions, this.#start) < farthestMm)) {
      sheet.place(before);
      return { stage, what: "astray" };
    }
    const means = vertexMeans({ positions, triangles: cut.triangles }, sheet.strains().most);
    const vertex = means.reduce((best, mean, v) => (mean > means[best]! ? v : best), 0), stretch = means[vertex]!;
    if (stretch > 1 + fabric.breakLimit) return { stage, what: "torn", vertex, stretch };
    const off = !settled && (stage === atRest || moveMm > lost.moveMm || residualN > lost.residualN);
    return off ? { stage, what: "restless" } : undefined;
  }
}

const atRest = "at rest";

function farthest(a: Float64Array, b: Float64Array): number {
  let most = 0;
  for (let i = 0; i < a.length; i += 3) most = Math.max(most, (a[i]! - b[i]!) ** 2 + (a[i + 1]! - b[i + 1]!) ** 2 + (a[i + 2]! - b[i + 2]!) ** 2);
  return Math.sqrt(most);
}
