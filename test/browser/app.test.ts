import type { BrowserContext, Page } from "playwright-core";
import { expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { asStl } from "../support/scan-files.ts";
import { bytesOf, field, openApp, setValue, settled, standsStill, type Stage, station, valueOf, workedOut } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

inBrowser("the app in a browser", (fresh) => {
  let stage: Stage;
  let context: BrowserContext;
  let page: Page;
  fresh((here) => ({ stage, context, page } = here));

  test("opens with the demonstration pair, before the worker has done anything", async () => {
    await page.addInitScript(() => {
      Object.assign(globalThis, { Worker: class extends EventTarget { postMessage(): void {} terminate(): void {} } });
    });
    await page.goto(stage.address);
    await page.locator(".ways-in").waitFor();
    await station(page, "Lines");
    await page.locator(".view.card .line.accent").first().waitFor();
    expect(await valueOf(page, "throat depth")).toBeGreaterThan(50);
    expect(await page.locator(".station-state").allInnerTexts()).toHaveLength(8);
  });

  test("a changed number changes what follows from it", async () => {
    await openApp(page, stage.address);
    const vampPoint = await vampPointOf(page);
    const before = await toplineOf(page);
    await setValue(page, "throat depth", "78,5");
    expect(await valueOf(page, "throat depth")).toBe(78.5);
    // The sentence under it is plain subtraction.
    expect(await page.locator(".follows").first().innerText()).toContain(`${Number((vampPoint - 78.5).toFixed(1))}`);
    // A throat farther from the toe makes the opening shorter.
    expect((await toplineOf(page)).onLast).toBeLessThan(before.onLast - 5);
    expect(await page.locator(".station-state").nth(1).innerText()).toContain("78.5");
  });

  test("words that are no number are told so, and the number stays", async () => {
    await openApp(page, stage.address);
    await setValue(page, "back height", "high");
    expect(await page.getByRole("alert").filter({ hasText: "not a number" }).count()).toBe(1);
    await field(page, "back height").press("Escape");
    expect(await valueOf(page, "back height")).toBeGreaterThan(40);
  });

  test("the throat is dragged on the card, comes to lie under the finger, and the drag is one step back", async () => {
    await openApp(page, stage.address);
    const start = await valueOf(page, "throat depth");
    const from = await handleOf(page, "card", "throat");
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (let i = 1; i <= 6; i++) await page.mouse.move(from.x, from.y - 3 * i);
    await page.mouse.up();
    await settled(page);
    const end = await handleOf(page, "card", "throat");
    expect(await valueOf(page, "throat depth")).toBeLessThan(start - 5);
    // Half a millimetre is the step of the number; about 1.7 px a millimetre here.
    expect(Math.hypot(end.x - from.x, end.y - (from.y - 18))).toBeLessThan(3);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await valueOf(page, "throat depth")).toBe(start);
  });

  test("the low place of the outer side is dragged on the last in both its numbers", async () => {
    await openApp(page, stage.address);
    await page.getByRole("button", { name: "outer side", exact: true }).click();
    await standsStill(page, '.view.last [data-handle="outer"] .ring');
    const from = await handleOf(page, "last", "outer");
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (let i = 1; i <= 5; i++) await page.mouse.move(from.x + 2 * i, from.y + i);
    await page.mouse.up();
    await settled(page);
    const end = await handleOf(page, "last", "outer");
    expect(Math.hypot(end.x - from.x - 10, end.y - from.y - 5)).toBeLessThan(4);
  });

  test("handles answer to the arrow keys", async () => {
    await openApp(page, stage.address);
    const start = await valueOf(page, "back height");
    await page.locator('.view.last [data-handle="back"]').focus();
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    await settled(page);
    expect(await valueOf(page, "back height")).toBe(start + 1);
  });

  test("on the card too a handle goes the way the arrow points", async () => {
    await openApp(page, stage.address);
    for (const [key, sign] of [["ArrowUp", -1], ["ArrowDown", 1]] as const) {
      const from = await handleOf(page, "card", "throat");
      await page.locator('.view.card [data-handle="throat"]').focus();
      for (let i = 0; i < 6; i++) await page.keyboard.press(key);
      await settled(page);
      const to = await handleOf(page, "card", "throat");
      expect(sign * (to.y - from.y), key).toBeGreaterThan(2);
    }
  });

  test("the tape length stands clear of the other handles while one is dragged, and goes with the finger", async () => {
    await openApp(page, stage.address);
    for (const key of ["inner", "outer"] as const) {
      const from = await handleOf(page, "card", key);
      await page.mouse.move(from.x, from.y);
      await watchTape(page);
      await page.mouse.down();
      await page.mouse.move(from.x + 4, from.y + 2);
      // In every frame, words and handles of the same frame: what the worker answers moves both.
      await workedOut(page);
      const { frames, nearest } = await tapeWatched(page);
      expect(frames, key).toBeGreaterThan(1);
      expect(nearest, `${key}: the words lie on a handle`).toBeGreaterThan(0);
      await page.mouse.up();
      await settled(page);
      expect(await page.locator(".tape").count()).toBe(0);
    }
  });

  test("a note stands under its sentence, does not move the field above it, and says shares in percent", async () => {
    await openApp(page, stage.address);
    const at = async (): Promise<number> => (await field(page, "lowest place of the outer side").boundingBox())!.y;
    const before = await at();
    await setValue(page, "lowest place of the outer side", "62");
    const note = page.locator(".sentence", { has: page.getByLabel("why: outer side") }).locator(".findings li").first();
    expect(await note.innerText()).toContain("62 % of the length; 42 to 58 % of the length is usual");
    expect(await at()).toBe(before);
  });

  test("the greatest stretch is one figure at one place, with and without spring and a shorter topline", async () => {
    await openApp(page, stage.address);
    await station(page, "Shell");
    await setValue(page, "spring", "6");
    const said = await page.locator(".sentence", { hasText: "It stretches most" }).innerText();
    expect(said).toMatch(/most .*: [\d.]+\s% \([\d.]+\s% if the topline kept its length and nothing were swung\)/);
    // The very place named is the one where the colours are farthest out: both come from the same mean round each point.
    expect(await page.locator("#open-station").innerText()).not.toContain("worst place");
  });

  test("the size of a scan is the last's own until the maker says hers", async () => {
    await openApp(page, stage.address);
    await station(page, "Last");
    const size = page.getByLabel("size written on every piece");
    await size.fill("");
    await size.blur();
    await settled(page);
    // Stick length in Paris points of 20/3 mm (ISO/TS 19407:2015), to the half size.
    const expected = `EU ${Math.round((await valueOf(page, "stick length")) * 0.3) / 2}`;
    await page.waitForFunction((words) => document.querySelector("input[placeholder]")?.getAttribute("placeholder") === words, expected);
    await page.locator(".follows", { hasText: "From the stick length" }).waitFor();
    await size.fill("6 UK");
    await size.blur();
    await page.locator(".station-state", { hasText: "6 UK" }).first().waitFor();
    await settled(page);
  });

  test("changes are taken back and done again, by keys and by words", async () => {
    await openApp(page, stage.address);
    const start = await valueOf(page, "throat depth");
    await setValue(page, "throat depth", "75");
    await setValue(page, "back height", "53");
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    expect(await valueOf(page, "throat depth")).toBe(start);
    await page.keyboard.press("Control+Shift+z");
    expect(await valueOf(page, "throat depth")).toBe(75);
    await page.getByRole("button", { name: "Do again: the back height" }).click();
    expect(await valueOf(page, "back height")).toBe(53);
    await page.getByRole("button", { name: "Take back: the back height" }).click();
    expect(await valueOf(page, "back height")).not.toBe(53);
  });

  test("a reload and a killed tab lose nothing, what can be taken back included", async () => {
    await openApp(page, stage.address);
    const start = await valueOf(page, "throat depth");
    await setValue(page, "throat depth", "76");
    await page.getByText("Saved in this browser").waitFor();
    await page.reload();
    await page.locator(".frame").first().waitFor();
    expect(await valueOf(page, "throat depth")).toBe(76);
    await setValue(page, "throat depth", "77");
    await page.getByText("Saved in this browser").waitFor();
    const crashed = page.waitForEvent("crash");
    const session = await context.newCDPSession(page);
    // The tab is gone before it could answer.
    void session.send("Page.crash").catch(() => {});
    await crashed;
    await page.close();
    const next = await context.newPage();
    await openApp(next, stage.address);
    expect(await valueOf(next, "throat depth")).toBe(77);
    await next.keyboard.press("Control+z");
    await next.keyboard.press("Control+z");
    expect(await valueOf(next, "throat depth")).toBe(start);
    await settled(next);
  });

  test("a file that cannot be used is refused in a sentence, and the work stays", async () => {
    await openApp(page, stage.address);
    await setValue(page, "throat depth", "76");
    for (const [name, bytes] of [["empty.stl", Buffer.alloc(0)], ["letter.stl", Buffer.from("Dear maker, this is a letter.")], ["half.glb", Buffer.from("glTF")], ["job.lastwise", Buffer.from("PK nothing")]] as const) {
      await page.getByLabel("file to open").setInputFiles({ name, mimeType: "application/octet-stream", buffer: bytes });
      await page.locator(".trouble p").waitFor();
      expect(await page.locator(".trouble p").innerText()).not.toMatch(/undefined|Error|at .*\.ts|program itself/);
      await page.locator(".trouble").getByRole("button", { name: "Close" }).click();
      await settled(page);
      expect(await valueOf(page, "throat depth")).toBe(76);
      expect(await page.locator(".view.card .line.accent").count()).toBeGreaterThan(0);
    }
  });

  test("a scan becomes the work, and taking back brings the demonstration again", async () => {
    await openApp(page, stage.address);
    const last = lastFromMeasures(demoMeasurements, "demo", unwatched);
    await page.getByLabel("file to open").setInputFiles({ name: "my own last.stl", mimeType: "model/stl", buffer: asStl(last.mesh) });
    await page.locator(".station-state", { hasText: "from a scan" }).waitFor();
    await settled(page);
    await station(page, "Last");
    const length = await valueOf(page, "stick length");
    // The scan is the very last that was written out; 0.7 mm is the limit for lengths of clean scans.
    expect(Math.abs(length - last.measures.stickLength)).toBeLessThan(0.7);
    await page.getByText("Saved in this browser").waitFor();
    await page.reload();
    await page.locator(".station-state", { hasText: "from a scan" }).waitFor();
    await settled(page);
    await page.keyboard.press("Control+z");
    await page.locator(".station-state", { hasText: "from measures" }).waitFor();
    await settled(page);
  });

  test("reading a long file can be stopped, and the former picture stays", async () => {
    await openApp(page, stage.address);
    const last = lastFromMeasures(demoMeasurements, "demo", unwatched);
    await page.getByLabel("file to open").setInputFiles({ name: "fine.stl", mimeType: "model/stl", buffer: asStl(quartered(quartered(last.mesh))) });
    await page.getByRole("button", { name: "Stop" }).click();
    await settled(page);
    expect(await page.locator(".station-state", { hasText: "from measures" }).count()).toBe(1);
    await setValue(page, "throat depth", "76");
    expect(await page.locator(".follows").first().innerText()).toContain("vamp point");
    expect(await valueOf(page, "throat depth")).toBe(76);
    await station(page, "Sheets");
    await page.getByRole("button", { name: "Make the sheets" }).click();
    await page.locator(".files").waitFor();
  });

  test("a job is saved to a file and opened again, by dropping it on the page", async () => {
    await openApp(page, stage.address);
    await setValue(page, "throat depth", "79");
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save to a file" }).click();
    const download = await saved;
    expect(download.suggestedFilename()).toMatch(/\.lastwise$/);
    const bytes = await bytesOf(download);
    await setValue(page, "throat depth", "66");
    const carried = await page.evaluateHandle((base64) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], "pair.lastwise"));
      return data;
    }, bytes.toString("base64"));
    await page.dispatchEvent("body", "drop", { dataTransfer: carried });
    await page.waitForFunction(() => [...document.querySelectorAll("input")].some((i) => i.value === "79"));
    await settled(page);
    expect(await valueOf(page, "throat depth")).toBe(79);
  });

  test("each sheet is made and can be kept", async () => {
    await openApp(page, stage.address);
    await station(page, "Sheets");
    const pages = Number((await page.locator(".follows", { hasText: "pages for" }).innerText()).match(/^(\d+) pages/)![1]);
    await page.getByRole("button", { name: "Make the sheets" }).click();
    await page.locator(".files").waitFor();
    const begin: Readonly<Record<string, RegExp>> = { "pattern.pdf": /^%PDF/, "marks.pdf": /^%PDF/, "making.pdf": /^%PDF/, "pattern.svg": /^<(\?xml|svg)/, "pattern.dxf": /^\s*(0|999)\r?\n/, "report.json": /^\{/ };
    for (const [name, start] of Object.entries(begin)) {
      const waiting = page.waitForEvent("download");
      await page.locator(".files button", { hasText: name }).click();
      const download = await waiting;
      expect(download.suggestedFilename()).toBe(name);
      const bytes = await bytesOf(download);
      expect(bytes.length).toBeGreaterThan(500);
      expect(bytes.subarray(0, 200).toString("latin1")).toMatch(start);
      if (name === "pattern.pdf") expect(await pdfPages(bytes)).toBe(pages);
      if (name === "report.json") expect(JSON.parse(bytes.toString("utf8"))).toHaveProperty("version");
    }
    // A change makes the files old: they must not be offered any more.
    await station(page, "Lines");
    await setValue(page, "throat depth", "75");
    await station(page, "Sheets");
    expect(await page.locator(".files").count()).toBe(0);
  });

  test("opens and works without network after one visit", async () => {
    await openApp(page, stage.address);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await context.setOffline(true);
    await page.reload();
    await page.locator(".frame").first().waitFor();
    await settled(page);
    expect(await page.locator(".kept").innerText()).toContain("offline");
    await setValue(page, "throat depth", "74.5");
    expect(await page.locator(".station-state").nth(1).innerText()).toContain("74.5");
    await context.setOffline(false);
  });
});

async function handleOf(page: Page, picture: "last" | "card", key: string): Promise<{ readonly x: number; readonly y: number }> {
  const box = (await page.locator(`.view.${picture} [data-handle="${key}"] .ring`).first().boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** From now on, notes in each frame how far the tape length on the card stands from the nearest handle, px; on one, less than nothing. */
async function watchTape(page: Page): Promise<void> {
  await page.evaluate(() => {
    const gaps: number[] = [];
    const look = (): void => {
      const words = document.querySelector(".view.card .tape text")?.getBoundingClientRect();
      if (words) {
        const rings = [...document.querySelectorAll(".view.card .grip .ring")].map((r) => r.getBoundingClientRect());
        gaps.push(Math.min(...rings.map((r) => Math.max(words.left - r.right, r.left - words.right, words.top - r.bottom, r.top - words.bottom))));
      }
      if (watch.on) requestAnimationFrame(look);
    };
    const watch = { on: true, gaps };
    Object.assign(globalThis, { tapeWatch: watch });
    look();
  });
}

/** What was noted in the frames until now, the one after this among them. */
async function tapeWatched(page: Page): Promise<{ readonly frames: number; readonly nearest: number }> {
  return page.evaluate(async () => {
    const watch = (globalThis as unknown as { tapeWatch: { on: boolean; gaps: number[] } }).tapeWatch;
    await new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next)));
    watch.on = false;
    return { frames: watch.gaps.length, nearest: Math.min(...watch.gaps) };
  });
}

async function vampPointOf(page: Page): Promise<number> {
  const text = await page.locator(".follows").first().innerText();
  return Number(text.match(/lies\s+([\d.]+)/)![1]);
}

async function toplineOf(page: Page): Promise<{ readonly onLast: number; readonly onCard: number }> {
  const text = await page.locator(".follows", { hasText: "Topline" }).innerText();
  const [onLast, onCard] = [...text.matchAll(/([\d.]+)\s+mm/g)].map((m) => Number(m[1]));
  return { onLast: onLast!, onCard: onCard! };
}

async function pdfPages(bytes: Buffer): Promise<number> {
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  const pdf = await getDocument({ data: Uint8Array.from(bytes) }).promise;
  return pdf.numPages;
}

/** Each triangle in four, at the middles of its sides; corners are not shared. */
function quartered({ positions, triangles }: Mesh): Mesh {
  const out: number[] = [];
  const p = (v: number): number[] => [...positions.subarray(3 * v, 3 * v + 3)];
  const middle = (a: number[], b: number[]): number[] => a.map((x, i) => (x + b[i]!) / 2);
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [p(triangles[t]!), p(triangles[t + 1]!), p(triangles[t + 2]!)];
    const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
    for (const corners of [[a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]]) out.push(...corners.flat());
  }
  return { positions: Float64Array.from(out), triangles: Uint32Array.from({ length: out.length / 3 }, (_, i) => i) };
}
