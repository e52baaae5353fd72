"""Page sizes, scale bars and cutting lines of the PDF sheets by pdfplumber, the bars as a renderer paints them by PDFium."""

import numpy as np
import pdfplumber
import pypdfium2
from scipy.spatial import cKDTree
from shapely import STRtree, linestrings, points
from svgpathtools import CubicBezier, parse_path
from xml.etree import ElementTree

from checks import Checks, placed, report, sets

MM = 25.4 / 72  # one point in millimetres (ISO 32000-1: default user space is 1/72 inch)
PAPERS = {"A4": (210, 297), "A3": (297, 420), "A2": (420, 594), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1 A
BAR, CUT = 0.5, 0.35  # stroke widths on the sheets, mm (docs/method/sheets.md)
DPI = 600
SPACE = "{http://www.w3.org/2000/svg}"

checks = Checks("PDF sheets, by pdfplumber and PDFium")


def of_width(strokes, width):
    return [stroke for stroke in strokes if abs(stroke["linewidth"] * MM - width) < 0.01]


def bars(page, axis):
    """Ends x0, y0, x1, y1 of the straight strokes of a bar's width along an axis, mm in the file."""
    ends = [[float(line[key]) * MM for key in ("x0", "y0", "x1", "y1")] for line in of_width(page.lines, BAR)]
    return [e for e in ends if abs(e[3 - axis] - e[1 - axis]) < 1e-3]


def dashed(stroke):
    """Seams are dotted in a cutting line's width; cutting lines are full."""
    return bool(stroke.get("dash") and stroke["dash"][0])


def pieces_of(stroke, height, scale):
    """A stroke's pieces, each start, two control points and end, mm as printed, y up; control points of a straight one at its thirds."""
    out, at = [], None
    for operator, *told in stroke["path"]:
        ends = [np.array([x, height - y]) * MM * scale for x, y in told]
        if operator in ("l", "c"):
            inner = ends[:2] if operator == "c" else [at + (ends[0] - at) / 3, at + 2 * (ends[0] - at) / 3]
            out.append(np.array([at, *inner, ends[-1]]))
        if ends:
            at = ends[-1]
    return out


def cuts(page, scale):
    """Pieces of all cutting lines of a page: full, of their width, bent or of three sides at least (arrows have two)."""
    height = float(page.height)
    found = []
    for curve in of_width(page.curves, CUT):
        operators = [step[0] for step in curve["path"]]
        if not dashed(curve) and ("c" in operators or operators.count("l") > 2):
            found.extend(pieces_of(curve, height, scale))
    return np.array(found).reshape(-1, 4, 2)


def flat(pieces):
    """Points of cubics, 33 a piece."""
    t = np.linspace(0, 1, 33)[:, None]
    weights = np.hstack([(1 - t) ** 3, 3 * (1 - t) ** 2 * t, 3 * (1 - t) * t**2, t**3])
    return np.einsum("tk,nkd->ntd", weights, pieces).reshape(-1, 2)


class Drawn:
    """The pieces of the SVG's cutting lines: the same curves, by which a page's place on the common sheet is found."""

    def __init__(self, where, height):
        root = ElementTree.parse(where / "pattern.svg").getroot()
        cut = next(group for group in root.iter(f"{SPACE}g") if group.get("id") == "cut")
        found = []
        for path in cut.iter(f"{SPACE}path"):
            for s in parse_path(path.get("d")):
                thirds = (s.start + (s.end - s.start) / 3, s.start + 2 * (s.end - s.start) / 3)
                inner = (s.control1, s.control2) if isinstance(s, CubicBezier) else thirds
                found.append([[p.real, height - p.imag] for p in (s.start, *inner, s.end)])
        pieces = np.array(found)
        self.starts = pieces[:, 0]
        self.tree = cKDTree(self.shape(pieces))

    @staticmethod
    def shape(pieces):
        return (pieces[:, 1:] - pieces[:, :1]).reshape(len(pieces), 6)

    def moves(self, pieces):
        """Moves by which one of the longest pieces of a page meets one of the same shape; several, since pieces can be alike."""
        longest = np.argsort(-np.linalg.norm(pieces[:, 3] - pieces[:, 0], axis=1))[:6]
        for piece in pieces[longest]:
            distance, index = self.tree.query(self.shape(piece[None])[0], k=8)
            for near in index[distance < 0.02]:
                yield self.starts[near] - piece[0]


class Outlines:
    """The outlines of the report as they lie on the common sheet, made ready for finding distances."""

    def __init__(self, rings):
        joined = [np.vstack([ring, ring[:1]]) for ring in rings]
        self.edges = STRtree(np.concatenate([linestrings(np.stack([line[:-1], line[1:]], axis=1)) for line in joined]))

    def away(self, corners):
        """Farthest distance of any corner from the outlines."""
        return self.edges.query_nearest(points(corners), all_matches=False, return_distance=True)[1].max()


def hold_against(name, pieces, drawn, outlines):
    """All points of a page's cutting lines must lie on the outlines of the report after one and the same move."""
    corners = flat(pieces)
    best = np.inf
    for move in drawn.moves(pieces):
        # A few points tell whether a move is worth a full look.
        if outlines.away(corners[:: 1 + len(corners) // 20] + move) < 0.02:
            best = min(best, outlines.away(corners + move))
        if best < 0.02:
            break
    checks.near(f"{name}: {len(pieces)} pieces of cutting lines, farthest from their outlines", best, 0, 0.02)


def run_through(row):
    """First and last pixel of the run of ink that goes through the middle of a row."""
    blank = np.flatnonzero(~row)
    middle = len(row) // 2
    return blank[blank < middle].max(initial=-1) + 1, blank[blank >= middle].min(initial=len(row)) - 1


def painted(name, page, bar, axis):
    """A bar as painted at 600 dpi: where its middle line's ink begins and ends, round caps of half a width with it, within one pixel."""
    pixel = 25.4 / DPI
    around = 4.0
    box = (bar[0] - around, bar[1] - around, bar[2] + around, bar[3] + around)
    width, height = (side * MM for side in page.get_size())
    cropped = page.render(scale=DPI / 72, grayscale=True, crop=(box[0] / MM, box[1] / MM, (width - box[2]) / MM, (height - box[3]) / MM))
    ink = cropped.to_numpy().squeeze() < 128
    rows = ink if axis == 0 else ink.T[:, ::-1]
    # Round caps reach farthest in the middle of the line's width; words beside the bar are no part of its run of ink.
    middle = rows.shape[0] // 2
    begins, ends = max((run_through(row) for row in rows[middle - 2 : middle + 3]), key=lambda run: run[1] - run[0])
    length = bar[axis + 2] - bar[axis] + BAR
    checks.near(f"{name}: pixels of ink", int(ends - begins + 1), length / pixel, 1, "pixels")
    checks.near(f"{name}: first pixel", int(begins), (around - BAR / 2) / pixel, 1, "pixels")


for name, where in sets():
    told = report(where)
    printed = told["printed"]
    bar_mm = 200 if PAPERS[printed["paper"]][0] >= 280 else 100  # wide paper has longer bars (docs/method/sheets.md)
    scale = np.array([printed["barAcrossMm"], printed["barUpMm"]]) / 100
    outlines = Outlines([placed(piece) for piece in told["pieces"]])
    drawn = Drawn(where, told["sheet"]["heightMm"]) if "cut" in printed["layers"] else None
    held = 0
    pages = pypdfium2.PdfDocument(where / "pattern.pdf")
    with pdfplumber.open(where / "pattern.pdf") as pdf:
        checks.true(f"{name}: has pages", len(pdf.pages) > 1, f"{len(pdf.pages)}")
        for number, page in enumerate(pdf.pages):
            here = f"{name} page {page.page_number}"
            checks.near(f"{here}: width", float(page.width) * MM, PAPERS[printed["paper"]][0], 0.01)
            checks.near(f"{here}: height", float(page.height) * MM, PAPERS[printed["paper"]][1], 0.01)
            checks.true(f"{here}: no unit of its own", "UserUnit" not in page.page_obj.attrs)
            for axis, way in enumerate(("across", "up")):
                found = bars(page, axis)
                checks.near(f"{here}: bars {way}", len(found), 1, 0, "")
                bar = max(found, key=lambda e: e[axis + 2] - e[axis], default=[0, 0, 0, 0])
                checks.near(f"{here}: bar {way} as printed", (bar[axis + 2] - bar[axis]) * scale[axis], bar_mm, 0.02)
                # Every page of the example, one of each other set.
                if name == "example" or number == len(pdf.pages) - 1:
                    painted(f"{here}: bar {way} at {DPI} dpi", pages[number], bar, axis)
            pieces = cuts(page, scale)
            if drawn and len(pieces):
                hold_against(here, pieces, drawn, outlines)
                held += 1
    if drawn:
        checks.true(f"{name}: pages whose cutting lines were held against the report", held >= len(pdf.pages) // 2, f"{held}")
checks.end()
