// The start that all browser tests share: a fresh context and page for each test, and no fault unheard.
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect } from "vitest";
import { missing } from "./around.ts";
import { desk, faultsOf, Stage } from "./browser.ts";

if (missing) console.log(`Browser tests skipped: ${missing}.`);

export interface Here {
  readonly stage: Stage;
  readonly context: BrowserContext;
  readonly page: Page;
  /** What went wrong without the maker being told; a test that ends with any has failed. */
  readonly faults: string[];
}

/** Tests on a page of their own; `tests` hands over what is done with each fresh page. Skipped, and said so, without a browser. */
export function inBrowser(name: string, tests: (fresh: (set: (here: Here) => void) => void) => void, size = desk, more: Parameters<Stage["newContext"]>[1] = {}): void {
  describe.skipIf(missing !== undefined)(name, () => {
    let stage: Stage;
    let here: Here | undefined;
    let set: (here: Here) => void = () => {};
    beforeAll(async () => {
      stage = await Stage.open();
    });
    afterAll(() => stage?.close());
    beforeEach(async () => {
      const context = await stage.newContext(size, more);
      const page = await context.newPage();
      here = { stage, context, page, faults: faultsOf(page) };
      set(here);
    });
    afterEach(async () => {
      await here?.context.close();
      expect(here?.faults).toEqual([]);
    });
    tests((given) => (set = given));
  });
}
