"""What the cross-checks share: counting what agreed, and reading report.json."""

import json
import sys
from pathlib import Path

import numpy as np


class Checks:
    """Compares numbers, prints what was compared, and ends the program non-zero when anything differed or nothing was compared."""

    def __init__(self, title):
        self.passed = 0
        self.failed = 0
        print(title)

    def near(self, what, got, want, tolerance, unit="mm"):
        """Both are plain numbers; `want` is the project's own, `got` the outside library's."""
        self._count(abs(got - want) <= tolerance, f"{what}: {got:.4f} outside, {want:.4f} ours, allowed {tolerance:g} {unit}")

    def true(self, what, holds, detail=""):
        self._count(bool(holds), f"{what}{': ' + detail if detail else ''}")

    def _count(self, holds, line):
        if holds:
            self.passed += 1
        else:
            self.failed += 1
        print(f"  {'ok    ' if holds else 'DIFFER'} {line}")

    def end(self):
        print(f"{self.passed} passed, {self.failed} failed")
        sys.exit(0 if self.failed == 0 and self.passed > 0 else 1)


def folder():
    """The folder that holds the results of the example pair: the program's one argument."""
    return Path(sys.argv[1])


def sets():
    """Folders that hold the results of a pair, by name: the example pair, then those of sets.json."""
    return [("example", folder()), *((path.name, path) for path in sorted((folder() / "sets").iterdir()))]


def report(where=None):
    return json.loads(((where or folder()) / "report.json").read_text(encoding="utf-8"))


def outline(piece):
    """Points of a piece of the report, n x 2, mm, first point not repeated."""
    return np.asarray(piece["outlineMm"], dtype=float).reshape(-1, 2)


def label(piece):
    return f"{piece['side']} {piece['name']}"


def placed(piece):
    """The outline where it lies on the common sheet: turned, then moved; n x 2, mm, y up."""
    place = piece["placement"]
    turn = np.deg2rad(place["rotationDeg"])
    matrix = np.array([[np.cos(turn), -np.sin(turn)], [np.sin(turn), np.cos(turn)]])
    return outline(piece) @ matrix.T + [place["xMm"], place["yMm"]]
