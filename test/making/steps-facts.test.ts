// What the trade says of order, times, hands-on hours, tolerances and cautions; the source stands beside each check.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { needsOf } from "#making/needs/needs.ts";
import type { Phase, Step, Wait } from "#making/steps/step.ts";
import { stepsOf } from "#making/steps/steps.ts";
import { calendarOf } from "#making/calendar/calendar-of.ts";
import { threadFor } from "#making/thread/thread.ts";
import { holds } from "../support/calendar-holds.ts";
import { makingInput } from "../support/making-pairs.ts";
import { planned, plannedNames, planOf, textOf } from "../support/plans.ts";

const hour = 60, day = 24 * hour;
const inPlan = (id: string, name: Parameters<typeof planned>[0] = "usual"): number => planned(name).steps.findIndex((step) => step.id === id);
const waitOf = (id: string, name: Parameters<typeof planned>[0] = "usual"): Wait => planned(name).step(id).wait!;

/** First coats, coats that stick, and the steps that stick. */
const primed = ["prime-boards", "open-margins", "fit-fillers", "prime-soles", "prime-heels"], coated = ["coat-boards", "coat-margins", "coat-fillers", "coat-soles", "coat-heels"], stuck = ["glue-boards", "press-margins", "fill-bottoms", "lay-soles", "build-heels"];

const waterBased = planOf({ ...planned("usual").input, said: { cement: "water-based" } });

describe("times of cement", () => {
  test.each(primed)("%s: a thin first coat as a primer, 10 minutes (a note on adhesives for leather); 30 minutes a coat (an overview of gluing from the repair trade)", (id) => {
    const { leastMin, wellMin, mostMin } = waitOf(id);
    expect(leastMin).toBe(10);
    expect(wellMin).toBeGreaterThanOrEqual(leastMin);
    expect(wellMin).toBeLessThanOrEqual(45);
    // A first coat that is dry stays a primer; a margin without its nails creeps back (common practice, no source).
    if (id === "open-margins") expect(mostMin).toBeLessThanOrEqual(2 * hour);
    else expect(mostMin).toBeUndefined();
  });

  test.each(coated)("%s: 10 to 15 minutes to flash off, open for more than 20 after that (trade guides on contact adhesives)", (id) => {
    const { leastMin, wellMin, mostMin } = waitOf(id);
    expect(leastMin).toBe(10);
    expect(wellMin).toBeGreaterThanOrEqual(10);
    expect(wellMin).toBeLessThanOrEqual(15);
    expect(mostMin).toBe(10 + 20);
  });

  test.each(stuck)("%s: green strength in 30 to 40 minutes, at least 45 before sanding, better overnight (notes of a class on bonding)", (id) => {
    const { leastMin, wellMin } = waitOf(id);
    expect(leastMin).toBeGreaterThanOrEqual(45);
    expect(wellMin).toBeGreaterThanOrEqual(leastMin);
    expect(wellMin).toBeLessThanOrEqual(day);
  });

  test("what is filed or sanded hard has waited overnight: sole and heel (the same notes)", () => {
    for (const id of ["lay-soles", "build-heels"]) expect(waitOf(id).wellMin).toBeGreaterThanOrEqual(12 * hour);
  });

  test("full strength in 24 to 48 hours, before the first wearing (the same notes)", () => {
    expect(waitOf("box-shoes")).toMatchObject({ leastMin: day, wellMin: 2 * day });
    expect(planned("usual").steps.at(-1)!.id).toBe("box-shoes");
  });

  test("leather and board take two coats each (an overview of gluing from the repair trade), one after the other", () => {
    for (const name of plannedNames) {
      primed.forEach((id, i) => {
        expect(planned(name).step(coated[i]!).after, id).toContain(id);
        expect(planned(name).step(stuck[i]!).after, id).toContain(coated[i]);
      });
      const { bonds } = needsOf(planned(name).input, threadFor(planned(name).input.stitching));
      for (const bond of bonds.filter(({ name: bonded, glue }) => glue === "contact cement" && /margin|outsole|second board|lift|top piece/u.test(bonded))) expect(bond.coats, bond.name).toEqual([2, 2]);
    }
  });

  test("the label of the product comes first, wherever a glue dries", () => {
    for (const name of plannedNames) for (const { id, wait } of planned(name).steps) if (wait && /cement|coat|latex/u.test(wait.what)) expect(wait.source, id).toMatch(/the label of your \w+ comes first/u);
  });

  test("a coat that sticks is followed at once by what it sticks, and by nothing else", () => {
    for (const name of plannedNames) for (const step of planned(name).steps.filter(({ wait }) => wait?.mostMin !== undefined)) {
      const next = planned(name).steps.filter(({ after }) => after.includes(step.id));
      expect(next.map(({ after }) => after), step.id).toEqual([[step.id]]);
    }
  });

  test("every wait is in order and says where it comes from", () => {
    for (const name of plannedNames) for (const { id, wait } of planned(name).steps) {
      if (!wait) continue;
      expect(wait.leastMin, id).toBeGreaterThanOrEqual(0);
      // Where nothing has to be waited for, something presses.
      if (wait.leastMin === 0) expect(wait.mostMin, id).toBeDefined();
      expect(wait.wellMin, id).toBeGreaterThanOrEqual(wait.leastMin);
      if (wait.mostMin !== undefined) expect(wait.mostMin, id).toBeGreaterThan(wait.wellMin);
      expect(wait.source, id).toMatch(/guide|note|round of work|common practice, no source/u);
    }
  });
});

describe("the guide's table of times", () => {
  const rows = readFileSync("docs/guide/the-steps.md", "utf8").split("\n").filter((line) => line.startsWith("|")).map((line) => line.split("|").slice(1, -1).map((cell) => cell.trim()));
  const minutesIn = (cell: string): number | undefined => {
    if (cell === "overnight") return 12 * hour;
    const [, number, unit] = /^(½|\d+) (min|h|days?)\b/u.exec(cell) ?? [];
    return number && unit ? (number === "½" ? 0.5 : Number(number)) * (unit === "min" ? 1 : unit === "h" ? hour : day) : undefined;
  };

  test.each([
    ["first coat of cement", primed.filter((id) => id !== "open-margins"), "usual"], ["first coat on an opened margin", ["open-margins"], "usual"], ["second coat", coated, "usual"], ["a bond, before", ["glue-boards", "press-margins", "fill-bottoms"], "usual"],
    ["glue between upper and lining", ["set-stiffeners"], "usual"], ["each step from the drafts", ["draft-uppers", "check-drafts", "set-puffs"], "usual"], ["soles and heels", ["lay-soles", "build-heels"], "usual"],
    ["insoles on the last", ["block-boards"], "usual"], ["a leather stiffener", ["wet-stiffeners"], "added"], ["the lasted shoe", ["last-toes"], "usual"], ["before the first wearing", ["box-shoes"], "usual"],
  ] as const)("%s: is what the steps wait", (what, ids, name) => {
    const [, least, well, most] = rows.find(([first]) => first?.startsWith(what))!;
    for (const id of ids) {
      const { leastMin, wellMin, mostMin } = waitOf(id, name);
      expect([minutesIn(least!), minutesIn(well!), minutesIn(most!)], id).toEqual([leastMin, wellMin, mostMin]);
    }
  });

  test.each([
    ["water-based: first coat", primed.filter((id) => id !== "open-margins")], ["water-based: first coat on an opened margin", ["open-margins"]], ["water-based: second coat", coated],
    ["water-based: boards, margins and fillers", ["glue-boards", "press-margins", "fill-bottoms"]], ["water-based: soles and heels", ["lay-soles", "build-heels"]],
  ] as const)("%s: is what the steps wait", (what, ids) => {
    const [, least, well, most] = rows.find(([first]) => first?.startsWith(what))!;
    for (const id of ids) {
      const { leastMin, wellMin, mostMin } = waterBased.step(id).wait!;
      expect([minutesIn(least!), minutesIn(well!), minutesIn(most!)], id).toEqual([leastMin, wellMin, mostMin]);
    }
  });
});

describe("what goes in one go", () => {
  /** From the begin of the first to the end of the last step, each rest as long as it is planned, minutes. */
  const goOf = (steps: readonly Step[], ids: readonly string[]): number =>
    ids.reduce((sum, id, k) => {
      const { minutes, wait } = steps.find((step) => step.id === id)!;
      return sum + minutes + (k < ids.length - 1 ? wait!.wellMin : 0);
    }, 0);
  const chained = (steps: readonly Step[], ids: readonly string[]): void => {
    ids.slice(1).forEach((id, k) => {
      expect(steps.find((step) => step.id === id)!.after, id).toEqual([ids[k]]);
      expect(steps.find((step) => step.id === ids[k])!.wait!.mostMin, ids[k]).toBeDefined();
    });
    expect(steps.find(({ id }) => id === ids.at(-1))!.wait?.mostMin).toBeUndefined();
  };
  const heels = ["set-stiffeners", "draft-uppers", "check-drafts", "last-sides"], toes = ["set-puffs", "last-toes"], margins = ["open-margins", "coat-margins", "press-margins"];

  test("stiffeners set to heels closed, puff set to toe lasted, margin opened to margin pressed; glue that can be moved, an upper that creeps back (common practice, no source)", () => {
    for (const name of plannedNames) {
      const { steps, has } = planned(name);
      chained(steps, has("wet-stiffeners") ? ["wet-stiffeners", ...heels] : heels);
      if (has("set-puffs")) chained(steps, toes);
      chained(steps, margins);
    }
    chained(waterBased.steps, margins);
  });

  test("an evening of two hours and a half holds each of them, one of two hours the usual ones", () => {
    for (const name of plannedNames) {
      const { steps, has } = planned(name);
      const go = [goOf(steps, has("wet-stiffeners") ? ["wet-stiffeners", ...heels] : heels), has("set-puffs") ? goOf(steps, toes) : 0, goOf(steps, margins)];
      expect(Math.max(...go), name).toBeLessThanOrEqual(2.5 * hour);
      if (!has("wet-stiffeners")) expect(Math.max(...go), name).toBeLessThanOrEqual(1.5 * hour);
    }
    expect(goOf(waterBased.steps, margins)).toBeLessThanOrEqual(2.5 * hour);
  });
});

describe("times of drying", () => {
  test("on the last at least 24 hours (a maker's round of work); 48 hours cemented, 3 to 7 days with an unheated leather stiffener (common practice, no source)", () => {
    expect(waitOf("last-toes")).toMatchObject({ leastMin: day, wellMin: 2 * day });
    const leather = waitOf("last-toes", "added");
    expect(leather.leastMin).toBe(day);
    expect(leather.wellMin).toBeGreaterThanOrEqual(3 * day);
    expect(leather.wellMin).toBeLessThanOrEqual(7 * day);
  });

  test("the shank board is soaked an hour or more, strapped to the last and dried (a maker's notes); the insole with it, overnight (common practice, no source)", () => {
    expect(planned("usual").step("block-boards").todo.join(" ")).toMatch(/fibre board and need no soaking: damp.*Bind/u);
    expect(planned("usual").steps.some(({ id }) => id === "soak-insoles")).toBe(false);
    const leather = stepsOf(makingInput({ pieces: { firstBoardMm: 2.5 } }));
    const soaked = leather.find(({ id }) => id === "soak-insoles")!;
    expect(soaked.wait!.leastMin).toBeGreaterThanOrEqual(hour);
    expect(readFileSync("docs/guide/the-steps.md", "utf8")).toContain(`| leather insoles in water | 1 h | 1 h | ${soaked.wait!.mostMin! / hour} h |`);
    expect(leather.find(({ id }) => id === "block-boards")!.after).toContain("soak-insoles");
    expect(leather.find(({ id }) => id === "block-boards")!.todo.join(" ")).not.toMatch(/fibre/u);
    // The calendar waits for the water, and an evening holds it.
    const { calendar } = calendarOf({ steps: leather, pairs: 1, said: { sessions: "Tue 19:00-21:30, Thu 19:00-21:30", start: "2026-12-01" } });
    holds(leather, 1, calendar!);
    expect(waitOf("block-boards").leastMin).toBeGreaterThanOrEqual(8 * hour);
  });

  test("a leather stiffener is soaked and used when about four fifths dry (makers' notes)", () => {
    expect(textOf(planned("added").step("wet-stiffeners"))).toMatch(/four fifths/u);
    expect(planned("added").step("set-stiffeners").after).toEqual(["wet-stiffeners"]);
  });
});

describe("order of the trade", () => {
  /** Of the textbook's eight pulls; that the last two are the joints, and the waists after them, is common practice, no source. */
  const textbook = ["toe centre", "toe corners", "back", "seat sides", "joints"];

  test("drafts: toe, its corners, back, seat sides, joints (a shoemaking textbook); then the waists, the heel from back to front, the toe last (notes from a lasting)", () => {
    const told = planned("usual").step("draft-uppers").todo;
    textbook.forEach((name, i) => expect(told[i]).toContain(`, ${name}`));
    const numbers = told.slice(0, textbook.length).flatMap((text) => [...text.slice(0, text.indexOf(", ")).matchAll(/\d+/gu)].map(([digits]) => Number(digits)));
    expect(numbers).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(planned("usual").step("last-sides").todo[0]).toMatch(/^Waists, drafts 9 and 10/u);
    expect(inPlan("last-sides")).toBeLessThan(inPlan("last-toes"));
    expect(planned("usual").step("last-sides").todo.join(" ")).toMatch(/from the back to the front/u);
  });

  test("lining at the toe first, then the puff, then the upper (makers' notes)", () => {
    const { todo, after } = planned("usual").step("set-puffs");
    expect(after).toEqual(["last-sides"]);
    expect(todo[0]).toMatch(/lining over the toe/u);
    expect(planned("usual").step("last-toes").after).toEqual(["set-puffs"]);
  });

  test("a thin horseshoe first to level the seat, then lifts one by one, then the top piece (shoemaking courses)", () => {
    const text = planned("usual").step("build-heels").todo.join(" ");
    expect(text.indexOf("Split lift first")).toBeLessThan(text.indexOf("lift 1"));
    expect(text.indexOf("lift 1")).toBeLessThan(text.indexOf("Top piece last"));
    expect(inPlan("prime-heels")).toBeLessThan(inPlan("build-heels"));
  });

  test("the shank is bent before it is fitted (a maker's notes); the lining is trimmed after it is stitched (notes on the trim allowance)", () => {
    expect(inPlan("prime-boards")).toBeLessThan(inPlan("glue-boards"));
    expect(planned("usual").step("trim-lining").after).toEqual(["stitch-topline"]);
  });

  test("edges are thinned before they are folded, seams taped before the topline, tacks counted out before the sole (common practice, no source)", () => {
    for (const [first, then] of [["skive-upper", "fold-topline"], ["tape-seams", "tape-topline"], ["tape-topline", "fold-topline"], ["check-drafts", "open-margins"], ["press-margins", "lay-soles"], ["slip-lasts", "lay-socks"]] as const) expect(inPlan(first)).toBeLessThan(inPlan(then));
    for (const id of ["tack-insoles", "last-sides", "open-margins", "press-margins"]) expect(planned("usual").step(id).todo.join(" "), id).toMatch(/count|come out again|As many must lie there/iu);
  });

  test("what makes a pair is done on both shoes in turns, with the same numbers", () => {
    // Draft by draft, mark by mark and layer by layer the hands go from shoe to shoe.
    expect(planned("usual").step("draft-uppers").todo.join(" ")).toContain("After each draft on the right shoe do the same one on the left");
    expect(planned("usual").step("build-heels").todo.join(" ")).toContain("The same layer on the other shoe before you go on");
    for (const id of ["draft-uppers", "check-drafts", "build-heels"]) expect(planned("usual").step(id).shoes, id).toBe("together");
    for (const id of ["mark-lasts", "last-sides", "last-toes", "press-margins", "lay-soles"]) expect(planned("usual").step(id).shoes, id).toBe("one after the other");
    for (const id of coated) expect(planned("usual").step(id).shoes, id).toBe("together");
  });
});

describe("hours", () => {
  const minutesOf = (steps: readonly Step[], ...of: readonly Phase[]): number => steps.reduce((sum, { phase, minutes }) => sum + (of.includes(phase) ? minutes : 0), 0);

  test("a plain pair takes 10 to 12 hours after practice (common practice, no source; a first kit about 12: a maker's blog)", () => {
    for (const name of ["usual", "inner", "tail", "wrapped", "taped"] as const) {
      const minutes = planned(name).steps.reduce((sum, step) => sum + step.minutes, 0);
      expect(minutes, name).toBeGreaterThanOrEqual(10 * hour);
      expect(minutes, name).toBeLessThanOrEqual(12 * hour);
    }
  });

  test("pattern ½, clicking 1, closing 2 to 3, lasting 2, bottoming 3 to 4, finish 1 hour (common practice, no source)", () => {
    const { steps } = planned("usual");
    expect(minutesOf(steps, "pattern")).toBe(30);
    expect(Math.abs(minutesOf(steps, "cutting") - 60)).toBeLessThanOrEqual(5);
    expect(minutesOf(steps, "closing")).toBeGreaterThanOrEqual(2 * hour);
    expect(minutesOf(steps, "closing")).toBeLessThanOrEqual(3 * hour);
    expect(Math.abs(minutesOf(steps, "lasting") - 2 * hour)).toBeLessThanOrEqual(5);
    expect(minutesOf(steps, "bottom parts", "bottoming", "heel")).toBeGreaterThanOrEqual(3 * hour);
    expect(minutesOf(steps, "bottom parts", "bottoming", "heel")).toBeLessThanOrEqual(4 * hour);
    expect(Math.abs(minutesOf(steps, "finishing") - 60)).toBeLessThanOrEqual(5);
  });

  test("what is added takes longer, and the plan stays one that can be read", () => {
    const sum = (name: Parameters<typeof planned>[0]): number => planned(name).steps.reduce((minutes, step) => minutes + step.minutes, 0);
    expect(sum("added")).toBeGreaterThan(sum("usual") + hour);
    for (const name of plannedNames) {
      expect(planned(name).steps.length, name).toBeGreaterThanOrEqual(40);
      expect(planned(name).steps.length, name).toBeLessThanOrEqual(58);
    }
  });
});

describe("how alike, how thick", () => {
  test("throat and back within 1 mm, back seam upright within 1.5, toe caps within 1.6 (a factory's rule of 2014 for low-cut shoes); sides 1.5, sole edges and heels 0.5 (common practice, no source)", () => {
    const right = (id: string, name: Parameters<typeof planned>[0] = "usual"): string => planned(name).step(id).right.join(" ");
    expect(right("check-drafts")).toMatch(/throat and back within 1 mm.*sides within 1\.5 mm.*upright within 1\.5 mm/u);
    expect(right("measure-pair")).toMatch(/throat and back within 1 mm, sides within 1\.5 mm, heels and sole edges within 0\.5 mm/u);
    expect(right("sew-toe-cap", "added")).toMatch(/within 1\.6 mm/u);
    expect(right("lay-soles")).toMatch(/within 0\.5 mm/u);
  });

  test("a fold is thinned to 0.4 to 0.6, a closed seam to 0.7 to 0.8, a lap to 0.6 to 0.7 mm (common practice, no source); skins differ by 0.2 mm (a reader on tanneries)", () => {
    expect(textOf(planned("usual").step("skive-upper"))).toMatch(/0\.4 to 0\.6 mm.*0\.7 to 0\.8 mm/su);
    expect(textOf(planned("added").step("skive-upper"))).toMatch(/0\.6 to 0\.7 mm/u);
    expect(textOf(planned("usual").step("look-over-leather"))).toMatch(/within 0\.2 mm/u);
  });
});

describe("cautions where they belong", () => {
  test("an open tin: its hazard, the mask for vapour, goggles, gloves; and nothing but a tin asks for them", () => {
    for (const name of plannedNames) for (const { id, needs: { goods, tools }, hazards } of planned(name).steps) {
      expect(hazards.includes("solvent cement"), `${name}, ${id}`).toBe(goods.includes("contact cement"));
      if (goods.includes("contact cement")) expect(tools, id).toEqual(expect.arrayContaining(["half mask with organic-vapour filters", "goggles", "gloves", "metal bin"]));
      else expect(tools, id).not.toContain("half mask with organic-vapour filters");
    }
  });

  test("every knife, machine and pincers step says so; where rasp or paper works, dust; where it is warmed, heat", () => {
    for (const name of plannedNames) for (const { id, needs: { tools }, hazards } of planned(name).steps) {
      const told = (tool: (typeof tools)[number], hazard: (typeof hazards)[number]) => tools.includes(tool) && expect(hazards, `${name}, ${id}`).toContain(hazard);
      told("clicking knife", "knife");
      told("skiving knife", "knife");
      told("edge trimmer", "knife");
      told("sewing machine", "sewing machine");
      told("lasting pincers", "lasting pincers");
      told("lasting hammer", "hammer and nails");
      told("dust mask", "dust");
      told("hair dryer", "heat");
      told("edge iron", "heat");
      told("rasp", "dust");
      if (hazards.includes("grinding")) expect(hazards, id).toContain("dust");
    }
  });

  test("goggles wherever something flies: tacks, rasp, trimming, needles of the machine; a dust mask wherever there is dust, at skiving board and paring it too (common practice, no source)", () => {
    for (const name of plannedNames) for (const { id, needs: { tools }, hazards } of planned(name).steps) {
      if (hazards.some((hazard) => ["hammer and nails", "grinding", "sewing machine", "solvent cement", "water-based glue"].includes(hazard))) expect(tools, `${name}, ${id}`).toContain("goggles");
      if (hazards.includes("dust")) expect(tools, `${name}, ${id}`).toContain("dust mask");
    }
    for (const id of ["cut-stiffening", "glue-boards", "rough-bottoms", "trim-soles", "level-heels"]) expect(planned("usual").step(id).hazards, id).toContain("dust");
    for (const id of ["tack-insoles", "trim-soles", "level-heels", "stitch-topline"]) expect(planned("usual").step(id).needs.tools, id).toContain("goggles");
    for (const id of ["draft-uppers", "finish-edges"]) expect(planned("usual").step(id).hazards, id).toContain("heat");
  });

  test("latex and water-based cement say so: rubber's allergy and ammonia are spoken of at their caution", () => {
    for (const name of plannedNames) for (const { id, needs: { goods }, hazards } of planned(name).steps) expect(hazards.includes("water-based glue"), `${name}, ${id}`).toBe(goods.includes("latex"));
    for (const { id, needs: { goods }, hazards } of waterBased.steps) expect(hazards.includes("water-based glue"), id).toBe(goods.includes("latex") || goods.includes("water-based cement"));
  });

  test("goggles where tacks are driven; and the foot is spoken of before the first wearing", () => {
    for (const id of ["draft-uppers", "last-sides", "last-toes", "build-heels"]) expect(planned("usual").step(id).needs.tools, id).toContain("goggles");
    expect(planned("usual").step("box-shoes").hazards).toContain("feet");
    expect(planned("added").step("close-straps").hazards).toContain("feet");
  });
});
