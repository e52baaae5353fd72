"""The calendar, read by Python's datetime: every stretch of work inside what was said, all of it placed, rests kept, nothing left open too long."""

import re
from datetime import date, datetime, timedelta
from math import ceil

from checks import Checks, report, sets
from making_said import minutes_said, said

DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]
CLOCK = r"(\d+)(?::(\d\d))?"


def week(text):
    """Times at the bench by weekday, minutes from midnight; days that are named without a time have the next one that is."""
    out, days = [], []
    waiting = False
    for part in text.split(","):
        named = [DAYS.index(word[:3]) for word in re.findall(r"[A-Za-z]+", part)]
        days = [*days, *named] if waiting else named or days
        found = re.search(rf"{CLOCK}\s*-\s*{CLOCK}", part)
        waiting = found is None
        if found:
            a, b, c, d = (int(value or 0) for value in found.groups())
            out.extend((day, 60 * a + b, 60 * c + d) for day in days)
    return set(out)


def at(day, minutes):
    return datetime.combine(date.fromisoformat(day), datetime.min.time()) + timedelta(minutes=minutes)


class Stint:
    def __init__(self, session, stint, pairs):
        begin = at(session["date"], session["fromMin"])
        self.step, self.part, self.parts = stint["step"], stint["part"], stint["parts"]
        self.begin, self.end = begin + timedelta(minutes=stint["fromMin"]), begin + timedelta(minutes=stint["toMin"])
        self.session_end, self.pairs, self.some = at(session["date"], session["toMin"]), stint.get("pairs", pairs), "pairs" in stint

    minutes = property(lambda self: (self.end - self.begin).total_seconds() / 60)


def own_minutes(making, told):
    """Minutes of a step for one pair; those of a phase in the maker's own time scaled alike."""
    usual = {}
    for step in making["steps"]:
        usual[step["phase"]] = usual.get(step["phase"], 0) + step["minutes"]
    own = {phase: float(minutes_said(text)) for phase, text in told.get("minutes", {}).items()}
    return {step["id"]: step["minutes"] * own.get(step["phase"], usual[step["phase"]]) / usual[step["phase"]] for step in making["steps"]}


def sessions(checks, name, calendar, told):
    times, first = week(told["sessions"]), date.fromisoformat(told["start"])
    for session in calendar["sessions"]:
        day = date.fromisoformat(session["date"])
        checks.true(f"{name}, {day}: a time at the bench that was said, not before the first day", day >= first and (day.weekday(), session["fromMin"], session["toMin"]) in times)
        ends = [0, *(stint["toMin"] for stint in session["stints"])]
        inside = all(before <= stint["fromMin"] < stint["toMin"] <= session["toMin"] - session["fromMin"] for before, stint in zip(ends, session["stints"]))
        checks.true(f"{name}, {day}: {len(session['stints'])} stretches one after another, inside it", inside)


def placed(checks, name, steps, stints, minutes, pairs):
    """Every step for every pair, each part once; a pattern only once."""
    for step in steps:
        mine = stints[step["id"]]
        many = 1 if step["phase"] == "pattern" else pairs
        rounds = any(stint.some for stint in mine)
        want = sum(ceil(minutes[step["id"]] * stint.pairs - 1e-9) for stint in mine) if rounds else ceil(minutes[step["id"]] * many - 1e-9)
        checks.near(f"{name}, {step['id']}: minutes placed", sum(stint.minutes for stint in mine), max(1, want), 0, "min")
        checks.true(f"{name}, {step['id']}: parts counted", [stint.part for stint in mine] == list(range(1, len(mine) + 1)) and all(stint.parts == len(mine) for stint in mine))
        if rounds:
            checks.near(f"{name}, {step['id']}: pairs in all rounds", sum(stint.pairs for stint in mine), pairs, 0, "")


def by_pair(mine, pairs):
    """The stretches that each pair is in: its own round of it, or all of them where the pairs go together."""
    if not any(stint.some for stint in mine):
        return [mine] * pairs
    return [[stint] for stint in mine for _ in range(stint.pairs)]


def gaps(first, then, a, b):
    """Minutes from each pair's end of one step to its begin of the next, when pairs are taken one after another in both."""
    return [(then.begin - first.begin).total_seconds() / 60 + k * b - (k + 1) * a for k in range(first.pairs)]


def waits(checks, name, steps, stints, minutes, pairs):
    follows = {step["id"]: [other["id"] for other in steps if step["id"] in other["after"]] for step in steps}
    mine = {step["id"]: by_pair(stints[step["id"]], pairs) for step in steps}
    for step in steps:
        wait = step.get("wait")
        rest = ceil(min(wait["wellMin"], wait.get("mostMin", float("inf")))) if wait else 0
        for other in follows[step["id"]]:
            kept = all(then[0].begin >= first[-1].end + timedelta(minutes=rest) for first, then in zip(mine[step["id"]], mine[other]))
            checks.true(f"{name}, {other}: every pair begins when {step['id']} is over and has rested {rest} min", kept)
        if wait and "mostMin" in wait and follows[step["id"]]:
            opened = []
            for first in stints[step["id"]]:
                k = mine[step["id"]].index([first]) if first.some else 0
                nexts = [(mine[other][k][0], minutes[other]) for other in follows[step["id"]]]
                opened += gaps(first, *min(((then, minutes[step["id"]], each) for then, each in nexts), key=lambda one: one[0].begin))
            checks.true(f"{name}, {step['id']}: no pair open longer than {wait['mostMin']} min, none shorter than {rest}", max(opened) <= wait["mostMin"] + 1e-9 and min(opened) >= rest - 1, f"{min(opened):.0f} to {max(opened):.0f} min")


def ready(checks, name, calendar, steps, stints):
    rests = {step["id"]: timedelta(minutes=ceil(min(step["wait"]["wellMin"], step["wait"].get("mostMin", float("inf"))))) if "wait" in step else timedelta() for step in steps}
    until = {step: mine[-1].end + rests[step] for step, mine in stints.items()}
    checks.true(f"{name}: ready when the last is over", max(until.values()) == at(calendar["ready"]["date"], calendar["ready"]["min"]), str(max(until.values())))
    for session in calendar["sessions"]:
        end = at(session["date"], session["toMin"])
        want = {step: time for step, time in until.items() if rests[step] and stints[step][-1].begin < end and time > end}
        told = {wait["step"]: at(wait["untilDate"], wait["untilMin"]) for wait in session["waits"]}
        checks.true(f"{name}, {end}: what rests when it ends, and until when", told == want, ", ".join(sorted(want)))


checks = Checks("The calendar, by datetime")
for name, where in sets():
    making, told = report(where)["making"], said(name)
    if "sessions" not in told:
        checks.true(f"{name}: no hours, no calendar", "calendar" not in making)
        continue
    calendar, steps, pairs = making["calendar"], making["steps"], making["pairs"]
    sessions(checks, name, calendar, told)
    every = [Stint(session, stint, pairs) for session in calendar["sessions"] for stint in session["stints"]]
    stints = {step["id"]: [stint for stint in every if stint.step == step["id"]] for step in steps}
    minutes = own_minutes(making, told)
    placed(checks, name, steps, stints, minutes, pairs)
    waits(checks, name, steps, stints, minutes, pairs)
    ready(checks, name, calendar, steps, stints)
checks.end()
