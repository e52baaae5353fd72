// How the station Making is reached by ear and by finger: what is told while something is typed, and how large things are on a tablet that lies on its side.
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { openApp, settled, type Stage } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

const price = "price of the upper leather";

async function unfold(page: Page): Promise<void> {
  const closed = page.locator('#open-station .fold-word[aria-expanded="false"]');
  while ((await closed.count()) > 0) await closed.first().click();
}

inBrowser("what is heard at the station Making", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  test("typing is silent; what follows is told once, when the hand is off the field", async () => {
    await openApp(page, stage.address, "Making");
    await unfold(page);
    await page.evaluate(() => {
      const heard: string[] = [];
      Object.assign(globalThis, { heard });
      const places = (): string => [...document.querySelectorAll('.column [role="status"]')].map((e) => e.textContent).join("|");
      let before = places();
      new MutationObserver(() => {
        const now = places();
        if (now !== before) heard.push(now);
        before = now;
      }).observe(document.querySelector(".column")!, { subtree: true, childList: true, characterData: true });
    });
    const heard = (): Promise<string[]> => page.evaluate(() => (globalThis as unknown as { heard: string[] }).heard);
    const field = page.getByRole("textbox", { name: price, exact: true });
    await field.focus();
    // On its way to 12.50 it is something else five times, twice of them nothing that can be read.
    await page.keyboard.type("-12.5x");
    await page.getByText("No price is written yet").waitFor();
    await field.fill("");
    await page.keyboard.type("12.50");
    await page.getByText("Material alone, your work not counted").first().waitFor();
    expect(await heard()).toEqual([]);
    await page.keyboard.press("Enter");
    await settled(page);
    const told = await heard();
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/Material alone, your work not counted: more than [\d.]+\./);
    // What cannot be read is told once too, when she goes on.
    await page.getByRole("textbox", { name: "what an hour of your work costs", exact: true }).fill("a lot");
    expect(await heard()).toHaveLength(1);
    await page.keyboard.press("Tab");
    await settled(page);
    expect((await heard()).slice(1).join()).toContain("hour");
  });

  test("the field of the lasts stays while she writes in it, also where it is emptied", async () => {
    await openApp(page, stage.address, "Making");
    const field = (label: string): Locator => page.getByRole("textbox", { name: label, exact: true });
    const lasts = field("how many pairs of lasts in this size");
    await field("how many pairs").fill("3");
    await lasts.fill("2");
    await lasts.press("Enter");
    await field("how many pairs").fill("1");
    await lasts.fill("");
    expect(await lasts.evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.type("4");
    expect(await lasts.inputValue()).toBe("4");
    await lasts.fill("");
    await page.keyboard.press("Tab");
    await lasts.waitFor({ state: "detached" });
  });
});

inBrowser("the station Making on a tablet held aside", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  test("what is touched at making takes a finger, as on one held upright", async () => {
    await openApp(page, stage.address, "Making");
    expect(await page.evaluate(() => matchMedia("(pointer: coarse)").matches && matchMedia("(orientation: landscape)").matches && innerWidth > 1000)).toBe(true);
    await unfold(page);
    const small = async (where: string): Promise<string[]> => page.evaluate((selector) => [...document.querySelectorAll<HTMLElement>(selector)].flatMap((e) => {
      const box = e.getBoundingClientRect();
      if (box.width === 0) return [];
      const after = getComputedStyle(e, "::after");
      // Within running text the room is laid around the word.
      const around = after.content === "none" ? 0 : -parseFloat(after.top) - parseFloat(after.bottom);
      return box.height + (Number.isNaN(around) ? 0 : around) >= 43.5 ? [] : [`${e.getAttribute("aria-label") ?? e.textContent}: ${Math.round(box.height)}`];
    }), where);
    expect(await small(".written input")).toEqual([]);
    for (const view of ["the shopping list", "the steps", "tools and care"]) {
      await page.locator(".under").getByRole("button", { name: view, exact: true }).click();
      expect(await small(".view.making button, .view.making label"), view).toEqual([]);
    }
    expect(await small("#open-station button, #open-station select, .under button")).toEqual([]);
  });
}, { width: 1180, height: 820 }, { hasTouch: true });
