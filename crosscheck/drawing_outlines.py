"""Outlines and units of pattern.dxf (by ezdxf) and pattern.svg (by svgpathtools) against report.json."""

import re
from xml.etree import ElementTree

import ezdxf
import numpy as np
from shapely import Polygon
from svgpathtools import parse_path

from checks import Checks, folder, label, placed, report

checks = Checks("DXF by ezdxf, SVG by svgpathtools")
told = report()


def compare(kind, rings):
    """Every piece must be found among the rings, once."""
    left = [Polygon(ring) for ring in rings if len(ring) > 2]
    checks.near(f"{kind}: closed cutting lines", len(left), len(told["pieces"]), 0, "")
    for piece in told["pieces"]:
        want = Polygon(placed(piece))
        best = min(left, key=want.hausdorff_distance)
        checks.near(f"{kind}: {label(piece)}, farthest point", best.hausdorff_distance(want), 0, 0.01)
        left.remove(best)


drawing = ezdxf.readfile(folder() / "pattern.dxf")
audit = drawing.audit()
checks.near("DXF: errors found by the audit", len(audit.errors), 0, 0, "")
checks.near("DXF: faults mended by the audit", len(audit.fixes), 0, 0, "")
checks.near("DXF: $INSUNITS says millimetres", drawing.header["$INSUNITS"], 4, 0, "")
lines = [entity for entity in drawing.modelspace().query('LWPOLYLINE[layer=="cut"]') if entity.closed]
compare("DXF", [np.array([point[:2] for point in line.get_points()]) for line in lines])

root = ElementTree.parse(folder() / "pattern.svg").getroot()
width, height = (float(re.fullmatch(r"([\d.]+)mm", root.get(side)).group(1)) for side in ("width", "height"))
box = [float(value) for value in root.get("viewBox").split()]
checks.near("SVG: user units per millimetre, across", box[2] / width, 1, 1e-9, "")
checks.near("SVG: user units per millimetre, up", box[3] / height, 1, 1e-9, "")
space = "{http://www.w3.org/2000/svg}"
cut = next(group for group in root.iter(f"{space}g") if group.get("id") == "cut")
rings = []
for path in cut.iter(f"{space}path"):
    curve = parse_path(path.get("d"))
    if curve.isclosed():
        rings.append(np.array([[segment.start.real, height - segment.start.imag] for segment in curve]))
compare("SVG", rings)
checks.end()
