import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import { LongestFirst } from "./test/support/longest-first.ts";

/**
 * Every core works. A worker keeps what it has loaded from file to file: no test changes what another one reads, so the library for
 * pictures is started once, and scans that several files look at are cleaned once (test/support/scans.ts).
 */
export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/browser/**", "**/node_modules/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    isolate: false,
    maxWorkers: availableParallelism(),
    sequence: { sequencer: LongestFirst },
  },
});
