// The steps of a pair as they are ticked off at the bench: both shoes, timers by a clock that is set by the test, the calendar, at desk and tablet, in the dark and by keys.
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { desk, inAnyonesWay, openApp, settled, station, tablet, type Stage } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

const cemented = "Second coat on the margins";
const pressed = "Press the margins down and draw the tacks";
const evening = new Date(2026, 11, 1, 19, 40);

inBrowser("steps of a pair in a browser", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  const word = (name: string | RegExp): Locator => page.getByRole("button", { name, exact: true });
  const tick = (shoe: "left" | "right", step: string): Locator => page.getByRole("checkbox", { name: `${shoe}: ${step}`, exact: true });
  const row = (step: string): Locator => page.locator(".work-step").filter({ has: page.getByRole("button", { name: new RegExp(`^\\d+\\. ${step}$`) }) });
  const titleOf = (step: string): Locator => page.getByRole("button", { name: new RegExp(`^\\d+\\. ${step}$`) });
  const timers = (): Locator => page.getByRole("region", { name: "What dries and rests" });
  const toSteps = async (): Promise<void> => {
    await page.clock.install({ time: evening });
    await openApp(page, stage.address, "Making");
    await word("the steps").click();
  };
  const passes = async (time: string): Promise<void> => {
    await page.clock.fastForward(time);
  };

  test("a tick on both shoes starts a timer that counts, calls out, shows in the title, and is there after a reload; a tick is taken back", async () => {
    await toSteps();
    await page.getByText("Nothing is done yet").waitFor();
    await tick("left", cemented).check();
    await timers().getByText(/left shoe: 10.min more/).waitFor();
    await row(cemented).getByText(/left shoe done; 10.min more/).waitFor();
    await tick("right", cemented).check();
    await timers().getByText(/10.min more; you can go on from 19:50, best from 19:55, before 20:10/).waitFor();
    await timers().getByText(`next comes ${pressed}`).waitFor();
    expect(await page.title()).toMatch(/^10.min: “Second coat on the margins” · Lastwise$/);
    await passes("04:00");
    await timers().getByText(/6.min more/).waitFor();
    await passes("07:00");
    const called = page.getByRole("status", { name: "what has dried" });
    await called.getByText(/you can go on; best from 19:55, in 4.min/).waitFor();
    await passes("05:00");
    await called.getByText(/go on now, before 20:10: 14.min left/).waitFor();
    expect(await page.title()).toBe(`before 20:10: go on after “${cemented}” · Lastwise`);
    // It shows at other stations too.
    await page.getByText("Saved in this browser").waitFor();
    await page.reload();
    await settled(page);
    await station(page, "Lines");
    await page.waitForFunction(() => document.title.startsWith("before 20:10"));
    await station(page, "Making");
    expect(await word("the steps").getAttribute("aria-pressed")).toBe("true");
    expect([await tick("left", cemented).isChecked(), await tick("right", cemented).isChecked()]).toEqual([true, true]);
    await timers().getByText(/go on now, before 20:10/).waitFor();
    await passes("15:00");
    await timers().getByText(/too long: what comes next should have begun by 20:10/).waitFor();
    // What comes next ends it.
    await word(`both: ${pressed}`).click();
    await timers().getByText(/Second coat/).waitFor({ state: "detached" });
    await page.keyboard.press("Control+z");
    expect(await tick("left", pressed).isChecked()).toBe(false);
    await timers().getByText(/too long/).waitFor();
    await page.keyboard.press("Control+z");
    expect([await tick("left", cemented).isChecked(), await tick("right", cemented).isChecked()]).toEqual([true, false]);
    await timers().getByText(/left shoe: too long/).waitFor();
    expect(await page.title()).toBe("Lastwise");
    await page.keyboard.press("Control+z");
    expect(await timers().count()).toBe(0);
  });

  test("a rest that ended while the page was shut is told when it is opened again", async () => {
    await toSteps();
    await word(`both: ${cemented}`).click();
    await timers().getByText("It sounds only while this page is open").waitFor();
    await page.getByText("Saved in this browser").waitFor();
    await page.goto("about:blank");
    await passes("16:00");
    await page.goto(stage.address);
    await settled(page);
    await page.getByRole("status", { name: "what has dried" }).getByText(`“${cemented}”: go on now, before 20:10`).waitFor();
  });

  test("ticking keeps the row where it stands and the focus where it is; other pages and stations are found as they were left", async () => {
    await toSteps();
    // The browser's own hold on what is read is let go, so that only the page's is left.
    await page.addStyleTag({ content: ".view { overflow-anchor: none; }" });
    const top = (step: string): Promise<number> => row(step).evaluate((e) => e.getBoundingClientRect().top);
    const scrolled = (): Promise<number> => page.locator(".view.making").evaluate((e) => e.scrollTop);
    await titleOf(cemented).click();
    const both = word(`both: ${cemented}`);
    await both.focus();
    const before = await top(cemented);
    await page.keyboard.press("Enter");
    await timers().waitFor({ state: "attached" });
    expect(Math.abs((await top(cemented)) - before)).toBeLessThan(1.5);
    expect(await both.evaluate((e) => e === document.activeElement && e.getAttribute("aria-disabled"))).toBe("true");
    // Pressed once more it does nothing.
    await page.keyboard.press("Enter");
    expect(await word(/^Take back: ticking off/).count()).toBe(1);
    const there = await scrolled();
    expect(there).toBeGreaterThan(100);
    await word("the shopping list").click();
    expect(await scrolled()).toBe(0);
    await station(page, "Pieces");
    await station(page, "Making");
    await word("the steps").click();
    expect(await scrolled()).toBe(there);
    expect(await titleOf(cemented).getAttribute("aria-expanded")).toBe("true");
  });

  test("a step opens by key to what to do, what can hurt, and when it was done; what can be done now leads there", async () => {
    await toSteps();
    const can = page.getByText(/^You can do now/);
    await can.getByRole("button").first().focus();
    await page.keyboard.press("Enter");
    const open = page.locator(".work-open:not([hidden])");
    await open.getByText("It is right when").waitFor();
    await word(`both: ${cemented}`).click();
    const title = titleOf(cemented);
    await title.focus();
    await page.keyboard.press("Enter");
    expect(await title.getAttribute("aria-expanded")).toBe("true");
    // What can hurt stands beside the step in a line, and opens to the whole.
    const care = row(cemented).locator(".step-care");
    expect(await care.innerText()).toMatch(/Take care: .*organic-vapour filters/);
    await care.getByRole("button", { name: `more: what can hurt at “${cemented}”` }).click();
    await care.locator(".safety").getByText("data sheet").first().waitFor();
    await row(cemented).getByText("Have at hand").waitFor();
    // Ticked too late: the time is set right, and the timer with it.
    await row(cemented).getByLabel("left shoe done at").fill("2026-12-01T19:20");
    const right = row(cemented).getByLabel("right shoe done at");
    await right.fill("2026-12-01T19:21");
    await right.press("Enter");
    await timers().getByText(/go on now, before 19:50/).waitFor();
    // Each is one step of the work, under words of its own, and is taken back from within the field.
    await word(`Take back: setting when “${cemented}” was done on the right shoe`).waitFor();
    await right.press("Control+z");
    expect(await right.inputValue()).toBe("2026-12-01T19:40");
    await word(`Take back: setting when “${cemented}” was done on the left shoe`).waitFor();
    // The first key of a year makes it the year 2: nothing of the work changes for it.
    await right.fill("0002-12-01T19:20");
    expect(await row(cemented).getByText("look at the year").count()).toBe(0);
    await right.blur();
    await row(cemented).getByText("look at the year").waitFor();
    expect(await right.inputValue()).toBe("2026-12-01T19:40");
    await right.fill("2026-12-01T19:30");
    await right.press("Escape");
    expect(await right.inputValue()).toBe("2026-12-01T19:40");
    await word(`Take back: setting when “${cemented}” was done on the left shoe`).waitFor();
    await page.getByText("sound when one is over").click();
    expect(await page.getByRole("checkbox", { name: "sound when one is over" }).isChecked()).toBe(true);
    expect(await inAnyonesWay(page, "all")).toEqual([]);
    await word("Take all ticks out").click();
    await page.getByText("Nothing is done yet").waitFor();
  });

  test("the calendar fits the steps into the sessions, and what is left into those from now on", async () => {
    await toSteps();
    await word("the calendar").click();
    await page.getByText("Write in the column when you work, like").waitFor();
    for (const [label, text] of [["first day of work", "2026-12-01"], ["when you work, by days and times", "Tue 19:00-21:30, Sat 9:00-13:00"]] as const) {
      await page.getByLabel(label).fill(text);
      await page.getByLabel(label).press("Enter");
    }
    const days = page.locator(".bench-day");
    await days.first().waitFor();
    const heads = await days.locator("h3").allInnerTexts();
    expect(heads[0]).toBe("Tue 1 December 2026, 19:00 to 21:30");
    expect(heads[1]).toBe("Sat 5 December 2026, 09:00 to 13:00");
    const ready = await page.getByRole("heading", { name: /^Ready on/ }).innerText();
    // No step is missing, and both sessions together hold what is done in them.
    const lines = await days.locator("li > p:not(.follows)").allTextContents();
    await word("the steps").click();
    const titles = (await page.locator(".work-step h4").allInnerTexts()).map((t) => t.replace(/^\d+\. /, ""));
    for (const title of titles) expect(lines.some((line) => line.includes(title))).toBe(true);
    await page.getByRole("checkbox", { name: `done: ${titles[0]}`, exact: true }).check();
    await word("the calendar").click();
    await word("what is left, from now on").waitFor();
    expect((await days.locator("li > p:not(.follows)").allTextContents())[0]).toMatch(/^19:4\d/);
    expect(await days.getByText(titles[0]!).count()).toBe(0);
    await word("all, as first planned").click();
    expect(await page.getByRole("heading", { name: /^Ready on/ }).innerText()).toBe(ready);
    expect(await days.first().locator(".is-done").count()).toBe(1);
    // No session long enough for cement that has to be closed in one go.
    await page.getByLabel("when you work, by days and times").fill("daily 19:00-19:25");
    await page.getByLabel("when you work, by days and times").press("Enter");
    await page.getByRole("region", { name: "the calendar" }).getByText(/must be done in one go/).waitFor();
  });

  for (const [name, size, more] of [["at a desk", desk, {}], ["on a tablet", tablet, { hasTouch: true }], ["in the dark", desk, { colorScheme: "dark" }]] as const) {
    test(`nothing stands in anyone's way or out of reach ${name}`, async () => {
      const context = await stage.newContext(size, more);
      page = await context.newPage();
      await toSteps();
      await word(`both: ${cemented}`).click();
      await titleOf(cemented).click();
      await page.getByLabel("when you work, by days and times").fill("Tue 19:00-21:30, Sat 9:00-13:00");
      await page.getByLabel("when you work, by days and times").press("Enter");
      for (const view of ["the steps", "the calendar"]) {
        await word(view).click();
        expect(await inAnyonesWay(page, "all")).toEqual([]);
        const wide = await page.locator(".view.making").evaluate((e) => e.scrollWidth - e.clientWidth);
        expect(wide).toBeLessThanOrEqual(0);
      }
      // What is taken back and done again bears the step's long name: the page stays as wide as its window.
      await page.getByRole("button", { name: /^Take back/ }).click();
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      await word("the steps").click();
      for (const label of await page.locator(".ticks label").all()) {
        const box = (await label.boundingBox())!;
        expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
      }
      await context.close();
    });
  }
});
