import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { chromium, type Browser, type BrowserContext, type Download, type Locator, type Page } from "playwright-core";
import { inject } from "vitest";

export const desk = { width: 1280, height: 800 };
export const tablet = { width: 820, height: 1180 };

/** The one browser, as a test file talks to it, and where the app is served. */
export class Stage {
  readonly address: string;
  readonly #browser: Browser;
  private constructor(address: string, browser: Browser) {
    this.address = address;
    this.#browser = browser;
  }

  static async open(): Promise<Stage> {
    return new Stage(inject("address"), await chromium.connect(inject("browser")));
  }

  /** Leaves the browser, which goes on for the other files. */
  async close(): Promise<void> {
    await this.#browser.close();
  }

  /** As good as a browser of its own for one test: nothing kept from another. */
  async newContext(size = desk, more: { readonly colorScheme?: "light" | "dark"; readonly hasTouch?: boolean } = {}): Promise<BrowserContext> {
    const context = await this.#browser.newContext({ viewport: size, acceptDownloads: true, ...more });
    // Only a guard against hanging for ever, also where the machine has much else to do; speed is measured in bench/.
    context.setDefaultTimeout(100_000);
    return context;
  }
}

/** What went wrong on a page without the maker being told: uncaught errors and errors in the console. */
export function faultsOf(page: Page): string[] {
  const faults: string[] = [];
  page.on("pageerror", (e) => faults.push(e.message));
  page.on("console", (m) => m.type() === "error" && faults.push(m.text()));
  return faults;
}

/** What the page gave the maker to keep. */
export async function bytesOf(download: Download): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of await download.createReadStream()) parts.push(part as Buffer);
  return Buffer.concat(parts);
}

/** Opens the app at a station and waits until the worker has caught up. */
export async function openApp(page: Page, address: string, at = "Lines"): Promise<void> {
  await page.goto(address);
  await page.locator(".frame").first().waitFor();
  await settled(page);
  await station(page, at);
}

/** Waits until nothing is being worked out, and what is shown is not a draft. */
export async function settled(page: Page): Promise<void> {
  await page.locator('.busy[data-busy="false"][data-draft="false"]').waitFor({ state: "attached" });
}

/** Waits until what was asked for while a finger is down has been worked out: a draft is shown. */
export async function workedOut(page: Page): Promise<void> {
  await page.locator('.busy[data-busy="false"][data-draft="true"]').waitFor({ state: "attached" });
}

/** Waits until something in the picture has not moved from one frame to the next, three times over: the last has been turned, the page laid out. */
export async function standsStill(page: Page, selector: string): Promise<void> {
  await page.locator(selector).first().waitFor({ state: "attached" });
  await page.evaluate(async (of) => {
    let [before, still] = ["", 0];
    while (still < 3) {
      await new Promise((next) => requestAnimationFrame(() => setTimeout(next)));
      const { x, y, width, height } = document.querySelector(of)?.getBoundingClientRect() ?? new DOMRect();
      const now = [x, y, width, height].join();
      still = now === before ? still + 1 : 0;
      before = now;
    }
  }, selector);
}

export async function station(page: Page, name: string): Promise<void> {
  await page.locator(".station button").filter({ has: page.locator(".station-name").getByText(name, { exact: true }) }).click();
}

/** A number inside a sentence, by its name. */
export function field(page: Page, name: string): Locator {
  return page.getByRole("spinbutton", { name, exact: false });
}

export async function valueOf(page: Page, name: string): Promise<number> {
  return Number((await field(page, name).inputValue()).replace("−", "-"));
}

export async function setValue(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press("Enter");
  await settled(page);
}

/** What axe-core finds on the page that stands in anyone's way, each with the first place of it; only what is serious or critical when asked so. */
export async function inAnyonesWay(page: Page, which: "all" | "serious"): Promise<readonly string[]> {
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8"));
  const violations = await page.evaluate(async () => {
    const run = (globalThis as unknown as { axe: { run: (o: object) => Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> } }).axe.run;
    return (await run({ resultTypes: ["violations"] })).violations.map(({ id, impact, nodes }) => ({ impact, told: `${id}: ${nodes[0]?.html}` }));
  });
  return violations.filter(({ impact }) => which === "all" || impact === "serious" || impact === "critical").map(({ told }) => told);
}
