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
        self.first, self.pairs = stint.get("first", 1), stint.get("pairs", pairs)

    minutes = property(lambda self: (self.end - self.begin).total_seconds() / 60)


def batches(stints):
    """The stretches of a step by the pairs that go through it together, in their order."""
    firsts = sorted({stint.first for stint in stints})
    return [[stint for stint in stints if stint.first == first] for first in firsts]


def by_pair(stints, pairs):
    """The stretches that each pair is in, from the first pair on."""
    return [next(batch for batch in batches(stints) if batch[0].first <= pair < batch[0].first + batch[0].pairs) for pair in range(1, pairs + 1)]


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


def placed(checks, name, steps, stints, minutes, pairs, lasts):
    """Every step for every pair, each part once; a pattern only once, and each last marked once."""
    for step in steps:
        for batch in batches(stints[step["id"]]):
            times = lasts if step["id"] == "mark-lasts" else 1 if step["phase"] == "pattern" else batch[0].pairs
            what = f"{name}, {step['id']}, pairs from {batch[0].first}"
            checks.near(f"{what}: minutes placed", sum(stint.minutes for stint in batch), max(1, ceil(minutes[step["id"]] * times - 1e-9)), 0, "min")
            checks.true(f"{what}: parts counted", [stint.part for stint in batch] == list(range(1, len(batch) + 1)) and all(stint.parts == len(batch) for stint in batch))
        checks.near(f"{name}, {step['id']}: pairs in all", sum(batch[0].pairs for batch in batches(stints[step["id"]])), pairs, 0, "")


def rest_of(step):
    wait = step.get("wait")
    return ceil(min(wait["wellMin"], wait.get("mostMin", float("inf")))) if wait else 0


def gaps(first, then, a, b, shoes):
    """Minutes from the end of one step to the begin of the next, for each pair or each shoe, taken one after another in both; a and b are a pair's minutes."""
    return [(then.begin - first.begin).total_seconds() / 60 + (k * b - (k + 1) * a) / shoes for k in range(shoes * first.pairs)]


def waits(checks, name, steps, stints, minutes, pairs):
    follows = {step["id"]: [other["id"] for other in steps if step["id"] in other["after"]] for step in steps}
    # Where a step is done on one shoe after the other, the second must not come too late.
    in_turn = {step["id"]: 2 if step["shoes"] == "one after the other" else 1 for step in steps}
    mine = {step["id"]: by_pair(stints[step["id"]], pairs) for step in steps}
    for step in steps:
        wait, rest = step.get("wait"), rest_of(step)
        for other in follows[step["id"]]:
            kept = all(then[0].begin >= first[-1].end + timedelta(minutes=rest) for first, then in zip(mine[step["id"]], mine[other]))
            checks.true(f"{name}, {other}: every pair begins when {step['id']} is over and has rested {rest} min", kept)
        if wait and "mostMin" in wait and follows[step["id"]]:
            opened = []
            for batch in batches(stints[step["id"]]):
                k = batch[0].first - 1
                then, each, shoes = min(((mine[other][k][0], minutes[other], in_turn[other]) for other in follows[step["id"]]), key=lambda one: one[0].begin)
                opened += gaps(batch[0], then, minutes[step["id"]], each, shoes)
            checks.true(f"{name}, {step['id']}: none open longer than {wait['mostMin']} min, none shorter than {rest}", max(opened) <= wait["mostMin"] + 1e-9 and min(opened) >= rest - 1, f"{min(opened):.0f} to {max(opened):.0f} min")


def on_lasts(checks, name, stints, pairs, lasts):
    """From the boards' blocking until its lasts are slipped a pair has them: never more pairs at once than there are lasts."""
    spans = [(first[0].begin, then[-1].end) for first, then in zip(by_pair(stints["block-boards"], pairs), by_pair(stints["slip-lasts"], pairs))]
    most = max(sum(begin <= time < end for begin, end in spans) for time, _ in spans)
    checks.true(f"{name}: pairs on lasts at once", most <= lasts, f"{most} of {lasts}")


def ready(checks, name, calendar, steps, stints):
    rests = {step["id"]: timedelta(minutes=rest_of(step)) for step in steps}
    until = {(step, batch[0].first): (batch[-1], batch[-1].end + rests[step]) for step, mine in stints.items() for batch in batches(mine)}
    last = max(time for _, time in until.values())
    checks.true(f"{name}: ready when the last is over", last == at(calendar["ready"]["date"], calendar["ready"]["min"]), str(last))
    for session in calendar["sessions"]:
        end = at(session["date"], session["toMin"])
        want = {key: time for key, (stint, time) in until.items() if rests[key[0]] and stint.begin < end and time > end}
        told = {(wait["step"], wait.get("first", 1)): at(wait["untilDate"], wait["untilMin"]) for wait in session["waits"]}
        checks.true(f"{name}, {end}: what rests when it ends, and until when", told == want, ", ".join(sorted({step for step, _ in want})))


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
    # One pair of lasts where nothing is said.
    lasts = min(pairs, int(told.get("lasts", 1)))
    placed(checks, name, steps, stints, minutes, pairs, lasts)
    on_lasts(checks, name, stints, pairs, lasts)
    waits(checks, name, steps, stints, minutes, pairs)
    ready(checks, name, calendar, steps, stints)
checks.end()
