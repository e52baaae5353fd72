// How the page looks and is reached: on both sizes of screen, in both themes, by the keyboard.
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { missing } from "./around.ts";
import { desk, faultsOf, inAnyonesWay, openApp, Stage, standsStill, station, tablet } from "./browser.ts";

describe.skipIf(missing !== undefined)("at the desk and on the tablet, by day and by night", () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await Stage.open();
  });
  afterAll(() => stage?.close());

  const sights = [
    { name: "desk", size: desk, colorScheme: "light" as const },
    { name: "tablet", size: tablet, colorScheme: "dark" as const },
  ];
  test.each(sights)("$name: nothing is cut off, all stations are in sight, and nothing serious stands in anyone's way", async ({ name, size, colorScheme }) => {
    const context = await stage.newContext(size, { colorScheme, hasTouch: name === "tablet" });
    const page = await context.newPage();
    const faults = faultsOf(page);
    await openApp(page, stage.address);
    for (const s of ["Last", "Lines", "Shell", "Leather", "Lasting", "Pieces", "Making", "Sheets"]) {
      await station(page, s);
      await standsStill(page, "#open-station");
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(wide, `${s} is wider than the screen`).toBeLessThanOrEqual(0);
      for (const button of await page.locator(".station button").all()) {
        const box = (await button.boundingBox())!;
        expect(box.y >= 0 && box.y + box.height <= size.height + 1, `a station is out of sight at ${s}`).toBe(true);
        expect(box.height, `a station is too small to touch at ${s}`).toBeGreaterThanOrEqual(name === "tablet" ? 44 : 24);
      }
      const serious = await inAnyonesWay(page, "serious");
      expect(serious, `at ${s}`).toEqual([]);
    }
    expect(faults).toEqual([]);
    await context.close();
  });

  test("the whole page is reached by the keyboard, and what has the focus shows it", async () => {
    const context = await stage.newContext();
    const page = await context.newPage();
    await openApp(page, stage.address);
    const reached = new Set<string>();
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate(() => {
        const e = document.activeElement as HTMLElement | SVGElement | null;
        if (!e || e === document.body) return undefined;
        const ring = e.matches(":focus-visible");
        return { name: e.getAttribute("aria-label") ?? e.textContent?.slice(0, 40) ?? "", ring };
      });
      if (!at) continue;
      expect(at.ring, at.name).toBe(true);
      reached.add(at.name);
    }
    for (const wanted of ["throat depth, millimetres", "why: back height", "throat, on the last", "lowest place, outer side, on the card", "outer side", "the card"]) expect([...reached]).toContain(wanted);
    await context.close();
  });
});
