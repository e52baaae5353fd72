// Started before the first file of browser tests and ended after the last: one browser and one address for all of them.
import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";
import { built, findChromium, flags, missing, serve } from "./around.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Where the browser is talked to. */
    readonly browser: string;
    /** Where the app is served. */
    readonly address: string;
  }
}

export async function setup(project: TestProject): Promise<(() => Promise<void>) | undefined> {
  if (missing) return undefined;
  const given = process.env["LASTWISE_URL"];
  const served = given ? undefined : await serve(built, 0);
  const browser = await chromium.launchServer({ executablePath: findChromium()!, args: [...flags], headless: true });
  project.provide("browser", browser.wsEndpoint());
  project.provide("address", given ?? served!.address);
  return async () => {
    await browser.close();
    served?.server.close();
  };
}
