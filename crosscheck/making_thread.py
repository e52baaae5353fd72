"""Thread of the seams, by the way it runs through leather stitch by stitch; lines of stitches against what is drawn in pattern.svg and pattern.dxf."""

from itertools import combinations
from xml.etree import ElementTree

import ezdxf
import numpy as np
from ezdxf.path import make_path
from shapely import LineString, MultiLineString, line_interpolate_point
from shapely.ops import split
from svgpathtools import parse_path

from checks import Checks, report, sets

SPACE = "{http://www.w3.org/2000/svg}"
# Stitches to the cm, throw of a zigzag, ends left at each row by each thread, waste: docs/method/thread.md.
PER_CM = {"topline": 5.5, "closing": 4.5, "lapped": 4.5, "lining": 4.5, "trimming": 4}
THROW, END, WASTE = 3, 60, 0.15
STITCH_DASH = "0.6 1.8"


def thread_of(stitches, length, across, stack):
    """Needle and bobbin thread of so many stitches: both surfaces' points joined in space, and at each hole the way through the stack by each thread's half, down and up."""
    holes = np.array([[k * length, across * (k % 2)] for k in range(stitches + 1)])
    on_top = np.linalg.norm(np.diff(holes, axis=0), axis=1).sum()
    return 2 * on_top + stitches * (2 * stack / 2 + 2 * stack / 2)


def thread(checks, name, told):
    need, lines = told["making"]["thread"], told["stitching"]
    seams = {seam["name"]: seam for seam in need["seams"]}
    checks.near(f"{name}: seams that take thread", len(seams), len(lines), 0, "")
    total = ends = 0
    for line in lines:
        stack = sum(ply["mm"] * ply["count"] for ply in line["plies"])
        checks.near(f"{name}, {line['name']}: stack of its plies", stack, line["stackMm"], 1e-4)
        seam_mm, step = 2 * line["rows"] * line["lengthMm"], 10 / PER_CM[line["use"]]
        ratio = thread_of(100, step, THROW if line["stitch"] == "zigzag" else 0, stack) / (100 * step)
        checks.near(f"{name}, {line['name']}: {line['stitch']} of {step:.2f} mm, thread", ratio * seam_mm, seams[line["name"]]["threadMm"], 0.01)
        total += ratio * seam_mm
        ends += 2 * line["rows"] * 2 * 2 * END
    checks.near(f"{name}: ends of all rows", ends, need["endsMm"], 1e-6)
    checks.near(f"{name}: all thread", (total + ends) * (1 + WASTE), need["totalMm"], 0.1)
    bought = next(one for one in told["making"]["materials"] if one["name"] == "thread")
    checks.near(f"{name}: thread on the list", (total + ends) * (1 + WASTE), bought["gross"], 0.1)
    checks.near(f"{name}: its two threads", need["topMm"] + need["bobbinMm"], need["totalMm"], 1e-3)
    checks.near(f"{name}: number 60 by tex, threefold metric", 3 * 1000 / need["ticket"], need["tex"], 1e-9, "tex")


def drawn(where, side="right"):
    """Paths of one side in the SVG, by group and piece: what is drawn, its dashes, its fine points."""
    out = []
    for group in ElementTree.parse(where / "pattern.svg").getroot().iter(f"{SPACE}g"):
        for path in group.iter(f"{SPACE}path"):
            if path.get("data-side") == side:
                line = parse_path(path.get("d"))
                points = [(z.real, z.imag) for z in (segment.point(k / 16) for segment in line for k in range(16))]
                points.append((line.end.real, line.end.imag))
                out.append((group.get("id"), path.get("data-piece"), path.get("stroke-dasharray"), line.length(), points))
    return out


def seams(checks, name, told, paths):
    """A seam is as long as the mean of its banks' drawn stitch lines; a lap as the one line on the piece that lies beneath."""
    for line in told["stitching"]:
        banks = [long for _, piece, dashes, long, _ in paths if dashes == STITCH_DASH and piece in line["joins"] and long > 20]
        if line["use"] == "lapped" and banks:
            checks.near(f"{name}, {line['name']}: against the line drawn", min(banks, key=lambda mm: abs(mm - line["lengthMm"])), line["lengthMm"], 0.02)
        elif line["use"] != "topline" and len(banks) > 1:
            mean = min((sum(pair) / 2 for pair in combinations(banks, 2)), key=lambda mm: abs(mm - line["lengthMm"]))
            checks.near(f"{name}, {line['name']}: against the mean of its banks as drawn", mean, line["lengthMm"], 0.05)


def longer(line, mm=5):
    """Run on straight at both ends."""
    points = np.asarray(line.coords)
    on = lambda end, before: end + mm * (end - before) / np.linalg.norm(end - before)
    return LineString([on(points[0], points[1]), *points, on(points[-1], points[-2])])


def topline(checks, name, told, paths, where):
    """The row runs beside the fold, inside it, from seam to seam: shapely's offset of the drawn fold lines, cut where it meets a drawn stitch line, else the piece's edge."""
    uppers = {piece["name"] for piece in told["pieces"] if piece["material"] == "upper leather" and not piece.get("net")}
    row = next(line for line in told["stitching"] if line["name"] == "topline")
    folds = [(piece, LineString(points)) for group, piece, _, long, points in paths if group == "fold" and piece in uppers & set(row["joins"]) and long > 40]
    if not folds:
        return
    total = 0
    for piece, fold in folds:
        edge = next(LineString([*points, points[0]]) for group, of, _, _, points in paths if group == "cut" and of == piece)
        seams = [LineString(points) for _, of, dashes, _, points in paths if of == piece and dashes == STITCH_DASH]
        sides = [fold.offset_curve(way * told["pieceSettings"]["stitchInMm"], join_style="mitre") for way in (1, -1)]
        inner = max(sides, key=lambda line: np.mean([edge.distance(line_interpolate_point(line, s, normalized=True)) for s in np.linspace(0.1, 0.9, 81)]))
        total += max(split(longer(inner), MultiLineString([edge, *seams])).geoms, key=lambda part: part.length).length
    checks.near(f"{name}: topline's row beside its fold", total, row["lengthMm"], 0.02)
    layer = [make_path(line) for line in ezdxf.readfile(where / "pattern.dxf").modelspace().query('LWPOLYLINE[layer=="fold"]')]
    flat = [LineString([(p.x, p.y) for p in path.flattening(0.0005)]).length for path in layer]
    for _, fold in folds:
        checks.near(f"{name}: that fold in the DXF", min(flat, key=lambda mm: abs(mm - fold.length)), fold.length, 0.05)


checks = Checks("Thread and lines of stitches, by geometry of our own and by what is drawn")
for name, where in sets():
    told = report(where)
    thread(checks, name, told)
    if {"mark", "fold", "cut"} <= set(told["printed"]["layers"]):
        paths = drawn(where)
        seams(checks, name, told, paths)
        topline(checks, name, told, paths, where)
checks.end()
