// The station Lasting: an upper pulled over on the example, its steps and colours, Stop, what is former, two leathers, and the log of shoes.
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { field, inAnyonesWay, openApp, setValue, settled, station, type Stage, valueOf } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

inBrowser("the station of lasting in a browser", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  const pull = (): Promise<void> => page.getByRole("button", { name: /^Pull it over/ }).click();
  const ends = (): Locator => page.getByRole("table", { name: /Where the topline ends/ });
  const foretold = async (): Promise<readonly string[]> => ends().locator("tbody td:nth-child(3)").allInnerTexts();
  const pulledOver = (): Promise<void> => page.getByText("At rest.").waitFor({ timeout: 280_000 });

  const former = (): Locator => page.getByText("From before the last change.", { exact: true });

  test("an upper is pulled over: its ends, drafts, colours and steps; another pull makes that former, and taking it back does not", async () => {
    await openApp(page, stage.address, "Lasting");
    await pull();
    await page.getByRole("progressbar", { name: "how far it is pulled over" }).waitFor();
    await pulledOver();
    // The word that was touched is gone; the line that tells how it stands has the focus in its place.
    const standing = await page.evaluate(() => document.activeElement?.textContent ?? "");
    expect(standing).toMatch(/^Pulled over as the work stands now: .* to look at before you cut/);
    // Before it is cut, Pieces and Sheets count the same.
    const toLookAt = !standing.includes("nothing");
    await station(page, "Pieces");
    expect((await page.getByRole("region", { name: "To look at before you cut" }).innerText()).includes("at Lasting")).toBe(toLookAt);
    await station(page, "Lasting");
    await page.getByText("At rest.").waitFor();
    const first = await foretold();
    expect(first).toHaveLength(4);
    for (const mm of first) expect(Number(mm)).toBeGreaterThan(20);
    // Ten drafts, as on the pieces (a textbook's eight pulls and both waists).
    const drafts = page.getByRole("table", { name: /The drafts in their order/ });
    expect(await drafts.locator("tbody tr").count()).toBe(10);
    // Back, seat sides and waists stop at their marks: none took more than it may.
    const [took, most] = await Promise.all([2, 3].map(async (column) => (await drafts.locator(`tbody td:nth-child(${column})`).allInnerTexts()).map((t) => (t === "" ? undefined : Number.parseFloat(t)))));
    expect(most!.filter((n) => n !== undefined)).toHaveLength(5);
    took!.forEach((n, i) => expect(n).toBeLessThanOrEqual(most![i] ?? n!));
    expect(await page.locator(".view.last .level").count()).toBeGreaterThan(1);
    await page.getByRole("combobox", { name: "what the colours show" }).selectOption("stands off");
    await page.getByText("mm between the upper and what it should lie on").waitFor();
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
    // The steps by the keyboard: home is the upper laid on, with light hands.
    const steps = page.getByRole("slider", { name: "step of the pull-over" });
    await steps.focus();
    await page.keyboard.press("Home");
    expect(await steps.getAttribute("aria-valuetext")).toMatch(/^laid on/);
    const laidOn = await steps.getAttribute("aria-valuetext");
    await page.getByRole("button", { name: "Next step" }).click();
    expect(await steps.getAttribute("aria-valuetext")).not.toBe(laidOn);
    // The first draft is the toe's, as on the pieces.
    while ((await steps.getAttribute("aria-valuetext"))?.startsWith("laid on")) await page.getByRole("button", { name: "Next step" }).click();
    expect(await steps.getAttribute("aria-valuetext")).toMatch(/^draft 1, toe centre/);
    // An arrow where it is pulled, and what moves in words; what holds already is numbered.
    await page.locator(".pull").first().waitFor();
    expect(await page.locator(".lit").innerText()).toMatch(/^Draft 1, toe centre, .*\d+ N \(\w+\)\. The leather moves most .*\d\s?mm/);
    await steps.press("ArrowRight");
    while ((await steps.getAttribute("aria-valuetext"))?.startsWith("draft 1")) await steps.press("ArrowRight");
    await page.locator(".tack", { hasText: "1" }).waitFor();
    await page.getByRole("button", { name: "Play the pull-over" }).click();
    await page.getByRole("button", { name: "Stop playing" }).click();
    expect(await page.getByText("At rest.").count()).toBe(0);
    await page.getByRole("button", { name: "Play the pull-over" }).click();
    await page.getByText("At rest.").waitFor();
    // What was written down of a shoe changes nothing of the pull-over; a pull does.
    await setValue(page, "throat depth, left shoe of pair 1", "74,4");
    expect(await former().count()).toBe(0);
    await setValue(page, "throat depth, right shoe of pair 1", "74");
    expect(await former().count()).toBe(0);
    // One pull-over is enough for both shoes to teach.
    await page.getByRole("button", { name: /All pairs so far/ }).click();
    expect(await page.getByRole("list", { name: "What the shoes teach" }).innerText()).toMatch(/Pair 1: the throat came/);
    expect(await page.getByRole("note", { name: "What this pair teaches" }).count()).toBe(0);
    await setValue(page, "pull at the back", "8");
    expect(await former().count()).toBe(1);
    expect(await page.getByRole("button", { name: "Pull it over again" }).count()).toBe(1);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await former().count()).toBe(0);
    expect(await foretold()).toEqual(first);
    // A leather of another kind is another upper.
    await station(page, "Leather");
    await page.getByRole("combobox", { name: "leather of the upper" }).selectOption("nappa");
    await settled(page);
    await station(page, "Lasting");
    expect(await former().count()).toBe(1);
    await pull();
    await former().waitFor({ state: "detached", timeout: 280_000 });
    expect(await foretold()).not.toEqual(first);
  });

  test("Stop ends it, and the work goes on meanwhile", async () => {
    await openApp(page, stage.address, "Lasting");
    const before = await valueOf(page, "pull over the toe");
    await pull();
    await page.getByRole("button", { name: "Stop" }).waitFor();
    await setValue(page, "pull over the toe", "15");
    expect(await valueOf(page, "pull over the toe")).toBe(15);
    await page.getByRole("button", { name: "Stop" }).click();
    await page.getByRole("button", { name: "Stop" }).waitFor({ state: "detached" });
    expect(await ends().count()).toBe(0);
    expect(await page.getByRole("button", { name: "Pull it over", exact: true }).isEnabled()).toBe(true);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await valueOf(page, "pull over the toe")).toBe(before);
    await setValue(page, "pull over the toe", "1");
    expect(await page.getByRole("alert").filter({ hasText: "can be used here" }).count()).toBe(1);
  });

  test("shoes are written down, judged and advised, and kept over a reload", async () => {
    await openApp(page, stage.address, "Lasting");
    const throat = (side: string): string => `throat depth, ${side} shoe of pair 1`;
    // What is asked is told as a tape reads it over the upper, and a shoe that reads so is right.
    const rows = page.getByRole("table", { name: "Pair 1, mm" }).locator("tbody tr");
    expect(await page.getByRole("table", { name: "Pair 1, mm" }).locator("thead").innerText()).toMatch(/over the upper/);
    const askedThroat = Number(await rows.first().locator("td").first().innerText());
    await setValue(page, throat("left"), String(askedThroat));
    expect(await page.getByRole("list", { name: "Each against what was asked" }).innerText()).toMatch(/Left shoe: the throat is where it was asked/);
    expect(await page.getByRole("note", { name: "What this pair teaches" }).innerText()).toMatch(/nothing that was foretold.*Foretell it/);
    await setValue(page, throat("left"), "72");
    await setValue(page, throat("right"), "70");
    // A factory rule of 2014 (CN): openings of the vamp at most 1.0 to 1.5 mm apart.
    const alike = page.getByRole("list", { name: "Left against right" });
    expect(await alike.innerText()).toMatch(/2\.0 mm farther from the toe on the left shoe\. Outside/);
    expect(await page.getByRole("list", { name: "What to do" }).innerText()).toMatch(/Right shoe, draft 1/);
    await setValue(page, throat("right"), "71,8");
    expect(await alike.innerText()).toMatch(/Inside/);
    await setValue(page, "back height, left shoe of pair 1", "5");
    expect(await page.getByRole("list", { name: "Not usable, or to be read again" }).innerText()).toMatch(/back height/);
    await page.reload();
    await field(page, throat("left")).waitFor();
    expect(await valueOf(page, throat("left"))).toBe(72);
    await page.getByRole("button", { name: "Take pair 1 out" }).click();
    await settled(page);
    expect(await field(page, throat("left")).inputValue()).toBe("");
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await valueOf(page, throat("right"))).toBe(71.8);
    await page.getByRole("button", { name: "Marks for both lasts" }).click();
    expect(await page.getByRole("table", { name: /On the centre/ }).locator("tbody tr").count()).toBeGreaterThan(3);
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
  });
});
