"""Outlines, units, layers and words of pattern.dxf (by ezdxf) and pattern.svg (by svgpathtools) against report.json."""

import re
from xml.etree import ElementTree

import ezdxf
import numpy as np
from ezdxf.lldxf.encoding import decode_dxf_unicode
from ezdxf.path import make_path
from ezdxf.tools.text import plain_text
from shapely import Polygon
from svgpathtools import CubicBezier, parse_path

from checks import Checks, label, outline, placed, report, sets

LAYERS = {"cut", "mark", "fold", "text"}
SPACE = "{http://www.w3.org/2000/svg}"
SHARE = 0.0005  # areas and perimeters agree within 0.05 %
FLAT = 0.0005  # how far chords may lie from a curve here, mm

checks = Checks("DXF by ezdxf, SVG by svgpathtools, areas by shapely")


def compare(kind, rings, told):
    """Every piece must be found among the rings, once; as curves they enclose the area that the report tells."""
    left = [Polygon(ring) for ring in rings if len(ring) > 2]
    checks.near(f"{kind}: closed cutting lines", len(left), len(told["pieces"]), 0, "")
    for piece in told["pieces"]:
        want = Polygon(placed(piece)).exterior
        best = min(left, key=lambda found: found.exterior.hausdorff_distance(want))
        checks.near(f"{kind}: {label(piece)}, farthest point", best.exterior.hausdorff_distance(want), 0, 0.01)
        checks.near(f"{kind}: {label(piece)}, area of the curves", best.area, piece["areaMm2"], SHARE * piece["areaMm2"], "mm2")
        checks.near(f"{kind}: {label(piece)}, length of the curves", best.exterior.length, piece["perimeterMm"], SHARE * piece["perimeterMm"])
        left.remove(best)


def dxf(name, where, told):
    drawing = ezdxf.readfile(where / "pattern.dxf")
    audit = drawing.audit()
    checks.near(f"{name} DXF: errors found by the audit", len(audit.errors), 0, 0, "")
    checks.near(f"{name} DXF: faults mended by the audit", len(audit.fixes), 0, 0, "")
    checks.near(f"{name} DXF: $INSUNITS says millimetres", drawing.header["$INSUNITS"], 4, 0, "")
    checks.near(f"{name} DXF: $MEASUREMENT says metric", drawing.header["$MEASUREMENT"], 1, 0, "")
    chosen = set(told["printed"]["layers"])
    space = drawing.modelspace()
    checks.true(f"{name} DXF: layers", {layer.dxf.name for layer in drawing.layers} & LAYERS == chosen, ", ".join(sorted(chosen)))
    checks.true(f"{name} DXF: nothing on other layers", {entity.dxf.layer for entity in space} <= chosen)
    lines = space.query('LWPOLYLINE[layer=="cut"]')
    if "cut" in chosen:
        checks.true(f"{name} DXF: every cutting line is closed", all(line.closed for line in lines), f"{len(lines)}")
        arcs = sum(abs(vertex[4]) > 0 for line in lines for vertex in line.get_points())
        checks.true(f"{name} DXF: curves are arcs", arcs > 0, f"{arcs} of {sum(map(len, lines))} edges")
        compare(f"{name} DXF", [np.array([(p.x, p.y) for p in make_path(line).flattening(FLAT)]) for line in lines], told)
    return [plain_text(decode_dxf_unicode(entity.dxf.text)) for entity in space.query("TEXT")]


def points(path, height):
    """A path of straight pieces and cubics as fine points, y up; no chord farther than FLAT from its curve."""
    out = []
    for segment in path:
        steps = 1
        if isinstance(segment, CubicBezier):
            bend = max(abs(segment.start - 2 * segment.control1 + segment.control2), abs(segment.control1 - 2 * segment.control2 + segment.end))
            steps = max(1, int(np.ceil(np.sqrt(6 * bend / (8 * FLAT)))))
        out.extend(segment.point(k / steps) for k in range(steps))
    return np.array([[p.real, height - p.imag] for p in out])


def svg(name, where, told):
    root = ElementTree.parse(where / "pattern.svg").getroot()
    width, height = (float(re.fullmatch(r"([\d.]+)mm", root.get(side)).group(1)) for side in ("width", "height"))
    box = [float(value) for value in root.get("viewBox").split()]
    checks.near(f"{name} SVG: user units per millimetre, across", box[2] / width, 1, 1e-9, "")
    checks.near(f"{name} SVG: user units per millimetre, up", box[3] / height, 1, 1e-9, "")
    groups = {group.get("id"): group for group in root.iter(f"{SPACE}g")}
    chosen = set(told["printed"]["layers"])
    checks.true(f"{name} SVG: groups", set(groups) == chosen, ", ".join(sorted(groups)))
    if "cut" in chosen:
        paths = [parse_path(path.get("d")) for path in groups["cut"].iter(f"{SPACE}path")]
        curves = sum(isinstance(segment, CubicBezier) for path in paths for segment in path)
        checks.true(f"{name} SVG: curves are cubics", curves > 0, f"{curves} of {sum(map(len, paths))} pieces")
        compare(f"{name} SVG", [points(path, height) for path in paths if path.isclosed()], told)
    return ["".join(text.itertext()) for text in root.iter(f"{SPACE}text")]


for name, where in sets():
    told = report(where)
    for piece in told["pieces"]:
        ring = Polygon(outline(piece))
        checks.near(f"{name}: {label(piece)}, area by shapely", ring.area, piece["areaMm2"], SHARE * piece["areaMm2"], "mm2")
        checks.near(f"{name}: {label(piece)}, perimeter by shapely", ring.length, piece["perimeterMm"], SHARE * piece["perimeterMm"])
    drawn, read = dxf(name, where, told), svg(name, where, told)
    checks.true(f"{name}: DXF and SVG carry the same words, signs of the formats and all", drawn == read and len(drawn) > 0, f"{len(read)} texts")
checks.end()
