import type { Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import { filesOf as filesOfJob, type Files } from "#job/files.ts";
import { writeJobFile } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import type { Rules } from "#job/run-options.ts";
import type { Foretold } from "#lasting/foretold.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import { Bench, type Wish } from "./bench.ts";
import { firstDesktop, noComplaint, noneWaits, type Desktop } from "./desktop.ts";
import { fetchDemo } from "./demo/fetch-demo.ts";
import type { OwnLeathers } from "./leather-shelf.ts";
import { Opener } from "./opener.ts";
import { Writer } from "./keep/writer.ts";
import { isExample } from "./state/edits.ts";
import { filesOf, giveUp, redo, run, runBrought, setWaiting, settle, startHistory, stepsOf, takenIn, undo, type History, type Step } from "./state/history.ts";
import { rulesOf } from "./state/rules-of.ts";
import { picturesOf, Shelf } from "./state/shelf.ts";
import type { ReadLast } from "./worker-talk.ts";
import { brokeWords, openingWords, unreadable } from "./state/desk-words.ts";
import { wholeShare } from "./state/stage-words.ts";
import { isField, spotOf, stationOf, tell } from "./state/spots.ts";
import type { MeasureKey, Spot } from "./state/spot.ts";
import { isOwnNumber, keepStanding, keptStanding, numberAt, stillStanding } from "./state/standing.ts";
import { setBeside, speaksOf, takeOut, Tried, without } from "./state/tried.ts";
import { measureAt, triedAgain } from "./state/unused.ts";
import { withUsual, type OwnNumbers } from "./state/usual.ts";
import { sameButMaking } from "./state/same-but-making.ts";
import { stillWaiting, toWait } from "./waits.ts";
import type { OwnWorkshop } from "./workshop.ts";

/** All that the page shows and does, apart from how: one immutable picture of the work, replaced at each change. */
export class Desk {
  #now: Desktop;
  readonly #ears = new Set<() => void>();
  readonly #shelf = new Shelf();
  readonly #bench: Bench;
  readonly #tried = new Tried();
  readonly #writer = new Writer(this.#shelf.files, () => this.#worthKeeping(), (saved) => this.#show({ saved }));
  /** What was typed since the last good state, by number. */
  readonly #typed = new Map<Spot, string>();
  readonly #gestures = new WeakMap<Job, string>();
  /** The last good state of a gesture that goes on. */
  #held: { readonly gesture: string; readonly step: Step } | undefined;
  /** What waits and was tried, or kept from it by the maker's Stop. */
  #triedWaiting: Job | undefined;
  readonly #own: OwnNumbers & OwnWorkshop;
  #foretells: (job: Job) => Foretold | undefined = () => undefined;
  readonly #opener: Opener;

  /** @param own the maker's usual numbers and workshop, with which new work begins; @param leathers those she keeps for other pairs */
  constructor(own: OwnNumbers & OwnWorkshop, leathers: OwnLeathers) {
    this.#own = own;
    this.#opener = new Opener(this.#shelf, own, leathers, {
      work: () => this.#now,
      begun: (job) => this.begun(job),
      tryOut: (job, what) => this.#try(job, what),
      tryJob: (job, says) => this.#bench.ask({ for: "pair", job, trial: true, draft: false, what: `opening ${job.title}`, opened: true, ...(says && { says }) }),
      failed: (error) => this.#trouble(error, "opening the file"),
    });
    const history = startHistory(defaultJob(), "the example last");
    this.#tried.good(history.now.job);
    this.#now = firstDesktop(history);
    this.#bench = new Bench(this.#shelf.files, {
      began: (wish) => {
        if (wish.for === "pair" && wish.trial) this.#triedWaiting = wish.job;
        this.#show({ busy: { on: wish.for, trial: wish.for === "pair" && wish.trial, stage: "", fraction: 0, pictures: { names: picturesOf(wish.job), behind: 0 } } });
      },
      progress: (stage, fraction) => this.#now.busy && this.#show({ busy: { ...this.#now.busy, stage, ...wholeShare(this.#now.busy, stage, fraction) } }),
      pair: (pair, wish) => this.#madePair(pair, wish),
      sheets: (sheets) => this.#show({ sheets, sheetsOf: this.#now.pair, trouble: undefined }),
      refused: (finding, wish, rules, last, traced) => this.#refused(finding, wish, rules, last, traced),
      broke: (why, wish) => this.#broke(why, wish),
      idle: () => {
        this.#show({ busy: undefined });
        this.#tryWaiting();
      },
    });
  }

  /** Finds the kept work, or begins with the demonstration; in either case the pair is worked out. */
  async open(): Promise<void> {
    try {
      const kept = await this.#writer.read();
      if (kept === "unreadable") {
        this.#show({ trouble: { kind: "refused", sentence: unreadable } });
        this.#writer.write();
      } else if (kept) {
        for (const [name, bytes] of kept.files) this.#shelf.put(name, bytes);
        const history = settle(kept.history);
        for (const { job } of stepsOf(history)) this.#tried.good(job);
        this.#show({ history, saved: "saved" });
      } else this.#writer.write();
    } catch {
      this.#show({ saved: "not saved" });
    }
    this.#show({ looked: true, standing: keptStanding() });
    this.#ask(false);
    const { job } = this;
    if (!isExample(job)) return;
    const demo = await fetchDemo(job);
    if (demo && !this.#now.pair && this.job === job) this.#show({ pair: demo, rules: rulesOf(demo) });
  }

  get now(): Desktop {
    return this.#now;
  }
  get job(): Job {
    return this.#now.history.now.job;
  }
  /** The files that lie beside the work. */
  get files(): Files {
    return this.#shelf.files;
  }
  readonly listen = (ear: () => void): (() => void) => {
    this.#ears.add(ear);
    return () => this.#ears.delete(ear);
  };
  readonly look = (): Desktop => this.#now;

  /**
   * Changes the job; one gesture (a drag, a run of arrow keys) is one step of the history. The change is shown at once and taken out
   * again when no pair can be made of it; `typed` says in which field to tell so.
   */
  change(job: Job, what: string, gesture?: string, typed?: { readonly spot: Spot; readonly text: string }): void {
    if (gesture !== undefined) this.#gestures.set(job, gesture);
    if (typed) this.#typed.set(typed.spot, typed.text);
    // A complaint at one field outlives what is typed into another.
    const complaint = typed && this.#now.refused && typed.spot !== this.#now.refused.spot ? {} : noComplaint;
    if (typed) this.#letStand(typed.spot);
    const { now } = this.#now.history;
    const measure = measureAt(typed?.spot);
    // Where it was the lines that did not go with them, other lines may.
    if (measure || (typed && now.unused?.lastFits)) return this.changeLast(job, what, gesture, measure, complaint);
    // Numbers that wait for this last have no say in another.
    this.#become(run(this.#now.history, job, what, gesture, job.last === now.job.last ? now.unused : "none"), complaint);
  }
  /** Changes something of a last made from measures: the numbers of it that are not used yet are tried again with it. `typed` is the measure that was typed, if one was. */
  changeLast(job: Job, what: string, gesture?: string, typed?: MeasureKey, complaint: Partial<Desktop> = noComplaint): void {
    const { history } = this.#now;
    const whole = triedAgain(job, history.now, typed);
    if (gesture !== undefined) this.#gestures.set(whole, gesture);
    this.#become(run(history, whole, what, gesture, "none"), complaint);
  }
  /** The numbers not used are let go; a step like any other. */
  letUnusedGo(): void {
    const { history } = this.#now;
    if (history.now.unused) this.#become(run(settle(history), this.job, "letting unused numbers go", undefined, "none"));
  }
  /** The drag or the typing is over: the next change is a step of its own, and the pair is worked out in full. */
  settle(): void {
    const history = settle(this.#now.history);
    if (history === this.#now.history) return;
    this.#show({ history });
    // The hand was on what waits; the work is as it was.
    if (history.now.job === history.past.at(-1)?.job) this.#writer.write();
    else this.#ask(false);
  }
  readonly giveUp = (gesture: string): void => this.#become(giveUp(this.#now.history, gesture));
  readonly undo = (): void => this.#become(undo(this.#now.history));
  readonly redo = (): void => this.#become(redo(this.#now.history));
  /** Ends what is being worked out; what it was for is taken out again. */
  stop(): void {
    this.#triedWaiting = this.#now.waiting;
    this.#bench.stop();
    this.#show(this.#stillWaiting());
    this.#clearShelf();
    if (!this.#now.pair || this.#now.saved !== "saving") return;
    if (this.#tried.isGood(this.job)) this.#writer.write();
    else this.#goBack(this.job);
  }
  /** From where the sheets hear what was foretold of lasting. */
  hearsFrom(foretells: (job: Job) => Foretold | undefined): void {
    this.#foretells = foretells;
  }
  makeSheets(): void {
    const foretold = this.#foretells(this.job);
    this.#bench.ask({ for: "sheets", job: this.job, ...(foretold && { foretold }) });
  }
  dismiss(): void {
    this.#show({ trouble: undefined });
    this.#clearShelf();
  }
  /** What was typed there cannot be used and is no work: it stands in its field until it is corrected or let go. */
  standAt(spot: Spot, text: string, sentence: string): void {
    if (isOwnNumber(spot)) this.#show({ standing: [...this.#now.standing, { spot, text, sentence, over: numberAt(this.job, spot) }] });
  }
  /** The field shows the job's number again. */
  forgetRefused(spot: Spot): void {
    this.#letStand(spot);
    if (this.#now.refused?.spot === spot && this.#now.refused.text !== undefined) this.#show(noComplaint);
  }
  #letStand(spot: Spot): void {
    if (this.#now.standing.some((s) => s.spot === spot)) this.#show({ standing: this.#now.standing.filter((s) => s.spot !== spot) });
  }
  /** Opens a refused job all the same, so that its numbers can be corrected; taking back brings the former work. */
  openToCorrect(job: Job): void {
    this.#show({ pair: undefined, rules: undefined, stuck: true });
    this.bring(job, `opening ${job.title}`);
  }
  /** Changes the job to one whose workshop comes from elsewhere: it is not what the maker wrote here. */
  readonly bring = (job: Job, what: string): void => this.#become(runBrought(this.#now.history, job, what), noComplaint);
  startAfresh(): void {
    if (this.#now.waiting) this.changeWaiting(undefined, "letting go of what waits");
    this.bring(this.begun(defaultJob()), "starting from the example last");
  }
  /** New work, with the maker's usual numbers and workshop where she keeps any. */
  begun(job: Job): Job {
    return this.#own.begin(withUsual(job, this.#own.usual));
  }
  /** Begins without the steps before, for it may be they that the page breaks down over. */
  startOver(): void {
    const history = startHistory(defaultJob(), "the example last");
    this.#tried.good(history.now.job);
    this.#become(history);
  }

  /** Opens a scan, a saved job, pictures of a taped pattern, or usual numbers. It becomes the work only when a pair could be made of it. */
  async openFiles(files: readonly File[]): Promise<void> {
    await this.#opener.open(files);
  }

  /** Takes files into the work: `edit` is given the names under which they are kept, and `what` are the words for that change. */
  async openInto(files: readonly File[], edit: (job: Job, names: readonly string[]) => Job, what: string): Promise<void> {
    await this.#opener.openInto(files, edit, what);
  }

  /** The tape or the scan that waits is another one, or is let go: a step like any other. It becomes the work as soon as a pair can be made of it. */
  changeWaiting(waiting: Job | undefined, what: string, gesture?: string): void {
    this.#show({ history: setWaiting(this.#now.history, waiting, what, gesture), trouble: undefined, ...(waiting ? {} : noneWaits) });
    if (waiting) this.#try(waiting, openingWords(waiting));
    else this.#clearShelf();
    if (gesture === undefined) this.#writer.write();
  }

  /** Finds out of what waits why no pattern can be made of it, where that is not known: after the page was loaded again, or a step was taken back. */
  #tryWaiting(): void {
    const { waiting } = this.#now;
    if (waiting && waiting !== this.#triedWaiting) this.#try(waiting, openingWords(waiting));
  }

  /** Says why something cannot be done; the work stays as it is. */
  refuse(finding: Finding): void {
    this.#show({ trouble: { kind: "refused", sentence: tell(finding) } });
  }

  #try(job: Job, what: string): void {
    this.#bench.ask({ for: "pair", job, trial: true, draft: false, what, opened: false });
  }

  /** A refused file is not kept in memory: only what some step of the work, or work that may still be opened, speaks of. */
  #clearShelf(): void {
    const { history, trouble } = this.#now;
    this.#shelf.keepOnly(new Set([...filesOf(history), ...(trouble?.toCorrect ? filesOfJob(trouble.toCorrect) : []), ...this.#bench.wanted()]));
  }

  /** The job with its scan as one file for the maker to keep; undefined, and said why, when it cannot be written. */
  jobFile(): Uint8Array | undefined {
    try {
      return writeJobFile(this.#tried.lastGood(this.#now.history), this.#shelf.files);
    } catch (error) {
      this.#trouble(error, "saving to a file");
      return undefined;
    }
  }

  #madePair(made: Pair, wish: Wish): void {
    const says = (wish.for === "pair" && wish.trial && wish.says) || [];
    const pair = { ...made, job: wish.job, findings: [...says, ...made.findings] };
    const shown = { pair, stuck: false, rules: rulesOf(pair), draft: wish.for === "pair" && wish.draft };
    this.#tried.good(wish.job);
    if (wish.for === "pair" && wish.trial) {
      this.#show({ ...shown, trouble: undefined, refused: undefined, ...noneWaits, history: takenIn(this.#now.history, wish.job, wish.what, this.#stillUnused(wish)), ...(wish.opened ? {} : { brought: wish.job }) });
      this.#writer.write();
      return;
    }
    const history = without(this.#now.history, this.#tried.isRefused);
    const gesture = this.#gestures.get(wish.job);
    if (gesture !== undefined && gesture === history.gesture) this.#held = { gesture, step: { job: wish.job, what: history.now.what } };
    this.#show({ ...shown, history });
    if (history.now.job !== wish.job || shown.draft) return;
    this.#typed.clear();
    this.#writer.write();
  }

  #refused(finding: Finding, wish: Wish, rules: Rules | undefined, last: ReadLast | undefined, traced: readonly TracedPicture[]): void {
    const sentence = tell(finding);
    if (wish.for === "sheets") return this.#show({ trouble: { kind: "refused", sentence } });
    if (wish.trial) {
      const spot = spotOf(finding, rules);
      // A saved job, or a scan that only lacks a better number, can be opened all the same.
      const correct = wish.opened || (rules !== undefined && spot !== undefined && stationOf(spot) !== "Last");
      this.#show({ trouble: { kind: "refused", sentence: `${sentence} What you had before is still here.`, finding, ...(correct ? { toCorrect: wish.job } : {}) }, ...(correct ? {} : (toWait(this.#now, wish.job, wish.what, last, traced) ?? this.#stillWaiting())) });
      this.#clearShelf();
      return this.#writer.write();
    }
    this.#tried.refuse(wish.job);
    if (!speaksOf(this.#now.history, wish.job)) return;
    const named = spotOf(finding, rules ?? this.#now.rules);
    const typedAt = named && this.#typed.has(named) ? named : [...this.#typed.keys()].at(-1);
    if (this.#setAside(wish.job, sentence, measureAt(named), rules !== undefined)) return;
    const back = this.#goBack(wish.job);
    const spot = back ? typedAt : (named ?? typedAt);
    const refused = spot && isField(spot) ? { spot, sentence, text: back ? this.#typed.get(spot) : undefined } : undefined;
    if (refused?.text !== undefined) this.standAt(refused.spot, refused.text, sentence);
    this.#show({ refused, trouble: { kind: "refused", sentence, finding }, ...(rules && !back ? { rules } : {}), ...(back ? {} : { saved: "refused" as const, stuck: true }) });
    this.#typed.clear();
  }

  /** Measures that make no last yet stay beside the last good one. False where it was no measure. */
  #setAside(job: Job, sentence: string, named: MeasureKey | undefined, lastFits: boolean): boolean {
    const { history, pair, draft } = this.#now;
    const held = this.#held?.gesture === history.gesture ? this.#held?.step : undefined;
    const typed = [...this.#typed.keys()].findLast(measureAt);
    const next = pair && setBeside(history, job, this.#tried, sentence, named, measureAt(typed), lastFits, held);
    if (!next) return false;
    this.#show({ history: next, ...noComplaint });
    // What was changed since is being tried with these numbers in it.
    if (history.now.job !== job) return true;
    if (pair.job !== next.now.job || draft) this.#ask(next.gesture !== undefined);
    else this.#writer.write();
    return true;
  }

  /** A drawing taken in beside the measures leaves unused what is not used; a job that was opened has no such numbers. */
  #stillUnused(wish: Wish): Step["unused"] {
    return wish.for === "pair" && wish.trial && !wish.opened && wish.job.last.from === "measures" ? this.#now.unused : undefined;
  }

  /** What was asked of a scan that waits cannot be: it waits as it was last seen. */
  #stillWaiting(): Partial<Desktop> {
    const still = stillWaiting(this.#now);
    if (still.history) this.#triedWaiting = this.#now.waitingLast?.job;
    return still;
  }

  #broke(why: string, wish: Wish): void {
    const doing = wish.for === "sheets" ? "making the sheets" : wish.trial ? "reading the file" : "working this out";
    const back = wish.for === "pair" && !wish.trial && !this.#tried.isGood(wish.job) && this.#goBack(wish.job);
    this.#show({ trouble: { kind: "broke", sentence: brokeWords(doing, why, back) } });
    this.#clearShelf();
  }

  /** Takes a job out of the history that no pair can be made of. False when there is no picture, so nothing better to go back to. */
  #goBack(job: Job): boolean {
    const { history, pair, draft } = this.#now;
    const held = this.#held?.gesture === history.gesture ? this.#held?.step : undefined;
    const back = pair && takeOut(history, job, this.#tried, held);
    if (!back) return false;
    this.#show({ history: back });
    if (pair.job !== back.now.job || draft) this.#ask(back.gesture !== undefined);
    else this.#writer.write();
    return true;
  }

  #trouble(error: unknown, doing: string): void {
    if (error instanceof Refusal) this.refuse(error.finding);
    else this.#show({ trouble: { kind: "broke", sentence: brokeWords(doing, error instanceof Error ? error.message : String(error), true) } });
  }

  #become(next: History, complaint: Partial<Desktop> = noComplaint): void {
    if (next === this.#now.history) return;
    const history = without(next, this.#tried.isRefused);
    const changed = history.now.job !== this.job;
    const otherUnused = history.now.unused !== this.#now.history.now.unused;
    const otherWaits = history.now.waiting !== this.#now.waiting;
    this.#show({ history, ...(changed || otherWaits || otherUnused ? complaint : {}), ...(otherWaits ? noneWaits : {}) });
    // Kept as soon as it is known that a pair can be made of it.
    if (this.#tried.isGood(this.job) && history.gesture === undefined) {
      if (changed || otherWaits || otherUnused) this.#writer.write();
    } else if (changed) this.#show({ saved: "saving" });
    if (changed) this.#ask(history.gesture !== undefined);
    if (otherWaits) this.#triedWaiting = undefined;
    if (!changed || !this.#now.busy) this.#tryWaiting(); // nothing worked out, nothing that comes to rest
  }

  #ask(draft: boolean): void {
    const { pair, draft: drawn, busy } = this.#now;
    // Prices change no piece: the pair stays the one that was worked out.
    const same = sameButMaking(this.job, pair?.job);
    const wish = { for: "pair", job: this.job, trial: false, draft: draft && !same } as const;
    return pair && same && !drawn && !busy ? this.#madePair(pair, wish) : this.#bench.ask(wish);
  }

  /** The work as it would be kept: without what no pair can be made of. */
  #worthKeeping(): History | undefined {
    const { history } = this.#now;
    return this.#tried.isGood(history.now.job) ? without(settle(history), (job) => !this.#tried.isGood(job)) : undefined;
  }

  #show(part: Partial<Desktop>): void {
    const now = { ...this.#now, ...part };
    const standing = stillStanding(now.standing, now.history.now.job);
    if (standing.length !== this.#now.standing.length || part.standing) keepStanding(standing);
    this.#now = { ...now, standing, waiting: now.history.now.waiting, unused: now.history.now.unused };
    for (const ear of this.#ears) ear();
  }
}
