// What can be asked of a lasted upper at the station Lasting: the pattern that ends there, bands, turned pieces, another leather, and what the drafts do; on two lasts.
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { inAnyonesWay, openApp, setValue, settled, station, type Stage, valueOf } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

inBrowser("what is asked of lasting in a browser", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  const ends = (): Locator => page.getByRole("table", { name: /Where the topline ends/ });
  const pull = async (): Promise<void> => {
    await page.getByRole("button", { name: /^Pull it over/ }).click();
    await page.getByText("At rest.").waitFor({ timeout: 280_000 });
  };
  const progress = (): Locator => page.getByRole("progressbar", { name: "how far it is pulled over" });
  const word = (name: string | RegExp): Locator => page.getByRole("button", { name });
  /** Begins a long work and stops it after it has come some way; what there was before is still there, and it can be asked for again. */
  const begunAndStopped = async (name: string | RegExp): Promise<void> => {
    await word(name).click();
    await page.waitForFunction(() => (document.querySelector<HTMLProgressElement>(".lasting-busy progress")?.value ?? 0) > 0.02, undefined, { timeout: 200_000 });
    await page.locator(".lasting-busy").getByRole("button", { name: "Stop" }).click();
    await progress().waitFor({ state: "detached" });
    expect(await word(name).isEnabled()).toBe(true);
  };
  const finished = (): Promise<void> => progress().waitFor({ state: "detached", timeout: 280_000 });

  test("the pattern that ends there is stopped, worked out, cut, and taken back", async () => {
    await openApp(page, stage.address, "Lasting");
    await begunAndStopped("Work out the pattern that ends there");
    await word("Work out the pattern that ends there").click();
    const table = page.getByRole("table", { name: /How far the ends miss/ });
    await table.waitFor({ timeout: 280_000 });
    const misses = async (column: number): Promise<readonly number[]> => (await table.locator(`tbody td:nth-of-type(${column})`).allInnerTexts()).map((t) => Math.abs(Number(t.replace("−", "-"))));
    const [card, corrected] = [await misses(1), await misses(2)];
    expect(card).toHaveLength(4);
    expect(Math.max(...corrected)).toBeLessThanOrEqual(0.3);
    expect(Math.max(...corrected)).toBeLessThan(Math.max(...card));
    expect(await page.getByRole("list", { name: "What the correction comes to" }).innerText()).toMatch(/ends within 0\.3 mm/);
    await word("Cut the pieces so").click();
    await settled(page);
    const shifts = ["throat cut farther", "back cut higher", "inner side cut higher", "outer side cut higher"];
    const cut = await Promise.all(shifts.map((name) => valueOf(page, name)));
    expect(cut.some((mm) => Math.abs(mm) > 0.1)).toBe(true);
    // The pattern that is cut now is pulled over at once, and ends as it was worked out to.
    await page.getByText("Pulled over, it ends where you drew it").waitFor({ timeout: 280_000 });
    // All four numbers and the choice are one step.
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await page.getByRole("combobox", { name: "from which pattern the pieces are cut" }).inputValue()).toBe("card");
    expect(await page.getByRole("spinbutton", { name: shifts[0]! }).count()).toBe(0);
  });

  test("bands and another leather are stopped midway; turned pieces and what drafts do are worked out, and the upper stays pulled over", async () => {
    await openApp(page, stage.address, "Lasting");
    await pull();
    const before = await ends().locator("tbody").innerText();
    await begunAndStopped("pull thirty like leathers over");
    await begunAndStopped("pull it over");
    expect(await ends().locator("tbody").innerText()).toBe(before);
    await begunAndStopped("lay the pieces turned by 15 degrees");
    await word("lay the pieces turned by 15 degrees").click();
    await page.getByRole("table", { name: /What turning a layer/ }).waitFor({ timeout: 280_000 });
    await finished();
    // A pair that is off is advised by a rule of thumb until its own drafts were tried.
    await setValue(page, "throat depth, left shoe of pair 1", "75");
    await setValue(page, "throat depth, right shoe of pair 1", "72");
    const advice = page.getByRole("list", { name: "What to do" });
    expect(await advice.innerText()).toContain("Rule of thumb");
    await word("Reckon it for this pair").click();
    await advice.getByText("Reckoned for this pair").first().waitFor({ timeout: 280_000 });
    expect(await advice.innerText()).not.toContain("Rule of thumb");
    // Shoes written down do not make the pull-over former, and are there after a reload.
    expect(await ends().locator("tbody").innerText()).toBe(before);
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
    await page.reload();
    await page.getByRole("spinbutton", { name: "throat depth, left shoe of pair 1" }).waitFor();
    expect(await valueOf(page, "throat depth, left shoe of pair 1")).toBe(75);
  });

  test("two leathers on another last: its upper is pulled over in each, and ends elsewhere", async () => {
    await openApp(page, stage.address, "Lines");
    await page.getByLabel("file to open").setInputFiles("examples/almond-37.json");
    await page.locator('[aria-label="name of this work"][value^="Almond"]').waitFor();
    await settled(page);
    const told: string[] = [];
    for (const leather of ["goat", "calf"]) {
      await station(page, "Leather");
      await page.getByRole("combobox", { name: "leather of the upper" }).selectOption(leather);
      await settled(page);
      expect(await page.getByRole("region", { name: /The upper’s leather/ }).count()).toBe(1);
      await station(page, "Lasting");
      await word(/^Pull it over/).click();
      await page.getByText("From before the last change.", { exact: true }).waitFor({ state: "detached", timeout: 280_000 });
      await page.getByText("At rest.").waitFor({ timeout: 280_000 });
      told.push((await ends().locator("tbody td:nth-child(3)").allInnerTexts()).join());
    }
    expect(new Set(told).size).toBe(2);
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
  });
});
