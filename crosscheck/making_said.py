"""What the maker said about making in each set: its words for the command line over the job it stands in; tables read by Python's csv."""

import csv
import json
import re
import shlex
from decimal import Decimal
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent

# International yard and pound of 1959, exact; amounts come in mm2, mm, mm3, g and pieces.
INCH, POUND = Decimal("25.4"), Decimal("453.59237")
UNITS = {
    "area": {"mm2": 1, "cm2": 100, "dm2": 10_000, "m2": 1_000_000, "in2": INCH**2, "ft2": (12 * INCH) ** 2},
    "length": {"mm": 1, "cm": 10, "m": 1000, "in": INCH, "ft": 12 * INCH, "yd": 36 * INCH},
    "volume": {"ml": 1000, "l": 1_000_000},
    "mass": {"g": 1, "kg": 1000, "oz": POUND / 16, "lb": POUND},
    "count": {"": 1, "piece": 1, "pieces": 1, "pair": 2, "pairs": 2, "dozen": 12},
}
MEASURE = {"mm2": "area", "mm": "length", "mm3": "volume", "g": "mass", "pieces": "count"}


def number(text):
    return Decimal(str(text).strip().replace(",", "."))


def amount(text, unit):
    """An amount like "5,5 ft2" in the report's unit."""
    value, name = re.fullmatch(r"\s*([\d.,]+)\s*(.*?)\s*", str(text)).groups()
    return number(value) * UNITS[MEASURE[unit]][name]


def minutes_said(text):
    """ "3 h 20", "90": minutes."""
    hours = re.fullmatch(r"(\d+) h (\d+)", str(text))
    return Decimal(60 * int(hours[1]) + int(hours[2])) if hours else number(text)


def rows(path):
    text = [line for line in (ROOT / path).read_text(encoding="utf-8").splitlines() if line.strip() and not line.startswith("#")]
    return list(csv.DictReader(text, delimiter=";" if ";" in text[0] else ","))


def said(name):
    """The fields of `making` by name; empty where nothing was said."""
    one = next((one for one in json.loads((ROOT / "crosscheck/sets.json").read_text(encoding="utf-8")) if one["name"] == name), None)
    if one is None:
        return {}
    out = json.loads((ROOT / "examples" / one.get("from", "almond-37.json")).read_text(encoding="utf-8"))["making"] | one.get("making", {})
    words = shlex.split(one.get("words", ""))
    for option, value in zip(words[::2], words[1::2]):
        if option == "--prices":
            table = rows(value)
            out["prices"] = {row["what"]: {"price": row["price"], "for": row["for"]} for row in table}
            out["skins"] = {row["what"]: row["size"] for row in table if row["size"]}
        elif option == "--shelf":
            out["shelf"] = {row["what"]: row["amount"] for row in rows(value)}
        else:
            out[option.removeprefix("--")] = value
    return out
