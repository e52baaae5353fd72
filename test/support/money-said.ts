import { explain, severityOf } from "#base/findings.ts";
import { measureOf } from "#making/amounts/good-measures.ts";
import type { GoodId } from "#making/goods.ts";
import { moneyOf, type Money } from "#making/money/money.ts";
import type { Need } from "#making/need.ts";
import type { MakingSaid } from "#making/said.ts";
import type { Phase, Step } from "#making/steps/step.ts";

/** A need of which only the amounts matter. */
export const needing = (good: GoodId, gross: number, net = gross): Need => ({ good, measure: measureOf[good], parts: [{ name: good, perPair: 1, net }], net, gross, kind: "any", reason: "a test", source: "invented" });

export const stepOf = (phase: Phase, minutes: number, id: string = phase): Step => ({
  id, phase, title: id, todo: [], needs: { goods: [], tools: [] }, right: [], fails: [], minutes, after: [], shoes: "together", hazards: [],
});

/** One pair's needs, invented: areas in mm², lengths in mm, mass in g, pieces. */
export const someNeeds: readonly Need[] = [
  needing("upper leather", 150_000, 112_500), needing("lining leather", 120_000), needing("thread", 24_000),
  needing("contact cement", 45), needing("lasting tacks", 80), needing("shanks", 2),
];
export const someSteps: readonly Step[] = [stepOf("cutting", 60), stepOf("cutting", 30, "skive"), stepOf("closing", 150), stepOf("lasting", 90)];

export const reckoned = (said: MakingSaid, needs = someNeeds, steps = someSteps): Money => moneyOf({ needs, steps, said });
export const toldOf = ({ findings }: Pick<Money, "findings">): readonly string[] => findings.map((one) => `${severityOf(one)}: ${explain(one)}`);
