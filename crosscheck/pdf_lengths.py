"""Page sizes, scale bars and cutting lines of the PDF sheets, by pdfplumber."""

import json

import numpy as np
import pdfplumber
from scipy.spatial import cKDTree
from shapely import STRtree, linestrings, points

from checks import Checks, folder, placed

MM = 25.4 / 72  # one point in millimetres (ISO 32000-1: default user space is 1/72 inch)
PAPERS = {"A4": (210, 297), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1 A
BAR, CUT = 0.5, 0.35  # stroke widths on the sheets, mm (docs/method/sheets.md)
RUN = 8  # edges in a row by which a stroke on a page is recognised

checks = Checks("PDF sheets, by pdfplumber")


def of_width(strokes, width):
    return [stroke for stroke in strokes if abs(stroke["linewidth"] * MM - width) < 0.01]


def bars(page, axis):
    """Lengths of the straight strokes of a bar's width along an axis, mm."""
    ends = [[float(line[key]) * MM for key in ("x0", "y0", "x1", "y1")] for line in of_width(page.lines, BAR)]
    return [abs(e[axis + 2] - e[axis]) for e in ends if abs(e[3 - axis] - e[1 - axis]) < 1e-3]


def dashed(stroke):
    """Seams are dotted in a cutting line's width; cutting lines are full."""
    return bool(stroke.get("dash") and stroke["dash"][0])


def cuts(page):
    """Cutting lines of a page as point lists, mm, y up."""
    height = float(page.height)
    found = [np.array([(x * MM, (height - y) * MM) for x, y in curve["pts"]]) for curve in of_width(page.curves, CUT) if not dashed(curve)]
    return [line for line in found if len(line) > RUN + 4]


def runs(line):
    """Each RUN edges in a row as one long vector."""
    edges = np.diff(line, axis=0)
    return np.hstack([edges[i : len(edges) - RUN + 1 + i] for i in range(RUN)])


class Outlines:
    """The outlines of the report as they lie on the common sheet, made ready for finding runs of edges and distances."""

    def __init__(self, rings):
        joined = [np.vstack([ring, ring[: RUN + 1]]) for ring in rings]
        self.starts = np.vstack([line[: len(runs(line))] for line in joined])
        self.runs = cKDTree(np.vstack([runs(line) for line in joined]))
        self.edges = STRtree(np.concatenate([linestrings(np.stack([line[:-1], line[1:]], axis=1)) for line in joined]))

    def away(self, corners):
        """Farthest distance of any corner from the outlines."""
        return self.edges.query_nearest(points(corners), all_matches=False, return_distance=True)[1].max()

    def moves(self, line):
        """Moves by which a run of the line's edges meets one of ours; several, since pieces share edges."""
        distance, index = self.runs.query(runs(line), k=8)
        for row in np.argsort(distance[:, 0])[:5]:
            for near in index[row][distance[row] < 0.05]:
                yield self.starts[near] - line[row]


def hold_against(name, lines, outlines):
    """All points of a page's cutting lines must lie on the outlines of the report after one and the same move."""
    corners = np.vstack(lines)
    best = np.inf
    for line in lines:
        for move in outlines.moves(line):
            # A few points tell whether a move is worth a full look.
            if outlines.away(corners[:: len(corners) // 20] + move) < 0.02:
                best = min(best, outlines.away(corners + move))
            if best < 0.02:
                break
    checks.near(f"{name}: {len(corners)} points of cutting lines, farthest from their outlines", best, 0, 0.02)


for paper, where in (("A4", folder()), ("Letter", folder() / "letter")):
    outlines = Outlines([placed(piece) for piece in json.loads((where / "report.json").read_text())["pieces"]])
    held = 0
    with pdfplumber.open(where / "pattern.pdf") as pdf:
        checks.true(f"{paper}: has pages", len(pdf.pages) > 1, f"{len(pdf.pages)}")
        for page in pdf.pages:
            name = f"{paper} page {page.page_number}"
            checks.near(f"{name}: width", float(page.width) * MM, PAPERS[paper][0], 0.01)
            checks.near(f"{name}: height", float(page.height) * MM, PAPERS[paper][1], 0.01)
            checks.true(f"{name}: no unit of its own", "UserUnit" not in page.page_obj.attrs)
            for axis, way in enumerate(("across", "up")):
                found = bars(page, axis)
                checks.near(f"{name}: bars {way}", len(found), 1, 0, "")
                checks.near(f"{name}: bar {way}", max(found, default=0), 100, 0.05)
            if lines := cuts(page):
                hold_against(name, lines, outlines)
                held += 1
    checks.true(f"{paper}: pages whose cutting lines were held against the report", held >= len(pdf.pages) // 2, f"{held}")
checks.end()
