// The station Making: prices as they are typed and what follows from them, slips told at their fields, what stays from pair to pair, opened files, tables, and every view on both sizes of screen.
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { asStl } from "../support/scan-files.ts";
import { bytesOf, desk, inAnyonesWay, openApp, settled, station, tablet, type Stage } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

const written = (page: Page, label: string): Locator => page.getByRole("textbox", { name: label, exact: true });
const priceOf = (good: string): string => `price of the ${good}`;
const rate = "what an hour of your work costs";

/** Opens the app at the station, with all headings of the column open. */
async function atMaking(page: Page, address: string): Promise<void> {
  await openApp(page, address, "Making");
  await unfold(page);
}

async function unfold(page: Page): Promise<void> {
  const closed = page.locator('#open-station .fold-word[aria-expanded="false"]');
  while ((await closed.count()) > 0) await closed.first().click();
}

/** Types into a field and waits until the worker has caught up. */
async function write(page: Page, label: string, text: string): Promise<void> {
  await written(page, label).fill(text);
  await written(page, label).press("Enter");
  await settled(page);
}

/** Begins a pair on another last, and comes back to the station. */
async function nextPair(page: Page): Promise<void> {
  await page.getByLabel("file to open", { exact: true }).setInputFiles({ name: "next.stl", mimeType: "model/stl", buffer: asStl(lastFromMeasures(demoMeasurements, "next", unwatched).mesh) });
  await page.getByRole("button", { name: "Take back: opening next.stl" }).waitFor();
  await settled(page);
  await station(page, "Making");
  await unfold(page);
}

const look = (page: Page, at: string): Promise<void> => page.locator(".under").getByRole("button", { name: at, exact: true }).click();
const costTitle = (page: Page): Promise<string> => page.getByRole("heading", { name: /^A pair costs|alone, your work not counted/ }).innerText();
const state = (page: Page): Promise<string> => page.locator(".station button", { hasText: "Making" }).innerText();

inBrowser("the station Making in a browser", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  test("a price with a comma changes the sums at once, as arithmetic says, and is taken back", async () => {
    await atMaking(page, stage.address);
    expect(await state(page)).toContain("no prices yet");
    // Of what the list says that one pair takes, in dm² to a tenth; a square metre holds 100 of them.
    const thing = await page.locator(".shopping li", { hasText: "Upper leather" }).innerText();
    const dm2 = Number(/([\d.]+) dm²/.exec(thing)![1]);
    await write(page, priceOf("upper leather"), "250,50");
    await write(page, "amount that the price of the upper leather is for", "1 m²");
    await write(page, "currency, as you write it", "EUR");
    await look(page, "what it costs");
    const cost = Number(/([\d.]+)\sEUR/.exec(await costTitle(page))![1]);
    expect(Math.abs(cost - (250.5 * dm2) / 100)).toBeLessThan((250.5 * 0.05) / 100 + 0.005);
    await write(page, rate, "30");
    expect(Number(/([\d.]+)\sEUR/.exec(await costTitle(page))![1])).toBeGreaterThan(cost + 30);
    expect(await state(page)).toMatch(/\d+\sEUR and \d+\sh a pair/);
    // Steps like any other: typing one text is one of them.
    await written(page, rate).press("Control+z");
    await settled(page);
    expect(await written(page, rate).inputValue()).toBe("");
    expect(Number(/([\d.]+)\sEUR/.exec(await costTitle(page))![1])).toBe(cost);
    expect(await page.getByRole("button", { name: "Do again: the hour’s pay" }).count()).toBe(1);
  });

  test("a negative price is told at its field, and the rest is reckoned with", async () => {
    await atMaking(page, stage.address);
    await write(page, priceOf("lining leather"), "10");
    await look(page, "what it costs");
    const before = await costTitle(page);
    const field = written(page, priceOf("upper leather"));
    await write(page, priceOf("upper leather"), "-12,50");
    expect(await field.inputValue()).toBe("-12,50");
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    const told = page.locator(`[id="${await field.getAttribute("aria-describedby")}"]`);
    expect(await told.innerText()).toContain("below 0");
    expect(await costTitle(page)).toBe(before);
    // Escape brings back what stood there when the hand came to it; no step is left of it, and what was taken back can still be done again.
    await page.getByRole("button", { name: "Take back: the price of the upper leather" }).click();
    await settled(page);
    await written(page, "how many pairs").fill("77");
    await written(page, "how many pairs").press("Escape");
    await settled(page);
    expect(await written(page, "how many pairs").inputValue()).toBe("");
    expect(await page.getByRole("button", { name: "Take back: the price of the lining leather" }).count()).toBe(1);
    await page.getByRole("button", { name: "Do again: the price of the upper leather" }).click();
    await settled(page);
    expect(await field.inputValue()).toBe("-12,50");
    expect(await page.getByRole("alert").filter({ hasText: /\w/ }).count()).toBe(0);
    await station(page, "Lines");
    expect(await state(page)).toContain("to look at");
    // It stands there after a reload too, to be corrected.
    await station(page, "Making");
    await page.reload();
    // What has to be looked at stands open.
    await written(page, priceOf("upper leather")).waitFor();
    expect(await written(page, priceOf("upper leather")).inputValue()).toBe("-12,50");
    await write(page, priceOf("upper leather"), "12,50");
    expect(await written(page, priceOf("upper leather")).getAttribute("aria-invalid")).toBe("false");
  });

  test("a thousand pairs: a thousand times one, told so, without a finger being held up", async () => {
    await atMaking(page, stage.address);
    const one = page.locator(".shopping li", { hasText: "Shanks" });
    expect(await one.innerText()).toContain("2 pieces");
    await write(page, "how many pairs", "1000");
    expect(await one.innerText()).toContain("2000 pieces");
    expect(await page.getByRole("heading", { name: "To buy for 1000 pairs" }).count()).toBe(1);
    await write(page, "how many pairs", "a few");
    expect(await one.innerText()).toContain("2 pieces");
    expect(await written(page, "how many pairs").getAttribute("aria-invalid")).toBe("true");
  });

  test("how many lasts is asked where several pairs are made, told in rounds, and stays with this pair", async () => {
    await atMaking(page, stage.address);
    const lasts = "how many pairs of lasts in this size";
    expect(await written(page, lasts).count()).toBe(0);
    await write(page, "how many pairs", "3");
    await page.getByText("One pair is lasted at a time").waitFor();
    await write(page, lasts, "2");
    await page.getByText("2 pairs are lasted at a time").waitFor();
    await write(page, "when you work, by days and times", "Tue 19:00-21:30, Sat 9:00-13:00");
    await look(page, "the calendar");
    // 2 + 1 pairs on two pairs of lasts.
    await page.locator(".bench-days").getByText("goes in 2 rounds").waitFor();
    const worked = (await page.locator(".bench-day li").allTextContents()).map((line) => line.replaceAll("\u00a0", " "));
    expect(worked.some((line) => line.includes("pairs 1 and 2 of 3"))).toBe(true);
    expect(worked.some((line) => line.includes("pair 3 of 3"))).toBe(true);
    await write(page, lasts, "some");
    expect(await written(page, lasts).getAttribute("aria-invalid")).toBe("true");
    await write(page, lasts, "3");
    await page.getByText("all can be lasted together").waitFor();
    expect(await page.locator(".bench-days").getByText("rounds").count()).toBe(0);
    await nextPair(page);
    await write(page, "how many pairs", "3");
    expect(await written(page, lasts).inputValue()).toBe("");
  });

  test("another cement changes the list and what can hurt, is taken back, and stays for the next pair", async () => {
    await atMaking(page, stage.address);
    const cement = page.getByLabel("what soles and margins are stuck with");
    const list = page.locator(".shopping");
    expect(await cement.inputValue()).toBe("contact cement");
    expect(await list.getByText("Contact cement", { exact: true }).count()).toBe(1);
    await cement.selectOption("water-based cement");
    await settled(page);
    await list.getByText("Water-based cement", { exact: true }).waitFor();
    expect(await list.getByText("Contact cement", { exact: true }).count()).toBe(0);
    await look(page, "the steps");
    const coats = page.locator(".work-step", { has: page.getByRole("heading", { name: /coat/i }) }).locator(".step-care");
    expect(await coats.count()).toBeGreaterThan(0);
    for (const care of await coats.allTextContents()) expect(care).not.toContain("organic-vapour");
    await look(page, "tools and care");
    expect(await page.getByRole("region", { name: /Solvent cement/ }).count()).toBe(0);
    await page.getByRole("button", { name: "Take back: the cement" }).click();
    await settled(page);
    expect(await cement.inputValue()).toBe("contact cement");
    await page.getByRole("region", { name: /Solvent cement/ }).waitFor();
    expect(await page.locator(".limits-of-air").getByText("European Union").count()).toBeGreaterThan(0);
    await cement.selectOption("water-based cement");
    await settled(page);
    await nextPair(page);
    expect(await cement.inputValue()).toBe("water-based cement");
  });

  test("the list tells what is paid in this shop and what will be left over, and that tools are not in it", async () => {
    await atMaking(page, stage.address);
    const head = page.locator(".shopping header");
    expect(await head.innerText()).toContain("Tools are not in this list");
    expect(await head.innerText()).not.toContain("In the shop");
    await write(page, "currency, as you write it", "EUR");
    // Bought by the spool and the packet: they are paid in full, and what the pair does not use is left.
    await write(page, priceOf("thread"), "9,40");
    await write(page, "amount that the price of the thread is for", "1000 m");
    await write(page, priceOf("needles"), "4");
    await write(page, "amount that the price of the needles is for", "10 pieces");
    expect(await head.innerText()).toMatch(/In the shop this time: 13\.40\sEUR, without \d+ things that have no price yet/);
    const thread = await page.locator(".shopping li", { hasText: "Thread, " }).innerText();
    const [uses, left] = [/One pair takes ([\d.]+) m /, /; ([\d.]+) m .* will be left over/].map((of) => Number(of.exec(thread)![1]));
    expect(Math.abs(uses! + left! - 1000)).toBeLessThanOrEqual(1);
    expect(Number(/([\d.]+)\sEUR/.exec(thread)![1])).toBe(9.4);
  });

  test("prices and shelf stay for the next pair, number of pairs and price asked do not", async () => {
    await atMaking(page, stage.address);
    await write(page, priceOf("thread"), "9");
    await write(page, "amount that the price of the thread is for", "1000 m");
    await write(page, "upper leather on the shelf", "3 m2");
    await write(page, "how many pairs", "4");
    await write(page, "price asked for one pair", "400");
    expect(await page.locator(".shopping .enough").innerText()).toContain("Upper leather");
    await nextPair(page);
    expect(await written(page, priceOf("thread")).inputValue()).toBe("9");
    expect(await written(page, "upper leather on the shelf").inputValue()).toBe("3 m2");
    expect(await written(page, "how many pairs").inputValue()).toBe("");
    expect(await written(page, "price asked for one pair").inputValue()).toBe("");
    // What is written here belongs to the workshop as well, also for a pair begun after the page was loaded again.
    await write(page, priceOf("thread"), "11");
    await page.reload();
    await written(page, "how many pairs").waitFor();
    await settled(page);
    await unfold(page);
    expect(await written(page, priceOf("thread")).inputValue()).toBe("11");
    await station(page, "Last");
    await page.getByRole("button", { name: "start from measures" }).click();
    await settled(page);
    await station(page, "Making");
    await unfold(page);
    expect(await written(page, priceOf("thread")).inputValue()).toBe("11");
    expect(await page.getByRole("button", { name: "Use my own prices and shelf" }).count()).toBe(0);
  });

  test("an opened file keeps its own prices and says so, with a way to hers and one to keep these", async () => {
    await atMaking(page, stage.address);
    await write(page, priceOf("latex"), "7");
    await write(page, "how many pairs", "3");
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save to a file" }).click();
    const file = { name: "former.lastwise", mimeType: "application/zip", buffer: await bytesOf(await download) };
    await write(page, priceOf("latex"), "8");
    await write(page, rate, "30");
    expect(await page.getByText("prices and shelf of its own").count()).toBe(0);
    await page.getByLabel("file to open", { exact: true }).setInputFiles(file);
    await page.getByRole("button", { name: "Take back: opening Example pair" }).waitFor();
    await settled(page);
    await unfold(page);
    expect(await written(page, priceOf("latex")).inputValue()).toBe("7");
    expect(await page.getByText("prices and shelf of its own").innerText()).toContain("one price and the hour’s pay");
    await page.getByRole("button", { name: "Use my own prices and shelf" }).click();
    await settled(page);
    expect(await written(page, priceOf("latex")).inputValue()).toBe("8");
    expect(await written(page, "how many pairs").inputValue()).toBe("3");
    expect(await page.getByText("prices and shelf of its own").count()).toBe(0);
    await page.getByRole("button", { name: "Take back: taking your own prices and shelf" }).click();
    await settled(page);
    await page.getByRole("button", { name: "keep these as mine" }).click();
    await page.getByText("prices and shelf of its own").waitFor({ state: "detached" });
    expect(await written(page, priceOf("latex")).inputValue()).toBe("7");
    // Hers can still be had, also later, and a new beginning takes nothing of it.
    expect(await page.getByText("were yours before").innerText()).toContain("one price and the hour’s pay");
    await page.reload();
    await page.getByRole("button", { name: "Have those back" }).click();
    await page.getByRole("button", { name: "Use my own prices and shelf" }).click();
    await settled(page);
    await unfold(page);
    expect(await written(page, priceOf("latex")).inputValue()).toBe("8");
    expect(await written(page, rate).inputValue()).toBe("30");
  });

  test("tables are saved, let go over the station and read; what a row lacks is said", async () => {
    await openApp(page, stage.address, "Making");
    const drop = async (name: string, text: string): Promise<void> => {
      const held = await page.evaluateHandle(([n, t]) => {
        const carried = new DataTransfer();
        carried.items.add(new File([t!], n!));
        return carried;
      }, [name, text]);
      await page.dispatchEvent(".bench", "drop", { dataTransfer: held });
    };
    await drop("prices.csv", "what;price;for\nupper leather;12,50;1 ft2\nunicorn hide;3;1 m2\n");
    await settled(page);
    // Seen whatever headings are closed.
    const told = page.locator("#open-station").getByText("Read from prices.csv: one price.");
    expect(await told.isVisible()).toBe(true);
    await expect.poll(() => told.evaluate((e) => e.getBoundingClientRect().bottom <= innerHeight && e.getBoundingClientRect().top >= 0)).toBe(true);
    expect(await page.locator("#open-station").getByText("unicorn hide").first().isVisible()).toBe(true);
    await unfold(page);
    expect(await written(page, priceOf("upper leather")).inputValue()).toBe("12,50");
    await drop("shelf.csv", "what,amount\nthread,300 m\n");
    await settled(page);
    expect(await written(page, "thread on the shelf").inputValue()).toBe("300 m");
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save the prices as a table" }).click();
    expect((await bytesOf(await download)).toString()).toContain('upper leather,"12,50",1 ft2');
    // Taking the pair off the shelf is a step like any other.
    await page.getByRole("button", { name: "Take what this pair uses off the shelf" }).click();
    await settled(page);
    expect(await written(page, "thread on the shelf").inputValue()).toMatch(/^2\d\d\.?\d* m$/);
    expect(await page.getByText("Taken off the shelf.").innerText()).toMatch(/Thread: 300 m, now 2/);
    await page.getByRole("button", { name: "Take what this pair uses off the shelf once more" }).waitFor();
    await page.getByRole("button", { name: "Take back: taking this off the shelf" }).click();
    await settled(page);
    expect(await written(page, "thread on the shelf").inputValue()).toBe("300 m");
    expect(await page.getByText("Taken off the shelf.").count()).toBe(0);
    // With the table its words are taken back.
    await page.getByRole("button", { name: "Take back: a table of the shelf" }).click();
    await settled(page);
    expect(await page.getByText("Read from shelf.csv").count()).toBe(0);
  });

  test("what is wrong at a thing that this pair does not use is found and put right at its own field", async () => {
    await atMaking(page, stage.address);
    await page.getByLabel("what soles and margins are stuck with").selectOption("water-based cement");
    await settled(page);
    await write(page, priceOf("water-based cement"), "-5");
    await page.getByLabel("what soles and margins are stuck with").selectOption("contact cement");
    await settled(page);
    const field = written(page, priceOf("water-based cement"));
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    expect(await page.getByText("Not used in this pair.").isVisible()).toBe(true);
    // It does not go away under the hand while it is emptied and written anew.
    await field.fill("");
    await field.pressSequentially("5");
    await settled(page);
    expect(await field.inputValue()).toBe("5");
    expect(await field.getAttribute("aria-invalid")).toBe("false");
  });

  test("what the browser keeps of other prices and nobody can read stays until she keeps others, and can be saved", async () => {
    await atMaking(page, stage.address);
    await write(page, rate, "30");
    await page.evaluate(() => new Promise<void>((done, failed) => {
      const opening = indexedDB.open("lastwise own");
      opening.onerror = () => failed(new Error("no drawer"));
      opening.onsuccess = () => {
        const writing = opening.result.transaction("own", "readwrite");
        writing.objectStore("own").put("from a newer version", "workshop");
        writing.oncomplete = () => done();
      };
    }));
    await page.reload();
    await written(page, rate).waitFor();
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save what cannot be read to a file" }).click();
    expect((await bytesOf(await saved)).toString()).toBe("from a newer version");
    await write(page, rate, "31");
    expect(await page.getByText("left as they are").count()).toBe(1);
    await page.getByRole("button", { name: "keep this pair’s as mine" }).click();
    await page.getByText("left as they are").waitFor({ state: "detached" });
    await nextPair(page);
    expect(await written(page, rate).inputValue()).toBe("31");
  });

  test("an edit of prices leaves the laid pages where they are, and the list is copied as text", async () => {
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"], { origin: new URL(stage.address).origin });
    await openApp(page, stage.address, "Sheets");
    await page.locator(".view.sheets svg").waitFor();
    await settled(page);
    await station(page, "Making");
    await unfold(page);
    await write(page, priceOf("thread"), "9");
    await page.getByRole("button", { name: "Copy the list" }).click();
    await page.getByText("Copied;").waitFor();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(/^Shopping list: Example pair, one pair\n/);
    // No moment without them: they are looked for in the same breath as the station is opened.
    const there = await page.evaluate(async () => {
      const button = [...document.querySelectorAll<HTMLElement>(".station button")].find((b) => b.textContent!.startsWith("Sheets"))!;
      button.click();
      await new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next)));
      return document.querySelector(".view.sheets svg") !== null;
    });
    expect(there).toBe(true);
  });
});

const sights = [
  { name: "desk", size: desk, more: { colorScheme: "light" as const } },
  { name: "tablet", size: tablet, more: { colorScheme: "dark" as const, hasTouch: true } },
];
for (const { name, size, more } of sights) {
  inBrowser(`the views of making, ${name}`, (fresh) => {
    let stage: Stage;
    let page: Page;
    fresh((here) => ({ stage, page } = here));

    test("nothing is wider than the screen, nothing stands in anyone's way, and what is touched is large enough", async () => {
      await atMaking(page, stage.address);
      await write(page, "currency, as you write it", "EUR");
      await write(page, priceOf("upper leather"), "12,50");
      await write(page, priceOf("lining leather"), "-6");
      await write(page, rate, "28");
      await write(page, "price asked for one pair", "420");
      await write(page, "when you work, by days and times", "Tue 19:00-21:30, Sat 9:00-13:00");
      for (const view of ["the shopping list", "what it costs", "the steps", "the calendar", "tools and care"]) {
        await look(page, view);
        const over = await page.evaluate(() => [document.documentElement, document.querySelector(".view.making")!, document.querySelector("#open-station")!].map((e) => e.scrollWidth - e.clientWidth));
        expect(Math.max(...over), `${view} is wider than its place`).toBeLessThanOrEqual(0);
        expect(await inAnyonesWay(page, "all"), `at ${view}`).toEqual([]);
      }
      if (!("hasTouch" in more)) return;
      for (const field of await page.locator(".written input:visible").all()) expect((await field.boundingBox())!.height, await field.getAttribute("aria-label") ?? "").toBeGreaterThanOrEqual(44);
    });
  }, size, more);
}
