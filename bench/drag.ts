// How the picture follows the finger: the throat is dragged on the card in Chromium, and the page's own clock tells when each frame
// was due, when the card was drawn anew, and how long after release the fine pattern stood. Without a graphics card the last is drawn
// by the processor, so the card alone is measured too. Aim at 5,000 triangles: median 33 ms from card to card, 400 ms to the fine one.
import { chromium, type Page } from "playwright-core";
import { built, findChromium, flags, missing, serve } from "../test/browser/around.ts";
import { openApp } from "../test/browser/browser.ts";

interface Told {
  readonly frames: readonly number[];
  readonly cards: readonly number[];
  readonly fineMs: number;
  readonly triangles: string;
}

const gaps = (times: readonly number[]): readonly number[] => times.slice(1).map((t, i) => t - times[i]!).sort((a, b) => a - b);
const at = (sorted: readonly number[], share: number): string => (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN).toFixed(1).padStart(6);

/** Notes, by the page's clock, each frame, each new outline of the card, and when the work came to rest. */
async function listen(page: Page): Promise<void> {
  await page.evaluate(() => {
    const told = { frames: [] as number[], cards: [] as number[], released: 0, fineMs: 0, on: true };
    Object.assign(globalThis, { told });
    const frame = (t: number): void => {
      told.frames.push(t);
      if (told.on) requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
    const card = document.querySelector(".view.card .sheet-of-card")!;
    new MutationObserver(() => told.cards.push(performance.now())).observe(card, { attributes: true, attributeFilter: ["d"] });
    const busy = document.querySelector<HTMLElement>(".busy")!;
    addEventListener("pointerup", () => (told.released = performance.now()), { capture: true });
    new MutationObserver(() => {
      if (told.released > 0 && told.fineMs === 0 && busy.dataset["busy"] === "false" && busy.dataset["draft"] === "false") told.fineMs = performance.now() - told.released;
    }).observe(busy, { attributes: true });
  });
}

async function drag(page: Page, address: string, showing: string): Promise<Told> {
  // The runner marks functions with their names, by one of its own that the page does not have.
  await page.addInitScript({ content: "globalThis.__name = (f) => f;" });
  await openApp(page, address);
  await page.getByRole("button", { name: showing, exact: true }).click();
  await page.waitForTimeout(300);
  const ring = (await page.locator('.view.card [data-handle="throat"] .ring').first().boundingBox())!;
  const [x, y] = [ring.x + ring.width / 2, ring.y + ring.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  // The first moves warm the worker up; they are not counted.
  for (let i = 0; i < 120; i++) await page.mouse.move(x, y - 12 + 12 * Math.cos(i / 12));
  await listen(page);
  const until = Date.now() + 6000;
  for (let i = 0; Date.now() < until; i++) await page.mouse.move(x, y - 12 + 12 * Math.cos(i / 12));
  await page.mouse.up();
  await page.waitForFunction(() => (globalThis as unknown as { told: { fineMs: number } }).told.fineMs > 0);
  return page.evaluate(() => {
    const { told } = globalThis as unknown as { told: Told & { on: boolean } };
    told.on = false;
    return { ...told, triangles: "" };
  });
}

if (missing) console.log(`skipped: ${missing}`);
else {
  const { server, address } = await serve(built, 0);
  const browser = await chromium.launch({ executablePath: findChromium()!, args: [...flags], headless: true });
  try {
    console.log("showing      card to card ms: median, 95 %    frame to frame ms: median, 95 %    fine after release ms    cards");
    for (const showing of ["the card", "both"]) {
      const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
      const { frames, cards, fineMs } = await drag(await context.newPage(), address, showing);
      const card = gaps(cards), frame = gaps(frames);
      console.log(`${showing.padEnd(12)} ${at(card, 0.5)} ${at(card, 0.95)}                      ${at(frame, 0.5)} ${at(frame, 0.95)}                     ${fineMs.toFixed(0).padStart(6)}             ${cards.length}`);
      await context.close();
    }
  } finally {
    await browser.close();
    server.close();
  }
}
