import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { inAnyonesWay, openApp, setValue, settled, type Stage, valueOf } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

inBrowser("the shell's station in a browser", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  const check = (): Locator => page.getByRole("table", { name: /Card against the last/ });
  /** The pattern was tried out as it stands now. */
  const tried = async (): Promise<void> => {
    await check().waitFor();
    await page.getByText("What stands below is from before the last change.").waitFor({ state: "detached" });
  };
  const shortened = async (): Promise<readonly number[]> => (await check().locator("tr", { hasText: "topline, shortened" }).locator("td").allInnerTexts()).map((t) => Number.parseFloat(t.replace("−", "-")));

  test("the card is laid back on the last, and is tried again for another topline", async () => {
    await openApp(page, stage.address, "Shell");
    await tried();
    expect(await check().locator("tbody tr").count()).toBe(8);
    const before = await shortened();
    for (const mm of before) expect(mm).toBeLessThan(-3);
    await setValue(page, "topline shorter", "1");
    expect(await page.locator(".follows", { hasText: /^Topline/ }).innerText()).toMatch(/: 1(\.0\d)?\u00a0% shorter/);
    await expect.poll(async () => (await shortened())[0], { timeout: 60_000 }).toBeGreaterThan(before[0]! + 2);
    await page.keyboard.press("Control+z");
    await expect.poll(async () => (await shortened())[0], { timeout: 60_000 }).toBe(before[0]);
  });

  test("leather and edge say how much shorter the topline is, until the maker says so herself", async () => {
    await openApp(page, stage.address, "Shell");
    expect(await valueOf(page, "topline shorter")).toBe(2.25);
    await page.getByRole("combobox", { name: "leather of the upper" }).selectOption("soft");
    await settled(page);
    expect(await valueOf(page, "topline shorter")).toBe(3.25);
    await page.getByRole("combobox", { name: "edge of the topline" }).selectOption("raw");
    await settled(page);
    expect(await valueOf(page, "topline shorter")).toBe(3.75);
    await setValue(page, "topline shorter", "2");
    await page.getByRole("combobox", { name: "leather of the upper" }).selectOption("firm");
    await settled(page);
    expect(await valueOf(page, "topline shorter")).toBe(2);
    await setValue(page, "topline shorter", "50");
    expect(await page.getByRole("alert").filter({ hasText: "Only 0 to" }).count()).toBe(1);
  });

  test("the colours can show where the card stands off, in mm, and nothing stands in anyone's way", async () => {
    await openApp(page, stage.address, "Shell");
    await tried();
    await page.getByRole("combobox", { name: "what the colours show" }).selectOption("stand-off");
    await page.getByText("mm between the card and what it should lie on").waitFor();
    expect(await page.locator(".view.card .nick").count()).toBeGreaterThan(4);
    await page.getByRole("button", { name: "Fold the outer half over on the card" }).click();
    expect(await page.locator(".view.card .folded").count()).toBe(3);
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
    await page.getByRole("button", { name: "Fold it back" }).click();
    expect(await page.locator(".view.card .folded").count()).toBe(0);
  });

  test("the work goes on while a pattern is being tried out", async () => {
    await openApp(page, stage.address, "Shell");
    // No answer is waited for: the number follows while the other worker is busy.
    await setValue(page, "thickness of the stiffener", "2");
    await setValue(page, "thickness of the stiffener", "0");
    const added = await page.getByRole("table", { name: /What lies beneath adds/ }).locator("tr", { hasText: "half round the heel" }).locator("td").first().innerText();
    await setValue(page, "thickness of the stiffener", "1.5");
    await expect.poll(async () => Number(await page.getByRole("table", { name: /What lies beneath adds/ }).locator("tr", { hasText: "half round the heel" }).locator("td").first().innerText())).toBeGreaterThan(Number(added) + 1);
  });
});
