import { defineConfig } from "vitest/config";

/** The app in a real browser. `npm test` builds dist/app first; LASTWISE_URL tests one that is served elsewhere. */
export default defineConfig({
  test: { include: ["test/browser/**/*.test.ts"], testTimeout: 120_000, hookTimeout: 120_000, fileParallelism: false },
});
