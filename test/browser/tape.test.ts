// The two ways in without a scanner: a taped pattern from photographs, and measures with a drawing; kept, saved and opened again.
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { readJobFile } from "#job/job-file.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { bothHalves, bottomDrawn, withoutCard } from "../support/tape-photos.ts";
import { demoTape } from "../support/demo-tape.ts";
import { edgeLength } from "#pieces/net-upper.ts";
import { silhouettes } from "../support/silhouettes.ts";
import { bytesOf, field, inAnyonesWay, openApp, setValue, settled, type Stage, station, tablet, valueOf } from "./browser.ts";
import { inBrowser } from "./in-browser.ts";

/** Photographs are looked at for many seconds on a busy machine. */
const patience = { timeout: 240_000 };
const jpegOrPng = (name: string, bytes: Uint8Array) => ({ name, mimeType: "image/png", buffer: Buffer.from(bytes) });

let halves: Uint8Array | undefined;
const tape = (): Uint8Array => (halves ??= bothHalves());

async function openTape(page: Page): Promise<void> {
  await page.getByLabel("pictures to open").setInputFiles(jpegOrPng("my tape.png", tape()));
  await becomesTape(page);
}

/** The photographs have become the work, and the picture shows them. */
async function becomesTape(page: Page): Promise<void> {
  await page.locator(".station-state", { hasText: "from a taped pattern" }).waitFor(patience);
  await page.locator(".busy[data-busy=\"false\"][data-draft=\"false\"]").waitFor({ state: "attached", ...patience });
  await page.locator(".photo-frame").waitFor(patience);
}

const figure = async (page: Page, row: string, column: 0 | 1): Promise<number> => Number(await page.locator("#open-station tr", { has: page.getByRole("rowheader", { name: row, exact: true }) }).locator("td").nth(column).innerText());

async function ringOf(page: Page, mark: string): Promise<{ readonly x: number; readonly y: number }> {
  const box = (await page.locator(`[data-mark="${mark}"] .ring`).boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

inBrowser("a taped pattern", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  test("becomes pieces; its marks are dragged, stepped and found again; it is kept, saved and opened elsewhere", { timeout: 900_000 }, async () => {
    await openApp(page, stage.address, "Last");
    await openTape(page);
    expect(await page.locator(".half-name").allTextContents()).toEqual(expect.arrayContaining(["inner half", "outer half"]));
    // The tape that lay on the table is the example's own upper: its topline is known.
    const truth = edgeLength(demoTape().net.topline);
    expect(Math.abs((await figure(page, "topline", 0)) + (await figure(page, "topline", 1)) - truth)).toBeLessThan(0.6 + 0.001 * truth);

    // A mark slides along the edge of the tape with the finger, its length at the finger; the drag is one step back.
    const whole = await figure(page, "topline", 0);
    const from = await ringOf(page, "throatMedial");
    const back = await ringOf(page, "backMedial");
    const [dx, dy] = [back.x - from.x, back.y - from.y].map((v) => (v / Math.hypot(back.x - from.x, back.y - from.y)) * 12);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (let i = 1; i <= 4; i++) await page.mouse.move(from.x + (dx! * i) / 4, from.y + (dy! * i) / 4);
    expect(await page.locator(".over-photo .tape text").first().textContent()).toMatch(/throat, [\d.]+\smm behind the toe/);
    await page.mouse.up();
    await settled(page);
    expect(await figure(page, "topline", 0)).toBeLessThan(whole - 1);
    await page.getByRole("button", { name: "Take back: moving the throat, inner half" }).click();
    await settled(page);
    expect(await figure(page, "topline", 0)).toBe(whole);

    // From the column to the handle, by keys along the edge, and back to where it was found.
    await page.getByRole("button", { name: "the marks" }).click();
    await page.getByRole("button", { name: "go to joint, inner half in the picture" }).click();
    await page.locator('[data-mark="jointMedial"]:focus').waitFor();
    const joint = await figure(page, "toe to joint along that edge", 0);
    for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowLeft");
    await settled(page);
    // Half a millimetre each.
    expect(Math.abs(Math.abs((await figure(page, "toe to joint along that edge", 0)) - joint) - 2)).toBeLessThan(0.11);
    expect(await page.locator(".grip.said").count()).toBe(1);
    await page.getByRole("button", { name: "joint, inner half as found again" }).click();
    await settled(page);
    expect(await figure(page, "toe to joint along that edge", 0)).toBe(joint);

    // What her rule reads on the bar sets every length.
    const topline = await figure(page, "topline", 0);
    await field(page, "bar on the card").fill("201");
    await field(page, "bar on the card").press("Enter");
    await page.waitForFunction((before) => Number([...document.querySelectorAll("#open-station tr")].find((r) => r.querySelector("th")?.textContent === "topline")?.querySelector("td")?.textContent) !== before, topline, patience);
    expect(Math.abs((await figure(page, "topline", 0)) / topline - 1.005)).toBeLessThan(0.0005);

    // The other stations stay readable, and the pieces are there.
    await station(page, "Lines");
    expect(await page.locator("#open-station").innerText()).toContain("no last here");
    await station(page, "Shell");
    expect(await page.locator("#open-station").innerText()).toContain("can only be worked out against the last");
    expect(await page.locator(".view.taped").count()).toBe(1);
    await station(page, "Pieces");
    const pieces = await page.locator(".piece .name").allTextContents();
    expect(pieces).toEqual(expect.arrayContaining(["upper, net", "upper", "lining"]));
    // No bottom was traced, so nothing that lies under the foot is cut.
    for (const name of ["insole", "outsole", "sock"]) expect(pieces).not.toContain(name);
    expect(await page.locator("#open-station").innerText()).toContain("cut as it was taped");
    // What making them takes is told as of any pair; of a bottom that is not cut nothing is bought.
    await station(page, "Making");
    expect(await page.locator(".shopping").innerText()).toContain("Upper leather");
    expect(await page.locator(".shopping").innerText()).not.toContain("Sole leather");
    await station(page, "Sheets");
    await page.getByRole("button", { name: "Make the sheets" }).click();
    await page.locator(".files").waitFor(patience);

    // A reload loses nothing; the file holds the photograph.
    await page.getByText("Saved in this browser").waitFor(patience);
    await page.reload();
    await page.locator(".station-state", { hasText: "from a taped pattern" }).waitFor(patience);
    await station(page, "Last");
    await becomesTape(page);
    expect(await valueOf(page, "bar on the card")).toBe(201);
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save to a file" }).click();
    const bytes = await bytesOf(await saved);
    const elsewhere = await stage.newContext(tablet, { colorScheme: "dark", hasTouch: true });
    const other = await elsewhere.newPage();
    await openApp(other, stage.address, "Last");
    await other.getByLabel("file to open").setInputFiles({ name: "pair.lastwise", mimeType: "application/zip", buffer: bytes });
    await becomesTape(other);
    await station(other, "Last");
    expect(await valueOf(other, "bar on the card")).toBe(201);

    // On the tablet: nothing wider than the screen, marks large enough for a finger, nothing serious in anyone's way.
    expect(await other.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    const touch = (await other.locator('[data-mark="toeMedial"] .touch').boundingBox())!;
    expect(Math.min(touch.width, touch.height)).toBeGreaterThanOrEqual(44);
    const before = (await ringOf(other, "toeLateral")).x - (await ringOf(other, "seatLateral")).x;
    await other.getByRole("button", { name: "nearer" }).tap();
    expect(Math.abs((await ringOf(other, "toeLateral")).x - (await ringOf(other, "seatLateral")).x)).toBeGreaterThan(1.3 * Math.abs(before));
    expect(await inAnyonesWay(other, "serious")).toEqual([]);
    await elsewhere.close();
  });

  test("photographs that make no pattern wait with the reason, and what was there before stays", { timeout: 900_000 }, async () => {
    await openApp(page, stage.address, "Last");
    await page.getByLabel("pictures to open").setInputFiles([jpegOrPng("holiday.png", withoutCard())]);
    await page.getByText("make no pattern yet").waitFor(patience);
    expect(await page.locator("#open-station [role=alert]").first().innerText()).toMatch(/card was not found/);
    expect(await page.locator(".station-state").first().innerText()).toContain("from measures");

    // They are kept as they wait, and taken back and done again like any other step.
    await page.getByText("Saved in this browser").waitFor(patience);
    await page.reload();
    await page.getByText("make no pattern yet").waitFor(patience);
    await page.locator("#open-station [role=alert]", { hasText: "card was not found" }).waitFor(patience);
    await page.getByRole("button", { name: "Take back: opening holiday.png" }).click();
    await page.getByText("make no pattern yet").waitFor({ state: "detached", ...patience });
    await page.getByRole("button", { name: "Do again: opening holiday.png" }).click();
    await page.locator("#open-station [role=alert]", { hasText: "card was not found" }).waitFor(patience);
    await page.getByRole("button", { name: "Let them go" }).click();
    await page.getByRole("button", { name: "Take back: letting the photographs go" }).click();
    await page.locator("#open-station [role=alert]", { hasText: "card was not found" }).waitFor(patience);

    await page.getByLabel("photographs to add").setInputFiles(jpegOrPng("my tape.png", tape()));
    // The one without the card still stands in the way.
    await page.getByRole("button", { name: "take out holiday.png" }).waitFor(patience);
    await settled(page);
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
    await page.getByRole("button", { name: "take out holiday.png" }).click();
    await becomesTape(page);
    // One step back they wait as they last did.
    await page.keyboard.press("Control+z");
    await page.locator(".station-state", { hasText: "from measures" }).waitFor(patience);
    await page.getByRole("button", { name: "take out holiday.png" }).waitFor(patience);
    await settled(page);
  });

  test("the card is drawn when it is asked for", async () => {
    await openApp(page, stage.address, "Last");
    await page.getByRole("button", { name: "show me" }).click();
    const given = page.waitForEvent("download");
    await page.getByRole("button", { name: "the card to print, on A4" }).click();
    const card = await given;
    expect(card.suggestedFilename()).toBe("card A4.pdf");
    expect((await bytesOf(card)).subarray(0, 5).toString("latin1")).toBe("%PDF-");
  });
});

inBrowser("a last from measures", (fresh) => {
  let stage: Stage;
  let page: Page;
  fresh((here) => ({ stage, page } = here));

  test("numbers that cannot belong to one last are told at their field and mended there", async () => {
    await openApp(page, stage.address, "Last");
    // A joint girth below twice the ball width, 76.5 mm: no tape can lie so.
    await field(page, "joint girth").fill("150");
    await field(page, "joint girth").press("Enter");
    const complaint = page.locator(".sentence", { has: field(page, "joint girth") }).getByRole("alert");
    await complaint.waitFor();
    expect(await complaint.innerText()).toMatch(/joint girth \(150\.0 mm\).*ball width \(76\.5 mm\)/);
    await setValue(page, "joint girth", "222");
    expect(await complaint.count()).toBe(0);
    expect(await page.locator(".station-state").first().innerText()).toContain("from measures");
    // One that only hardly belongs is a note under its own sentence.
    await setValue(page, "seat width", "60");
    const note = page.locator(".sentence", { has: page.getByLabel("how: length and widths") }).locator(".findings li").first();
    await note.waitFor();
    expect(await note.innerText()).toContain("seat width (60.0 mm)");
  });

  /** Another last, as it may be read off one: EU 40 and a little wide, invented. Each number beside the example's others fits or not; the whole does. */
  const another = [
    ["stick length", 267], ["ball width", 80.5], ["seat width", 54], ["joint girth", 233], ["waist girth", 226], ["instep girth", 243], ["heel girth", 355], ["heel height", 14], ["toe spring", 10],
  ] as const;

  test.each([["the order of the page", [...another]], ["reverse order", [...another].reverse()]])("a whole set for another last typed in %s ends with all its numbers, also over a reload", { timeout: 600_000 }, async (_, set) => {
    await openApp(page, stage.address, "Last");
    let waited = 0;
    for (const [i, [name, mm]] of set.entries()) {
      await setValue(page, name, String(mm));
      for (const [typed, value] of set.slice(0, i + 1)) expect(await valueOf(page, typed), typed).toBe(value);
      const line = page.locator(".trouble .unused");
      waited += await line.count();
      if (i !== 6) continue;
      const before = await line.allInnerTexts();
      await page.getByText("Saved in this browser").waitFor();
      await page.reload();
      await page.locator(".frame").first().waitFor();
      await settled(page);
      expect(await line.allInnerTexts()).toEqual(before);
    }
    expect(waited).toBeGreaterThan(0);
    expect(await page.locator(".trouble .unused").count()).toBe(0);
    expect(await page.locator(".number.wrong").count()).toBe(0);
    for (const [name, mm] of set) expect(await field(page, name).getAttribute("aria-valuenow"), name).toBe(String(mm));
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save to a file" }).click();
    const { job } = readJobFile("saved.lastwise", await bytesOf(await saved));
    expect(job.last).toMatchObject({ measures: { stickLengthMm: 267, ballWidthMm: 80.5, seatWidthMm: 54, jointGirthMm: 233, waistGirthMm: 226, instepGirthMm: 243, heelGirthMm: 355, heelHeightMm: 14, toeSpringMm: 10 } });
  });

  test("a whole set typed faster than it is worked out ends with all its numbers", { timeout: 600_000 }, async () => {
    await openApp(page, stage.address, "Last");
    for (const [name, mm] of another) {
      await field(page, name).fill(String(mm));
      await field(page, name).press("Enter");
    }
    await settled(page);
    expect(await page.locator(".trouble .unused").count()).toBe(0);
    for (const [name, mm] of another) expect(await field(page, name).getAttribute("aria-valuenow"), name).toBe(String(mm));
  });

  test("a set that makes no last says which number and why, at every station that numbers are not used, and each is taken back", async () => {
    await openApp(page, stage.address, "Last");
    await setValue(page, "heel girth", "400");
    await setValue(page, "toe spring", "9");
    expect(await field(page, "heel girth").inputValue()).toBe("400");
    expect(await field(page, "heel girth").getAttribute("aria-valuenow")).toBe("338");
    expect(await page.locator(".why-wrong").first().innerText()).toMatch(/heel girth asked for \(400\.0 mm\) contradicts the instep girth.*would fit.*tried again/);
    for (const name of ["Pieces", "Sheets"]) {
      await station(page, name);
      expect(await page.locator(".trouble .unused").innerText()).toMatch(/numbers? at the station Last (is|are) not used yet: heel girth/);
    }
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
    await station(page, "Last");
    for (const _ of [1, 2]) {
      await page.keyboard.press("Escape");
      await page.getByRole("button", { name: /^Take back: / }).click();
    }
    await settled(page);
    expect([await valueOf(page, "heel girth"), await valueOf(page, "toe spring")]).toEqual([338, 9.5]);
    expect(await page.locator(".trouble .unused").count()).toBe(0);
    await page.getByRole("button", { name: /^Do again: the heel girth/ }).click();
    expect(await field(page, "heel girth").inputValue()).toBe("400");
    await page.getByRole("button", { name: "Let it go" }).click();
    expect(await valueOf(page, "heel girth")).toBe(338);
    await settled(page);
  });

  test("the size alone is enough, and every measure opens to how it is taken", async () => {
    await openApp(page, stage.address, "Last");
    await page.getByLabel("EU size").selectOption("36");
    await page.getByRole("button", { name: "take them all" }).click();
    await settled(page);
    // Paris points, ISO/TS 19407; joint girth 5 (size + fitting), handbook of the trade.
    expect(await valueOf(page, "stick length")).toBe(240);
    expect(await valueOf(page, "joint girth")).toBe(210);
    for (const name of ["length and widths", "girths", "heel and toe"]) {
      await page.getByRole("button", { name: `how: ${name}` }).click();
      const said = await page.locator(".sentence", { has: page.getByLabel(`how: ${name}`) }).locator(".reason").innerText();
      expect(said).toMatch(/By hand:/);
      expect(said).toMatch(/Usual on women’s flat lasts: \d+ to \d+ mm/);
    }
    await setValue(page, "instep girth", "226");
    await page.getByRole("button", { name: /take 220\smm for the instep girth/ }).click();
    await settled(page);
    expect(await valueOf(page, "instep girth")).toBe(220);
    expect(await inAnyonesWay(page, "serious")).toEqual([]);
  });

  test("a drawing of the bottom shapes it, is seen as it was traced, and is taken out again", { timeout: 600_000 }, async () => {
    await openApp(page, stage.address, "Last");
    const drawing = silhouettes(lastFromMeasures(demoMeasurements, "demo", unwatched).mesh).bottom;
    await page.getByLabel("photograph of the drawing round the bottom").setInputFiles(jpegOrPng("round the bottom.png", bottomDrawn(drawing)));
    await page.getByText("round the bottom.png").waitFor(patience);
    await settled(page);
    expect(await page.locator("#open-station .sentence").first().innerText()).toContain("and drawings");
    await page.getByRole("button", { name: "the drawing", exact: true }).click();
    await page.locator(".photo-frame .traced.edge").waitFor(patience);
    await page.getByRole("button", { name: "take out the drawing round the bottom" }).click();
    await settled(page);
    expect(await page.getByText("round the bottom.png").count()).toBe(0);
  });
});
