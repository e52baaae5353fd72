import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import { LongestFirst } from "./test/support/longest-first.ts";

/**
 * The app in a real browser. `npm test` builds dist/app first; LASTWISE_URL tests one that is served elsewhere. One browser for all
 * files; two of them at a time, as a page keeps about one core busy. What a test does stays in a context of its own.
 */
export default defineConfig({
  test: {
    include: ["test/browser/**/*.test.ts"],
    globalSetup: ["test/browser/one-browser.ts"],
    testTimeout: 300_000,
    hookTimeout: 120_000,
    isolate: false,
    maxWorkers: Math.min(2, availableParallelism()),
    sequence: { sequencer: LongestFirst },
  },
});
