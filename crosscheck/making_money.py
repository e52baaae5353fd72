"""What has to be bought and what a pair costs, by Python's decimal arithmetic from the materials of the report and what was said, tables read by Python's csv."""

from decimal import Decimal, localcontext
from math import ceil

from checks import Checks, report, sets
from making_said import amount, minutes_said, number, said

SKINS = ["upper leather", "lining leather", "sock leather"]
# The report rounds amounts and money to 1e-4.
ROUND = Decimal("0.0001")


class Priced:
    """The price of a good for one mm2, mm, mm3, g or piece, and the pack it comes in."""

    def __init__(self, need, told):
        name, unit = need["name"], need["unit"]
        price = told.get("prices", {}).get(name)
        size = told.get("skins", {}).get(name)
        self.per = amount(price["for"], unit) if price else None
        self.each = number(price["price"]) / self.per if price else None
        if size is not None:
            self.pack = amount(size, unit)
        elif unit == "pieces":
            self.pack = self.per or Decimal(1)
        else:
            by_roll = unit in ("g", "mm3") or (unit == "mm" and self.per is not None and self.per > 1000)
            self.pack = self.per if by_roll else None


def bought(checks, name, making, told):
    pairs, listed = making["pairs"], {one["good"]: one for one in making["toBuy"]}
    checks.true(f"{name}: all materials are on the shopping list", set(listed) == {need["name"] for need in making["materials"]})
    shopping, socks = Decimal(0), socks_of_lining(making, told)
    for need in making["materials"]:
        one, good = listed[need["name"]], Priced(need, told)
        what, loose = f"{name}, {need['name']}", pairs * ROUND
        # What is used again is bought for the pairs that use it at once; what is kept in hand is bought once.
        needed = Decimal(str(need["gross"])) * (need.get("atOnce", 1) if need.get("again") else pairs) + need.get("spare", 0)
        shelf = amount(told["shelf"][need["name"]], need["unit"]) if need["name"] in told.get("shelf", {}) else Decimal(0)
        short = max(Decimal(0), needed - shelf)
        checks.near(f"{what}: needed for {pairs}", float(needed), one["needed"], float(loose), need["unit"])
        if need["name"] == "sock leather" and socks:
            checks.true(f"{what}: out of the lining's skin", one["short"] == 0 and one["paid"] == 0 and "whole" not in one and one["outOf"]["good"] == "lining leather")
            checks.near(f"{what}: out of it", float(short), one["outOf"]["amount"], float(loose), need["unit"])
            continue
        checks.near(f"{what}: short of it", float(short), one["short"], float(loose), need["unit"])
        take = short
        if good.pack is not None:
            count = ceil(short / good.pack)
            checks.near(f"{what}: whole ones", count, one["whole"]["count"], 0, "")
            take = count * good.pack
        cut = socks if need["name"] == "lining leather" else 0
        checks.near(f"{what}: left over", float(shelf + take - needed - cut), one["left"], float(2 * loose), need["unit"])
        checks.true(f"{what}: paid only where there is a price", ("paid" in one) == (good.each is not None))
        if good.each is not None:
            checks.near(f"{what}: paid", float(take * good.each), one["paid"], 2e-4, "of the money")
            shopping += take * good.each
    checks.near(f"{name}: the trip to the shop", float(shopping), making["cost"]["shopping"], 2e-3, "of the money")


def socks_of_lining(making, told):
    """What of the socks comes out of whole skins of lining, in mm2: all that is short of them where the skins leave over so much, or nothing."""
    needs = {need["name"]: need for need in making["materials"]}
    if "sock leather" not in needs or "lining leather" not in needs or "lining leather" not in told.get("skins", {}):
        return Decimal(0)

    def short(name):
        shelf = amount(told["shelf"][name], "mm2") if name in told.get("shelf", {}) else Decimal(0)
        return max(Decimal(0), Decimal(str(needs[name]["gross"])) * making["pairs"] - shelf)

    skin = amount(told["skins"]["lining leather"], "mm2")
    lining, sock = short("lining leather"), short("sock leather")
    return sock if lining > 0 and ceil(lining / skin) * skin - lining >= sock else Decimal(0)


def work(checks, name, making, told):
    """Minutes by phase for a pair; a pattern is borne by all pairs alike."""
    cost, by_phase = making["cost"], {}
    for step in making["steps"]:
        by_phase[step["phase"]] = by_phase.get(step["phase"], 0) + Decimal(str(step["minutes"]))
    by_phase |= {phase: minutes_said(text) for phase, text in told.get("minutes", {}).items()}
    if "pattern" in by_phase:
        by_phase["pattern"] /= making["pairs"]
    for one in cost["work"]:
        checks.near(f"{name}, {one['phase']}: minutes", float(by_phase[one["phase"]]), one["minutes"], 1e-3, "min")
    minutes = sum(by_phase.values())
    checks.near(f"{name}: minutes of a pair", float(minutes), cost["minutes"], 1e-3, "min")
    rate = number(told["rate"]) if "rate" in told else Decimal(0)
    checks.near(f"{name}: cost of the work", float(minutes * rate / 60), cost["workCost"], 1e-3, "of the money")
    return minutes, minutes * rate / 60


def costs(checks, name, making, told):
    cost, lines = making["cost"], {line["good"]: line for line in making["cost"]["lines"]}
    lining = next((need for need in making["materials"] if need["name"] == "lining leather"), None)
    material, skins, unpriced, by_part = Decimal(0), Decimal(0), [], {}
    for need in making["materials"]:
        again = need.get("again")
        uses = Decimal(str(need["gross"])) * need.get("atOnce", 1) / (making["pairs"] if again else 1)
        line, each = lines[need["name"]], Priced(need, told).each
        if each is None and need["name"] == "sock leather" and socks_of_lining(making, told):
            each = Priced(lining, told).each
        checks.near(f"{name}, {need['name']}: a pair uses", need["gross"], line["amount"], 1e-4, need["unit"])
        if each is None:
            unpriced.append(need["name"])
            checks.true(f"{name}, {need['name']}: no price, no cost", "cost" not in line)
            continue
        checks.near(f"{name}, {need['name']}: costs", float(uses * each), line["cost"], 2e-4, "of the money")
        material += uses * each
        by_part[line["part"]] = by_part.get(line["part"], 0) + uses * each
        skins += uses * each if need["name"] in SKINS else 0
    checks.true(f"{name}: what has no price is named", unpriced == cost["unpriced"], ", ".join(unpriced))
    checks.near(f"{name}: material", float(material), cost["material"], 2e-3, "of the money")
    minutes, worked = work(checks, name, making, told)
    overhead = number(told.get("overhead", 0))
    total = material + worked + overhead
    checks.near(f"{name}: the pair costs", float(total), cost["total"], 2e-3, "of the money")
    shares(checks, name, cost, {**by_part, "work": worked, "overhead": overhead}, total)
    checks.near(f"{name}: skins a tenth dearer", float(skins / 10), cost["skinsDearer"]["more"], 2e-4, "of the money")
    checks.near(f"{name}: the pair then", float(total + skins / 10), cost["skinsDearer"]["total"], 2e-3, "of the money")
    if "asked" in told:
        asked = number(told["asked"])
        checks.near(f"{name}: left of what is asked", float(asked - total), cost["left"], 2e-3, "of the money")
        checks.near(f"{name}: an hour earns", float(60 * (asked - material - overhead) / minutes), cost["anHour"], 2e-3, "of the money")


def shares(checks, name, cost, parts, total):
    if total == 0:
        checks.true(f"{name}: nothing costs, nothing has a share", cost["shares"] == [])
        return
    checks.near(f"{name}: shares add up", sum(one["share"] for one in cost["shares"]), 1, 1e-3, "")
    checks.true(f"{name}: the dearest first", all(a["cost"] >= b["cost"] for a, b in zip(cost["shares"], cost["shares"][1:])))
    checks.true(f"{name}: every part that costs", {one["part"] for one in cost["shares"]} == {part for part, money in parts.items() if money > 0})
    for one in cost["shares"]:
        checks.near(f"{name}, {one['part']}: share", float(parts[one["part"]] / total), one["share"], 1e-4, "")


checks = Checks("Shopping and cost, by decimal arithmetic")
with localcontext() as exact:
    exact.prec = 40
    for name, where in sets():
        making, told = report(where)["making"], said(name)
        checks.near(f"{name}: pairs", int(told.get("pairs", 1)), making["pairs"], 0, "")
        bought(checks, name, making, told)
        costs(checks, name, making, told)
checks.end()
