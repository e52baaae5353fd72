"""The fit of the example's strips against scipy's least squares, with table, strips, law and what is expected written anew.

Strips are pulled with the law of the whole sheet, their edges free, not with the closed form for a strip. The rules are those of
docs/method/strip-test.md.
"""

import csv
import json
import subprocess
from pathlib import Path

import numpy as np
from scipy.optimize import brentq, least_squares

from checks import Checks, folder
from sheet_law import Leather

WAYS = {"along": 0.0, "across": 90.0, "45": 45.0}
NARROWING, FIRM, KILOGRAM = 0.35, 25 / 20, 9.80665  # sqrt of both Poisson ratios; N/mm; N

root = Path(__file__).resolve().parent.parent
subprocess.run(["node", root / "node_modules/tsx/dist/cli.mjs", root / "crosscheck/strip-fit-export.ts", folder()], check=True, cwd=root)
ours = json.loads((folder() / "strip-fit.json").read_text(encoding="utf-8"))


def readings():
    """(strip, way, N per mm, gauge, length) of each row; an empty way goes on with the strip above."""
    lines = [line for line in (root / "examples/strips-goat.csv").read_text(encoding="utf-8").splitlines() if line.strip() and not line.startswith("#")]
    out, strip = [], -1
    for row in list(csv.reader(lines))[1:]:
        if row[0]:
            strip, way, width, gauge = strip + 1, row[0], float(row[1]), float(row[2])
        if row[4] != "kg":
            raise ValueError(f"a load in {row[4]}")
        out.append((strip, way, float(row[3]) * KILOGRAM / width, gauge, float(row[5])))
    return out


def numbers(along, across, slip, toe, early):
    """k45 from the stiffness in slip, the Poisson ratio from what both ways have together."""
    poisson = NARROWING * np.sqrt(along / across)
    return {"along": along, "across": across, "bias": 4 / (1 / slip + 1 / along + 1 / across - 2 * poisson / along), "poisson": poisson, "toe": toe, "early": early}


def pulled(leather, pull):
    """Stretch of strips under N per mm of their width: strains at which the stresses are those of the pull and none across or askew."""
    e = np.zeros((3, len(pull)))
    stretch = lambda e: np.sqrt(np.maximum(1 + 2 * e[0], 1e-6))
    target = lambda e: np.stack([pull / stretch(e), np.zeros_like(pull), np.zeros_like(pull)])
    for _ in range(100):
        s, d = leather.stress(e)
        d = d.copy()
        d[0, 0] += pull / stretch(e) ** 3
        step = np.linalg.solve(np.moveaxis(d, 2, 0), (target(e) - s).T[:, :, None])[:, :, 0].T
        step *= 0.05 / np.maximum(0.05, np.abs(step).max(axis=0))  # no longer step than 5 % of strain
        e = e + step
        if np.abs(step).max() < 1e-13:
            return stretch(e)
    raise ArithmeticError("a strip did not come to rest")


def stretch_of(found, way, pull):
    return pulled(Leather(found, -WAYS[way]), np.atleast_1d(np.asarray(pull, dtype=float)))


def usual():
    """Middle of the known leather's table at a firm pull, in proportion to its thickness."""
    middle = lambda key: np.sqrt(np.prod(ours["figures"][key]))
    tight, loose, thick = middle("tight"), middle("loose"), ours["thicknessMm"] / ours["figures"]["thicknessMm"]
    toe, early = 0.4 * tight, 0.25
    slip = lambda k1, k2: np.sqrt(k1 * k2) / (2 * (1 + NARROWING))
    whole = lambda k1, k2: numbers(k1, k2, slip(k1, k2), toe, early)
    along = brentq(lambda k: stretch_of(whole(k, k), "along", FIRM)[0] - 1 - tight, 5, 500, xtol=1e-12)
    across = brentq(lambda k: stretch_of(whole(along, k), "across", FIRM)[0] - 1 - loose, 2, 500, xtol=1e-12)
    return {**whole(along, across), "along": along * thick, "across": across * thick, "bias": whole(along, across)["bias"] * thick}, slip, thick


read = readings()
expected, slip_of, thick = usual()
logs = lambda found: np.array([np.log(stretch_of(found, way, FIRM * thick)[0] - 1) for way in ("along", "across")])
expected_logs = logs(expected)
ranges = 0.25 * sum(np.log(np.divide(*ours["figures"][key][::-1])) for key in ("tight", "loose"))
own, common = np.sqrt(ranges**2 / 4), np.sqrt(ranges**2 * 3 / 4)
odds = lambda share: np.log(share / (1 - share))
yielding = lambda z: np.sign(z) * np.sqrt(4 * np.log1p(z * z / 4))
strip, way, pull, gauge, length = (np.array(column) for column in zip(*read))
strips = strip.max() + 1


def found(x):
    return numbers(*np.exp(x[:4]), 1 / (1 + np.exp(-x[4])))


def residuals(x):
    here = found(x)
    more = logs(here) - expected_logs
    before = [
        more.sum() / np.sqrt(2 * own**2 + 4 * common**2),
        (more[0] - more[1]) / np.sqrt(2 * own**2),
        (x[2] - np.log(slip_of(*np.exp(x[:2])))) / 0.5,
        (x[3] - np.log(0.4) - logs(here)[0]) / 1.2,
        (x[4] - odds(0.25)) / 2,
    ]
    off = np.empty(len(read))
    for one in WAYS:
        rows = way == one
        off[rows] = (gauge[rows] + x[5 + strip[rows]]) * stretch_of(here, one, pull[rows]) - length[rows]
    return np.concatenate([yielding(np.array(before)), x[5:] / 0.3, off / np.hypot(0.5, 0.03 * np.maximum(0, length - gauge))])


checks = Checks("The fit of strips, by scipy's least squares (trust region, differences of three points)")
start = np.concatenate([np.log([60, 30, 15, 0.01]), [0.0], np.zeros(strips)])
answer = least_squares(residuals, start, jac="3-point", xtol=1e-15, ftol=1e-15, gtol=1e-12, x_scale=0.3)
theirs = found(answer.x)
checks.true("it comes to an end", answer.success and answer.optimality < 1e-4, f"{answer.nfev} steps, half the sum of squares {answer.cost:.6f}, slope left {answer.optimality:.0e}")
off = max(abs(theirs[key] / ours["numbers"][key] - 1) for key in theirs)
checks.true("all six numbers", off < 0.001, f"{off:.1e} of them apart at most; allowed 0.001")
for key in ("along", "across", "bias", "poisson", "toe", "early"):
    checks.near(key, theirs[key], ours["numbers"][key], 0.001 * ours["numbers"][key], "" if key in ("poisson", "toe", "early") else "N/mm")
for name, one in (("along", "along"), ("across", "across"), ("bias", "45")):
    want = 100 * (ours["told"][name]["stretch"])
    checks.near(f"stretch {name} under 10 N on 20 mm", 100 * (stretch_of(theirs, one, 0.5)[0] - 1), want, 0.001 * want, "%")
checks.end()
