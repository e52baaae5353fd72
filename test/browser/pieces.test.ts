// The stations Pieces and Sheets: parts chosen by word, what follows, two variants, usual numbers, and the pages as they are printed.
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { bytesOf, field, inAnyonesWay, openApp, setValue, settled, type Stage, station, tablet, valueOf } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

const row = (page: Page, name: string): Locator => page.locator(".piece-row").filter({ has: page.locator("b").getByText(name, { exact: true }) });
const choose = async (page: Page, label: string, option: string): Promise<void> => {
  await page.getByRole("combobox", { name: label, exact: true }).selectOption(option);
  await settled(page);
};
const kept = (page: Page): Promise<void> => page.getByText("Saved in this browser").waitFor();

inBrowser("the station Pieces", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  test("another cut is chosen by a word, told by the pieces that come and go, and taken back as one step", async () => {
    await openApp(page, stage.address, "Pieces");
    expect(await row(page, "upper").count()).toBe(1);
    expect(await page.getByRole("combobox", { name: "the kind of seam", exact: true }).count()).toBe(0);
    await choose(page, "how the upper is cut", "quarters");
    await row(page, "vamp").waitFor();
    expect(await row(page, "inner quarter").count()).toBe(1);
    expect(await row(page, "upper").count()).toBe(0);
    expect(await page.locator(".follows", { hasText: "No more: upper" }).count()).toBeGreaterThan(0);
    // The seam has its sentence now, and the lap its number only where it is lapped.
    await page.getByRole("button", { name: "Topline and seams", exact: true }).click();
    expect(await field(page, "lap under").count()).toBe(0);
    await choose(page, "the kind of seam", "lapped");
    expect(await field(page, "lap under").count()).toBe(1);
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await row(page, "upper").count()).toBe(1);
  });

  test("a picked piece shows its own numbers first, large, named, and where it lies on the last", async () => {
    await openApp(page, stage.address, "Pieces");
    expect(await field(page, "sole edge, heel").isVisible()).toBe(false);
    await row(page, "outsole").click();
    expect(await field(page, "sole edge, heel").isVisible()).toBe(true);
    expect(await page.locator(".picked").innerText()).toMatch(/^The outsole\s+\d+ of sole leather/);
    await page.locator('section[aria-label="The outsole on the last"] canvas').waitFor();
    expect(Number(await page.locator("[data-runs]").getAttribute("data-runs"))).toBeGreaterThan(0);
    expect(await page.locator(".margin-words text", { hasText: "joint line" }).count()).toBe(1);
    await page.getByRole("button", { name: "the piece", exact: true }).click();
    expect(await page.locator("[data-runs]").count()).toBe(0);
    await page.locator(".picked").getByRole("button", { name: "Show all pieces" }).click();
    expect(await page.locator(".picked").count()).toBe(0);
  });

  test("a changed number tells and shows which pieces changed with it, until the next", async () => {
    await openApp(page, stage.address, "Pieces");
    await row(page, "outsole").click();
    await setValue(page, "sole edge, heel", "2,2");
    expect(await valueOf(page, "sole edge, heel")).toBe(2.2);
    expect(await page.locator(".picked .follows", { hasText: "Changed with it:" }).innerText()).toContain("outsole");
    await page.locator(".picked").getByRole("button", { name: "Show all pieces" }).click();
    expect(await page.locator("g.piece.changed .name", { hasText: "outsole" }).count()).toBe(1);
    expect(await page.locator("g.piece.changed .name", { hasText: "insole" }).count()).toBe(0);
    await page.keyboard.press("Control+z");
    await settled(page);
    await row(page, "insole").click();
    await setValue(page, "sock inside the insole", "1.5");
    await page.locator(".picked").getByRole("button", { name: "Show all pieces" }).click();
    expect(await page.locator("g.piece.changed .name").allTextContents()).toContain("sock");
    expect(await page.locator("g.piece.changed .name", { hasText: "outsole" }).count()).toBe(0);
  });

  test("two variants are held against each other in words and in ink, and one goes back to A", async () => {
    await openApp(page, stage.address, "Pieces");
    await page.getByRole("button", { name: "Keep this as A" }).click();
    expect(await page.locator(".of-a").count()).toBe(0);
    await row(page, "outsole").click();
    await setValue(page, "sole edge, heel", "3.2");
    expect(await page.getByRole("region", { name: "Compared with A" }).innerText()).toMatch(/outsole by up to 2(\.\d)?\u00a0mm/);
    expect(await page.locator(".picked").innerText()).toMatch(/At most 2(\.\d)?\u00a0mm from A, .* larger/);
    expect(await page.locator(".margin-words text", { hasText: "from A" }).count()).toBe(1);
    expect(await page.locator(".of-a").count()).toBe(1);
    await page.getByRole("button", { name: "Go back to A" }).click();
    await settled(page);
    expect(await valueOf(page, "sole edge, heel")).toBe(1.2);
    expect(await page.locator(".of-a").count()).toBe(0);
    // Taking back goes on across it: to the variant, and to before A was left.
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await valueOf(page, "sole edge, heel")).toBe(3.2);
    await page.keyboard.press("Control+z");
    await settled(page);
    expect(await valueOf(page, "sole edge, heel")).toBe(1.2);
  });

  test("usual numbers outlive a reload, begin the next pair, go to a file and come back, and are forgotten when asked", async () => {
    await openApp(page, stage.address, "Pieces");
    await choose(page, "the sock", "heel");
    await row(page, "outsole").click();
    await setValue(page, "sole edge, heel", "2");
    await page.getByRole("button", { name: "Your usual numbers" }).click();
    await page.getByRole("button", { name: "Keep these numbers as my usual ones" }).click();
    const told = page.locator(".fold", { hasText: "Your usual numbers" });
    await told.getByText("sock over the heel alone").waitFor();
    await kept(page);
    await page.reload();
    await page.locator(".frame").first().waitFor();
    await settled(page);
    // The next pair begins with them, whatever the one at hand has come to.
    await station(page, "Pieces");
    await choose(page, "the sock", "full");
    await station(page, "Last");
    await setValue(page, "ball width", "80");
    await page.evaluate(() => (document.querySelector<HTMLElement>("#open-station") ?? document.body).scrollTo(0, 1e6));
    await station(page, "Pieces");
    await page.getByRole("button", { name: "Your usual numbers" }).click();
    await told.getByRole("button", { name: "Take them for this pair" }).click();
    await settled(page);
    expect(await page.getByRole("combobox", { name: "the sock", exact: true }).inputValue()).toBe("heel");
    expect(await page.locator('button:has-text("Take back: taking the usual numbers")').count()).toBe(1);

    const waiting = page.waitForEvent("download");
    await told.getByRole("button", { name: "Save them to a file" }).click();
    const download = await waiting;
    expect(download.suggestedFilename()).toMatch(/\.json$/);
    const bytes = await bytesOf(download);
    expect(JSON.parse(bytes.toString("utf8"))).toMatchObject({ parts: { sock: "heel" }, pieces: { soleFinishHeelMm: 2 } });
    await told.getByRole("button", { name: "Forget them" }).click();
    await told.getByText("none kept yet").waitFor();
    const chooser = page.locator('input[aria-label="file of usual numbers"]');
    await chooser.setInputFiles({ name: "mine.json", mimeType: "application/json", buffer: Buffer.from(bytes.toString("utf8").replace('"heel"', '"toe"')) });
    await told.getByText(/mine\.json: the field parts → sock must be one of/).waitFor();
    await told.getByText("none kept yet").waitFor();
    await chooser.setInputFiles({ name: "mine.json", mimeType: "application/json", buffer: bytes });
    await told.getByText("These are your usual numbers.").waitFor();
    await page.reload();
    await page.locator(".frame").first().waitFor();
    await settled(page);
    await page.getByRole("button", { name: "Your usual numbers" }).click();
    await told.getByText("These are your usual numbers.").waitFor();
  });

  test("what has to be looked at stands right under the head, at the word that causes it, on the picked piece and before the sheets are made", async () => {
    await openApp(page, stage.address, "Pieces");
    const top = page.getByRole("region", { name: "To look at before you cut" });
    expect(await top.innerText()).toContain("Nothing to look at");
    await choose(page, "instep strap", "with");
    await choose(page, "elastic gore", "with");
    expect(await top.innerText()).toMatch(/things to look at before you cut\.[^]*strap and gore lie in each other’?'?s way/);
    // It is the first thing in the column, and leads to the number, where it is told in full.
    const head = (await page.locator("#open-station").boundingBox())!;
    expect((await top.boundingBox())!.y - head.y).toBeLessThan(30);
    await top.getByRole("button").first().click();
    await page.waitForFunction(() => document.activeElement?.getAttribute("data-spot") === "pieces strapBehindThroatMm");
    const by = page.locator(".sentence", { has: page.locator('[data-spot="parts gore"]') });
    expect(await by.locator(".look").first().innerText()).toContain("Move the strap along the topline");
    for (const part of ["instep strap", "elastic gore"]) {
      await row(page, part).click();
      expect(await page.locator(".picked .look").first().innerText()).toContain("Look at this before you cut");
      // A part without a sheet of its own is shown by its place on the upper.
      expect(Number(await page.locator("[data-places]").getAttribute("data-places"))).toBeGreaterThan(0);
    }
    await station(page, "Sheets");
    const before = page.locator(".looks-before");
    expect(await before.innerText()).toMatch(/things to look at before you cut, at Pieces/);
    await before.getByRole("button").click();
    await top.waitFor();
  });

  test("the field under the hand stays where it is when something to look at comes up above it", async () => {
    await openApp(page, stage.address, "Pieces");
    await choose(page, "instep strap", "with");
    const gore = page.getByRole("combobox", { name: "elastic gore", exact: true });
    await page.locator("#open-station").evaluate((e) => e.scrollTo(0, 0));
    await page.setViewportSize({ width: 1280, height: 1500 });
    await gore.focus();
    await page.locator("#open-station").evaluate((e) => e.scrollTo(0, 0));
    const was = (await gore.boundingBox())!.y;
    await choose(page, "elastic gore", "with");
    await page.locator(".looks").waitFor();
    expect(Math.abs((await gore.boundingBox())!.y - was)).toBeLessThan(2);
    await page.setViewportSize({ width: 1280, height: 800 });
  });

  test("a part that is left out is told at the word that asks for it, and nothing is said of outlines", async () => {
    await openApp(page, stage.address, "Lines");
    await setValue(page, "throat depth", "52");
    await station(page, "Pieces");
    await choose(page, "toe cap", "with");
    expect(await row(page, "toe cap").count()).toBe(0);
    const asked = page.locator("div", { has: page.locator('[data-spot="parts toeCap"]') }).last();
    expect(await asked.locator(".look").first().innerText()).toContain("toe cap");
    expect(await page.getByText("No outline changed with it.").count()).toBe(0);
  });

  test("numbers that cannot be used stand in their fields beside one another, over another piece and a reload, until they are corrected", async () => {
    await openApp(page, stage.address, "Pieces");
    await row(page, "shank").click();
    await setValue(page, "width of the shank", "600");
    expect(await page.locator(".picked .why-wrong").innerText()).toMatch(/5 to 30/);
    await setValue(page, "thickness of the shank", "6o");
    const text = (name: string): Promise<string> => field(page, name).inputValue();
    const stands = async (): Promise<void> => {
      expect(await text("width of the shank")).toBe("600");
      expect(await text("thickness of the shank")).toBe("6o");
      expect(await page.locator(".why-wrong").count()).toBe(2);
    };
    await stands();
    await row(page, "outsole").click();
    await setValue(page, "sole edge, heel", "2");
    await row(page, "shank").click();
    await stands();
    await kept(page);
    await page.reload();
    await page.locator(".frame").first().waitFor();
    await settled(page);
    await stands();
    expect(await page.getByRole("region", { name: "To look at before you cut" }).innerText()).toMatch(/Not used: 600\.[^]*Not used: 6o\./);
    await row(page, "shank").click();
    await field(page, "width of the shank").press("Escape");
    expect(await valueOf(page, "width of the shank")).toBe(13);
    await setValue(page, "thickness of the shank", "1,1");
    expect(await page.locator(".why-wrong").count()).toBe(0);
  });

  test("letters, absurd numbers and commas: what cannot be used stays in its field with the reason, the last good pattern stays", async () => {
    await openApp(page, stage.address, "Pieces");
    await row(page, "outsole").click();
    const before = await page.locator(".picked .follows").first().innerText();
    await setValue(page, "sole edge, heel", "wide");
    expect(await page.locator(".why-wrong").innerText()).toContain("not a number");
    await setValue(page, "sole edge, heel", "9999");
    expect(await page.locator(".why-wrong").innerText()).toMatch(/Only 0 to \d+/);
    await setValue(page, "sole edge, heel", "-4");
    expect(await page.locator(".why-wrong").innerText()).toMatch(/Only 0 to \d+/);
    expect(await page.locator(".picked .follows").first().innerText()).toBe(before);
    await field(page, "sole edge, heel").press("Escape");
    expect(await page.locator(".why-wrong").count()).toBe(0);
    await setValue(page, "thickness of the upper", "77");
    expect(await page.locator(".why-wrong").innerText()).toContain("Only 0 to 5");
    expect(await page.locator(".picked .follows").first().innerText()).toBe(before);
    await field(page, "thickness of the upper").press("Escape");
    await setValue(page, "thickness of the upper", "1,3");
    expect(await valueOf(page, "thickness of the upper")).toBe(1.3);
  });
});

inBrowser("the station Sheets", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));
  const at = (): Promise<string> => page.locator(".printed .under [role=status]").innerText();

  test("the pages are looked through as they are printed: by words, by keys, and by the small pages", async () => {
    await openApp(page, stage.address, "Sheets");
    await page.getByRole("button", { name: "pages of the pattern" }).click();
    await page.locator(".page-strip").waitFor();
    const [, pages] = /^Page 1 of (\d+)$/.exec(await at())!;
    expect(await page.locator(".page-strip button").count()).toBe(Number(pages));
    expect(await page.locator(".follows", { hasText: `${pages} pages for` }).count()).toBe(1);
    const sheet = page.locator(".printed .frame .paper-page");
    expect(await sheet.locator("text", { hasText: `Page 1 of ${pages}` }).count()).toBeGreaterThan(0);
    await page.getByRole("button", { name: "Next page" }).click();
    expect(await at()).toBe(`Page 2 of ${pages}`);
    await page.locator(".printed .frame").focus();
    await page.keyboard.press("ArrowRight");
    expect(await at()).toBe(`Page 3 of ${pages}`);
    expect(await sheet.locator("text", { hasText: `Page 3 of ${pages}` }).count()).toBeGreaterThan(0);
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Home");
    expect(await at()).toBe(`Page 1 of ${pages}`);
    await page.locator(".page-strip button").nth(Number(pages) - 1).click();
    expect(await at()).toBe(`Page ${pages} of ${pages}`);
    expect(await page.getByRole("button", { name: "Next page" }).isDisabled()).toBe(true);
    await page.getByRole("button", { name: "nearer", exact: true }).click();
    // At true size: 210 mm of A4 at 96 px to the inch.
    expect((await sheet.boundingBox())!.width).toBeCloseTo((210 / 25.4) * 96, 0);
    await page.getByRole("button", { name: "pages of tape lengths" }).click();
    expect(await at()).toMatch(/^Page 1 of \d+$/);
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
    await page.getByRole("button", { name: "how they are joined" }).click();
    await page.locator('section[aria-label="The pages"]').waitFor();
  });

  test("larger paper, paper from a roll and pieces apart change how many pages there are", async () => {
    await openApp(page, stage.address, "Sheets");
    const pages = async (): Promise<number> => Number(/(\d+) pages? for/.exec(await page.locator(".follows", { hasText: " for " }).first().innerText())![1]);
    const usual = await pages();
    await choose(page, "paper", "A3");
    const larger = await pages();
    expect(larger).toBeLessThan(usual);
    await choose(page, "how the pieces lie", "apart");
    expect(await pages()).toBeGreaterThanOrEqual(larger);
    await choose(page, "what is printed", "net");
    expect(await pages()).toBeLessThan(usual);
    await choose(page, "paper", "roll");
    expect(await valueOf(page, "width of the roll")).toBe(610);
    await setValue(page, "width of the roll", "50");
    expect(await page.locator(".why-wrong").innerText()).toContain("200");
    await setValue(page, "width of the roll", "914,4");
    expect(await valueOf(page, "width of the roll")).toBe(914.4);
  });

  test("what the rule reads on the bars puts the printer right, and a printer too far off is not believed", async () => {
    await openApp(page, stage.address, "Sheets");
    await setValue(page, "bar across", "98,0");
    expect(await page.locator(".follows", { hasText: "larger across" }).innerText()).toContain("2.04\u00a0% larger across and as they are up");
    await setValue(page, "bar up", "90");
    expect(await page.locator(".why-wrong").innerText()).toContain("95");
    await field(page, "bar up").press("Escape");
    await page.getByRole("button", { name: "pages of the pattern" }).click();
    await page.locator(".page-strip").waitFor();
    // The bar across, over the window: 100 mm drawn longer by what the printer lacks.
    const widths = await page.locator(".printed .frame .paper-page .printed-line").evaluateAll((lines) => lines.map((l) => (l as SVGGraphicsElement).getBBox().width));
    expect(widths.some((w) => Math.abs(w - 10_000 / 98) < 0.02)).toBe(true);
    await page.getByRole("button", { name: "Forget the bars" }).click();
    await settled(page);
    expect(await valueOf(page, "bar across")).toBe(100);
    // What was made before the change is not offered any more.
    expect(await page.locator(".files").count()).toBe(0);
    // Wider paper has bars of twice the length, and is read as such.
    await choose(page, "paper", "A3");
    expect(await valueOf(page, "bar up")).toBe(200);
    await setValue(page, "bar up", "199");
    expect(await page.locator(".follows", { hasText: "larger up" }).innerText()).toContain("as they are across and 0.5 % larger up");
  });

  test("the drawings hold what is wanted, and never nothing", async () => {
    await openApp(page, stage.address, "Sheets");
    const word = (name: string): Locator => page.getByRole("button", { name, exact: true });
    for (const name of ["marks", "fold lines", "words"]) {
      await word(name).click();
      await settled(page);
    }
    expect(await word("cutting lines").isDisabled()).toBe(true);
    expect(await word("marks").getAttribute("aria-pressed")).toBe("false");
    await page.getByRole("button", { name: "Make the sheets" }).click();
    const waiting = page.waitForEvent("download");
    await page.locator(".files button", { hasText: "pattern.svg" }).click();
    const svg = (await bytesOf(await waiting)).toString("utf8");
    expect(svg).toContain('id="cut"');
    expect(svg).not.toContain('id="fold"');
  });
});

inBrowser("pieces and sheets on a tablet by night", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  test("what is touched is large enough, and nothing serious stands in anyone's way", async () => {
    await openApp(page, stage.address, "Pieces");
    for (const box of await page.locator(".piece-row").evaluateAll((all) => all.map((e) => e.getBoundingClientRect().height))) expect(box).toBeGreaterThanOrEqual(44);
    await page.locator("g.piece").nth(1).click();
    await page.locator("[data-runs]").waitFor({ state: "attached" });
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
    await station(page, "Sheets");
    await page.getByRole("button", { name: "pages of the pattern" }).click();
    await page.locator(".page-strip").waitFor();
    for (const box of await page.locator(".page-strip button").evaluateAll((all) => all.map((e) => e.getBoundingClientRect()))) {
      expect(box.width).toBeGreaterThanOrEqual(44);
      expect(box.height).toBeGreaterThanOrEqual(44);
    }
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
  });
}, tablet, { colorScheme: "dark", hasTouch: true });
