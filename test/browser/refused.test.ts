// A number that no pair can be made of: it is told where it was typed, and enters neither the work, nor what is kept, nor a file.
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { readJobFile, writeJobFile } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import { bytesOf, field, openApp, setValue, settled, type Stage, station, valueOf } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

const none = new Map<string, Uint8Array>();

inBrowser("a refused number", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  test.each([
    ["throat radius", "0"],
    ["back height", "80"],
    ["throat depth", "20"],
  ])("%s %s stays in its field with the sentence, and nowhere else", async (name, text) => {
    await openApp(page, stage.address);
    const before = await valueOf(page, name);
    const drawn = await page.locator(".view.card .line.accent").first().getAttribute("d");
    await setValue(page, "throat depth", "71");
    const good = name === "throat depth" ? 71 : before;
    await page.getByText("Saved in this browser").waitFor();
    const picture = await page.locator(".view.card .line.accent").first().getAttribute("d");
    expect(picture).not.toBe(drawn);
    await setValue(page, name, text);
    const sentence = page.locator(".sentence:has(.number.wrong) .why-wrong");
    await sentence.waitFor();
    expect(await sentence.innerText()).toContain(`The ${name}`);
    expect(await field(page, name).inputValue()).toBe(text);
    expect(await field(page, name).getAttribute("aria-valuenow")).toBe(String(good));
    expect(await page.locator(".view.card .line.accent").first().getAttribute("d")).toBe(picture);
    // No step of its own to take back, and the file holds the last good number.
    expect(await page.getByRole("button", { name: "Take back: the throat depth" }).count()).toBe(1);
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save to a file" }).click();
    const { job } = readJobFile("saved.lastwise", await bytesOf(await saved));
    expect(job).toEqual({ ...defaultJob(), lines: { throatDepthMm: 71 } });
    await page.getByText("Saved in this browser").waitFor();
    await page.reload();
    await page.locator(".frame").first().waitFor();
    await settled(page);
    // It stands there still, with its sentence, and only there: the work is the last good one.
    expect(await field(page, name).inputValue()).toBe(text);
    expect(await sentence.innerText()).toContain(`The ${name}`);
    expect(await field(page, name).getAttribute("aria-valuenow")).toBe(String(good));
    await field(page, name).press("Escape");
    expect(await valueOf(page, name)).toBe(good);
    expect(await page.locator(".view.card .line.accent").count()).toBeGreaterThan(0);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await page.getByRole("button", { name: "Take back", exact: true }).isDisabled()).toBe(true);
  });

  test("is told beside the field also after another station was opened meanwhile, and goes when the field is left alone", async () => {
    await openApp(page, stage.address);
    const before = await valueOf(page, "back height");
    await field(page, "back height").fill("80");
    await station(page, "Pieces");
    await settled(page);
    await page.locator(".trouble p").waitFor();
    await station(page, "Lines");
    expect(await page.locator(".trouble p").count()).toBe(0);
    expect(await field(page, "back height").inputValue()).toBe("80");
    await field(page, "back height").press("Escape");
    expect(await valueOf(page, "back height")).toBe(before);
    expect(await page.locator(".why-wrong").count()).toBe(0);
  });

  test("does not take with it what was changed right after it", async () => {
    await openApp(page, stage.address);
    const radius = await valueOf(page, "throat radius");
    await field(page, "throat radius").fill("0");
    await field(page, "throat radius").press("Enter");
    await field(page, "back height").fill("53");
    await field(page, "back height").press("Enter");
    await page.locator(".number.wrong").waitFor();
    await settled(page);
    expect(await field(page, "throat radius").getAttribute("aria-valuenow")).toBe(String(radius));
    expect(await valueOf(page, "back height")).toBe(53);
    await page.getByText("Saved in this browser").waitFor();
    await page.reload();
    await page.locator(".frame").first().waitFor();
    expect(await valueOf(page, "back height")).toBe(53);
    await settled(page);
  });

  test("lengths may be typed in centimetres; what is no length is told which units go", async () => {
    await openApp(page, stage.address);
    await setValue(page, "throat depth", "7,2 cm");
    expect(await valueOf(page, "throat depth")).toBe(72);
    await setValue(page, "throat depth", "seventy");
    expect(await page.locator(".why-wrong").innerText()).toMatch(/millimetres.*centimetres/);
    expect(await field(page, "throat depth").inputValue()).toBe("seventy");
  });

  test("a spring beyond what can be laid is refused at its field, and one beyond the usual is remarked on", async () => {
    await openApp(page, stage.address);
    await station(page, "Shell");
    await setValue(page, "spring", "80");
    expect(await page.locator(".why-wrong").innerText()).toContain("−60 to 60");
    expect(await field(page, "spring").getAttribute("aria-valuenow")).toBe("0");
    await setValue(page, "spring", "24");
    expect(await page.locator(".follows", { hasText: "usual" }).count()).toBe(1);
  });

  test("work kept by an older version with such a number shows its fields, and is mended there", async () => {
    await openApp(page, stage.address);
    await page.getByText("Saved in this browser").waitFor();
    const bad: Job = { ...defaultJob(), lines: { backHeightMm: 80, throatDepthMm: 71 } };
    await keepInstead(page, bad);
    await page.reload();
    await page.locator(".number.wrong").waitFor();
    await settled(page);
    expect(await page.locator(".why-wrong").innerText()).toContain("The back height of 80 mm does not fit");
    expect(await valueOf(page, "throat depth")).toBe(71);
    expect(await page.locator(".nothing").innerText()).toContain("station Lines");
    for (const [name, number] of [["Last", "joint girth"], ["Shell", "spring"], ["Pieces", "back seam"]] as const) {
      await station(page, name);
      if (name === "Pieces") await page.getByRole("button", { name: "Topline and seams", exact: true }).click();
      expect(await field(page, number).first().isVisible(), name).toBe(true);
    }
    await station(page, "Lines");
    await setValue(page, "back height", "53");
    await page.locator(".view.card .line.accent").first().waitFor();
    expect(await valueOf(page, "throat depth")).toBe(71);
    await page.getByText("Saved in this browser").waitFor();
    // The refused state is not among what can be taken back.
    expect(await page.getByRole("button", { name: "Take back", exact: true }).isDisabled()).toBe(true);
  });

  test("kept work that is no job to this version is said to be set aside, and new work is kept again", async () => {
    await openApp(page, stage.address);
    await page.getByText("Saved in this browser").waitFor();
    await keepInstead(page, { ...defaultJob(), lines: { throatRadiusMm: -1 } });
    await page.reload();
    await page.locator(".trouble p", { hasText: "set aside" }).waitFor();
    await settled(page);
    await station(page, "Lines");
    await setValue(page, "throat depth", "74");
    await page.getByText("Saved in this browser").waitFor();
    await page.reload();
    await page.locator(".frame").first().waitFor();
    expect(await valueOf(page, "throat depth")).toBe(74);
    await settled(page);
  });

  test("a saved job with such a number can be opened all the same and mended; taking back brings the former work", async () => {
    await openApp(page, stage.address);
    await setValue(page, "throat depth", "71");
    const bytes = writeJobFile({ ...defaultJob(), title: "Kept long ago", lines: { throatDepthMm: 20 } }, none);
    const open = async (): Promise<void> => {
      await page.getByLabel("file to open").setInputFiles({ name: "old.lastwise", mimeType: "application/zip", buffer: Buffer.from(bytes) });
      await page.getByRole("button", { name: "Open it all the same" }).click();
      await page.locator(".number.wrong").waitFor();
      await settled(page);
    };
    await open();
    expect(await valueOf(page, "throat depth")).toBe(20);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await valueOf(page, "throat depth")).toBe(71);
    await open();
    await setValue(page, "throat depth", "70");
    await page.locator(".view.card .line.accent").first().waitFor();
    expect(await page.getByLabel("name of this work").inputValue()).toBe("Kept long ago");
    await page.getByText("Saved in this browser").waitFor();
  });
});

/** Puts a job in the place of the one that the browser keeps, as another version may have left it. */
async function keepInstead(page: Page, job: Job): Promise<void> {
  await page.evaluate((job) => new Promise<void>((done, fail) => {
    const opening = indexedDB.open("lastwise");
    opening.onerror = () => fail(new Error("not opened"));
    opening.onsuccess = () => {
      const change = opening.result.transaction("work", "readwrite");
      change.objectStore("work").put({ revision: 9, history: { past: [], now: { job, what: "the throat radius" }, future: [] } }, "now");
      change.oncomplete = () => done();
    };
  }), job);
}
