// What the browser or we ourselves can do wrong: the maker is told, and keeps her work.
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { openApp, setValue, type Stage } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

inBrowser("when something goes wrong", (fresh) => {
  let stage: Stage;
  let page: Page;
  let faults: string[];
  fresh((here) => ({ stage, page, faults } = here));

  test("a file that the browser is not let at is refused in a sentence", async () => {
    await page.addInitScript(() => {
      File.prototype.arrayBuffer = () => Promise.reject(new DOMException("gone", "NotReadableError"));
    });
    await openApp(page, stage.address);
    await page.getByLabel("file to open").setInputFiles({ name: "gone.stl", mimeType: "model/stl", buffer: Buffer.from("solid") });
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
