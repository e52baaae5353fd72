// What the browser or we ourselves can do wrong: the maker is told, and keeps her work.
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { faultsOf, missing, openApp, setValue, Stage } from "./browser.ts";

describe.skipIf(missing !== undefined)("when something goes wrong", () => {
  let stage: Stage;
  let context: BrowserContext;
  let page: Page;
  let faults: string[];
  beforeAll(async () => {
    stage = await Stage.open();
  });
  afterAll(() => stage?.close());
  beforeEach(async () => {
    context = await stage.newContext();
    page = await context.newPage();
    faults = faultsOf(page);
  });
  afterEach(async () => {
    await context.close();
    expect(faults).toEqual([]);
  });

  test("a file that the browser is not let at is refused in a sentence", async () => {
    await page.addInitScript(() => {
      File.prototype.arrayBuffer = () => Promise.reject(new DOMException("gone", "NotReadableError"));
    });
    await openApp(page, stage.address);
    await page.locator("input[type=file]").setInputFiles({ name: "gone.stl", mimeType: "model/stl", buffer: Buffer.from("solid") });
    await page.locator(".trouble p").waitFor();
    expect(await page.locator(".trouble p").innerText()).toMatch(/^gone\.stl cannot be read/);
  });

  test("where the browser keeps nothing, the work goes on, is said not to be kept, and can be saved to a file", async () => {
    await page.addInitScript(() => {
      Object.defineProperty(globalThis, "indexedDB", { get: () => { throw new DOMException("denied", "SecurityError"); } });
    });
    await openApp(page, stage.address);
    expect(await page.locator(".kept").innerText()).toContain("Not saved");
    await setValue(page, "throat depth", "76");
    await page.getByText("Not saved: this browser keeps nothing").waitFor();
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save to a file" }).click();
    expect((await saved).suggestedFilename()).toMatch(/\.lastwise$/);
  });

  test("where the page breaks down, it says so and the work can be saved", async () => {
    // Something that every picture needs is taken away, as a browser too old would lack it.
    await page.addInitScript(() => {
      Object.assign(globalThis, { ResizeObserver: undefined });
    });
    await page.goto(stage.address);
    await page.getByText("The page broke down").waitFor();
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "save the work to a file" }).click();
    expect((await saved).suggestedFilename()).toBe("Example pair.lastwise");
    expect(faults.splice(0).join()).toContain("ResizeObserver");
  });
});
