// The station Leather: strips typed, pasted, opened from a table and let go over the page, what they tell, the plot, undo, two leathers, and those that are kept.
import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { field, inAnyonesWay, openApp, setValue, settled, station, type Stage, valueOf } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

inBrowser("the station of leathers in a browser", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  const upper = (): Locator => page.getByRole("region", { name: "Leather of the upper" });
  const entry = (part: "load" | "length", strip: number): Locator => page.getByRole("textbox", { name: part === "load" ? `new load on strip ${strip} of the upper` : `length under it on strip ${strip} of the upper` });
  const told = (): Promise<string> => upper().locator("p.sentence", { hasText: "Under 10" }).innerText();
  /** A strip of the upper, its readings typed row by row with the keyboard alone; loads in newtons. */
  const typeStrip = async (strip: number, way: string, rows: readonly (readonly [load: string, length: string])[]): Promise<void> => {
    await page.getByRole("button", { name: `add a strip of the upper cut ${way}` }).click();
    await entry("load", strip).click();
    for (const [load, length] of rows) {
      await page.keyboard.type(load);
      await page.keyboard.press("Enter");
      await page.keyboard.type(length);
      await page.keyboard.press("Enter");
    }
    await settled(page);
  };
  const begin = async (): Promise<void> => {
    await openApp(page, stage.address, "Leather");
    await upper().getByRole("button", { name: "Test strips of it" }).click();
    await page.getByRole("combobox", { name: "unit of the loads" }).first().selectOption("N");
  };

  test("strips are typed by keyboard, the figures and the plot follow, and a reading is taken back", async () => {
    await begin();
    const usual = await told();
    expect(await page.locator(".strips .read").count()).toBe(0);
    await typeStrip(1, "along", [["2", "101"], ["5", "102,1"], ["10", "103.4"], ["20", "105,3"]]);
    await typeStrip(2, "across", [["2", "103"], ["5", "106"], ["10", "109,5"], ["20", "114"]]);
    expect(await page.locator(".strips .read.of-along").count()).toBe(4);
    expect(await page.locator(".strips .read.of-across").count()).toBe(4);
    expect(await told()).not.toBe(usual);
    // The readings at 10 N themselves: 3.4 % along, 9.5 % across; the fit lies within the 0.5 mm that a rule is misread by.
    const [along, across] = [...(await told()).matchAll(/gives ([\d.]+)|and ([\d.]+)\s?% across/g)].map((m) => Number(m[1] ?? m[2]));
    expect(Math.abs(along! - 3.4)).toBeLessThan(0.5);
    expect(Math.abs(across! - 9.5)).toBeLessThan(0.5);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await page.locator(".strips .read.of-across").count()).toBe(3);
    expect(await page.locator(".station button", { hasText: "Leather" }).innerText()).toContain("tested");
    // Nothing is lost by a reload.
    await page.reload();
    await page.locator(".strips .read").first().waitFor();
    expect(await page.locator(".strips .read").count()).toBe(7);
  });

  test("what cannot be is told at its own field, and stays there to be corrected", async () => {
    await begin();
    await typeStrip(1, "along", [["5", "98"]]);
    expect(await page.getByRole("alert").filter({ hasText: "not by how much it grew" }).count()).toBe(1);
    expect(await entry("length", 1).getAttribute("aria-invalid")).toBe("true");
    await entry("length", 1).fill("104");
    await entry("length", 1).press("Enter");
    await settled(page);
    expect(await valueOf(page, "length under load 1 on strip 1 of the upper")).toBe(104);
    await setValue(page, "length under load 1 on strip 1 of the upper", "90");
    expect(await page.getByRole("alert").filter({ hasText: "not by how much it grew" }).count()).toBe(1);
    await field(page, "length under load 1 on strip 1 of the upper").press("Escape");
    expect(await valueOf(page, "length under load 1 on strip 1 of the upper")).toBe(104);
    // A row that was begun is still there after another station.
    await entry("load", 1).fill("12");
    await station(page, "Lines");
    await station(page, "Leather");
    await upper().getByRole("button", { name: "Strips of it that you tested" }).click();
    expect(await entry("load", 1).inputValue()).toBe("12");
  });

  test("the same load in kilograms is the same load, and a length after a minute is read and forgotten", async () => {
    await begin();
    await typeStrip(1, "across", [["19.6133", "112"]]);
    await page.getByRole("combobox", { name: "unit of the loads" }).first().selectOption("kg");
    expect(await valueOf(page, "load 1 on strip 1 of the upper, kilograms")).toBe(2);
    await setValue(page, "length one minute after load 1 on strip 1 of the upper", "103");
    expect(await told()).toContain("25\u00a0% of the stretch is still there");
    await setValue(page, "length one minute after load 1 on strip 1 of the upper", "");
    expect(await told()).not.toContain("still there");
  });

  test("rows are pasted, and whole tables opened; what a table lacks is said", async () => {
    await begin();
    await page.getByRole("button", { name: "paste a table of strips of the upper" }).click();
    await page.getByRole("textbox", { name: "table of strips of the upper, as text" }).fill("no strips here");
    await page.getByRole("button", { name: "Take it" }).click();
    expect(await upper().getByRole("list", { name: "What to look at" }).count()).toBe(1);
    await page.getByLabel("table of strips of the upper", { exact: true }).setInputFiles("examples/strips-goat.csv");
    await settled(page);
    expect(await page.locator(".strips .read").count()).toBeGreaterThan(6);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await page.locator(".strips .read").count()).toBe(0);
  });

  test("a new strip waits for its first load unscolded, a half-typed row goes with its strip, and strips stay through another kind until they are taken out", async () => {
    await begin();
    await page.getByRole("button", { name: "add a strip of the upper cut along" }).click();
    await page.keyboard.type("7");
    expect(await entry("load", 1).inputValue()).toBe("7");
    expect(await upper().locator("ul.findings li").count()).toBe(0);
    await page.getByRole("button", { name: "take out strip 1 of the upper" }).click();
    await page.getByRole("button", { name: "add a strip of the upper cut across" }).click();
    expect(await entry("load", 1).inputValue()).toBe("");
    await setValue(page, "width of strip 1 of the upper", "150");
    expect(await page.getByRole("alert").filter({ hasText: "A strip is 4 to 100" }).count()).toBe(1);
    await field(page, "width of strip 1 of the upper").press("Escape");
    await entry("load", 1).fill("10");
    await entry("length", 1).fill("109");
    await entry("length", 1).press("Enter");
    await settled(page);
    await page.getByRole("combobox", { name: "leather of the upper" }).selectOption("nappa");
    await upper().getByText(/Its strip stays; it was read as goat or kid/).waitFor();
    await page.getByRole("button", { name: "take the strips of the upper out" }).click();
    await settled(page);
    expect(await page.locator(".strips .read").count()).toBe(0);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await page.locator(".strips .read").count()).toBe(1);
  });

  /** A file let go over the page. */
  const drop = async (name: string, text: string): Promise<void> => {
    const held = await page.evaluateHandle(([name, text]) => {
      const data = new DataTransfer();
      data.items.add(new File([text!], name!, { type: "text/csv" }));
      return data;
    }, [name, text]);
    await page.dispatchEvent(".bench", "drop", { dataTransfer: held });
  };

  test("a table let go over the page holds strips here, and is told where it belongs elsewhere", async () => {
    await begin();
    await drop("strips-goat.csv", readFileSync("examples/strips-goat.csv", "utf8"));
    await page.locator(".strips .read").first().waitFor();
    expect(await page.locator(".strips .read").count()).toBe(30);
    await drop("other.csv", "no strips here");
    await upper().getByRole("list", { name: "What to look at" }).waitFor();
    expect(await page.locator(".strips .read").count()).toBe(30);
    // The picture tells whose strips they are.
    await page.getByRole("button", { name: "the lining’s leather" }).click();
    await drop("strips-goat.csv", readFileSync("examples/strips-goat.csv", "utf8"));
    await page.getByRole("region", { name: /The lining’s leather/ }).locator(".read").first().waitFor();
    await station(page, "Lines");
    await drop("strips-goat.csv", readFileSync("examples/strips-goat.csv", "utf8"));
    await page.getByText(/strips-goat\.csv is a table.*station Leather/).waitFor();
  });

  test("a leather is kept for other pairs, with its strips and what its shoes taught", async () => {
    await begin();
    await drop("strips-goat.csv", readFileSync("examples/strips-goat.csv", "utf8"));
    await page.locator(".strips .read").first().waitFor();
    const fold = (): Locator => upper().getByRole("button", { name: "Leathers you keep" });
    await fold().click();
    expect(await upper().getByText("Give this leather a name above").count()).toBe(1);
    await page.getByRole("textbox", { name: "what you call the upper’s leather" }).fill("Rosa");
    await station(page, "Lasting");
    await setValue(page, "throat depth, left shoe of pair 1", "72");
    await station(page, "Leather");
    await fold().click();
    await page.getByRole("button", { name: "Keep this leather for other pairs, the upper’s" }).click();
    await upper().getByText("Rosa is kept.").waitFor();
    expect(await upper().getByText("Rosa is kept as it is here.").count()).toBe(1);
    // Another pair, whose file knows nothing of it, after the page was loaded anew.
    await page.reload();
    await page.locator(".frame").first().waitFor();
    await settled(page);
    await page.getByLabel("file to open").setInputFiles("examples/almond-37.json");
    await page.locator('[aria-label="name of this work"][value^="Almond"]').waitFor();
    await settled(page);
    await station(page, "Leather");
    expect(await page.locator(".strips .read").count()).toBe(0);
    await fold().click();
    expect(await upper().getByRole("list", { name: "leathers to take for the upper" }).innerText()).toMatch(/Rosa\s+goat or kid, 3 strips, one pair made of it/);
    await page.getByRole("button", { name: "Rosa, to take for the upper" }).click();
    await settled(page);
    expect(await page.locator(".strips .read").count()).toBe(30);
    await station(page, "Lasting");
    expect(await valueOf(page, "throat depth, left shoe of pair 1")).toBe(72);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await field(page, "throat depth, left shoe of pair 1").inputValue()).toBe("");
    await station(page, "Leather");
    await fold().click();
    await page.getByRole("button", { name: "forget Rosa, at the upper" }).click();
    await page.getByRole("button", { name: "Rosa, to take for the upper" }).waitFor({ state: "detached" });
    await page.getByRole("button", { name: "Have it back: Rosa, at the upper" }).click();
    await page.getByRole("button", { name: "Rosa, to take for the upper" }).waitFor();
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
  });

  test("upper and lining are two leathers, each with its plot; turning one turns its arrow alone", async () => {
    await openApp(page, stage.address, "Leather");
    await page.getByRole("combobox", { name: "leather of the upper" }).selectOption("calf");
    await settled(page);
    expect(await page.getByRole("region", { name: /The upper’s leather: calf/ }).count()).toBe(1);
    // The picture goes where the hand is.
    await page.getByRole("combobox", { name: "leather of the lining" }).focus();
    await page.getByRole("combobox", { name: "leather of the lining" }).selectOption("pig");
    await settled(page);
    expect(await page.getByRole("region", { name: /The lining’s leather: pig/ }).count()).toBe(1);
    await setValue(page, "direction of the upper", "15");
    const words = await page.getByRole("img", { name: /direction of least stretch/ }).getAttribute("aria-label");
    expect(words).toMatch(/upper, turned 15° to the left/);
    expect(words).toMatch(/vamp lining, lengthwise/);
    await page.getByRole("button", { name: "how a strip is tested" }).click();
    expect(await page.locator(".strip-test svg").count()).toBe(3);
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
  });
});
