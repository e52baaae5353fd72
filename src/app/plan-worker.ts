/// <reference lib="webworker" />
import { pagePlan } from "./state/page-plan.ts";
import type { FromPlanner, ToPlanner } from "./plans.ts";

/** Lays pieces on pages, so that the page itself goes on answering. */
const scope = self as unknown as DedicatedWorkerGlobalScope;
scope.addEventListener("message", ({ data: { id, pair } }: MessageEvent<ToPlanner>) => {
  const answer: FromPlanner = { id, plan: pagePlan(pair) };
  scope.postMessage(answer);
});
