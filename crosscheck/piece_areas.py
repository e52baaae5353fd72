"""Areas, perimeters, mirrored twins and allowances of the pieces, by shapely."""

import numpy as np
from shapely import Polygon
from shapely.geometry import LineString

from checks import Checks, label, outline, report

checks = Checks("Pieces of the example pair, by shapely")
told = report()
pieces = {label(piece): piece for piece in told["pieces"]}
polygon = {name: Polygon(outline(piece)) for name, piece in pieces.items()}

for name, piece in pieces.items():
    checks.true(f"{name}: outline is simple", polygon[name].is_valid)
    checks.true(f"{name}: runs counter-clockwise", polygon[name].exterior.is_ccw)
    checks.near(f"{name}: area", polygon[name].area, piece["areaMm2"], 0.05, "mm2")
    checks.near(f"{name}: perimeter", polygon[name].length, piece["perimeterMm"], 0.01)

for name, piece in pieces.items():
    if piece["side"] != "right":
        continue
    twin = pieces[f"left {piece['name']}"]
    mirrored = Polygon(outline(twin) * [1, -1])
    checks.near(f"{piece['name']}: left mirrored lies on right", mirrored.hausdorff_distance(polygon[name]), 0, 1e-3)

# Allowances: how far the cut outline lies outside the net one, seen from every half millimetre of it.
settings = told["pieceSettings"]
net, cut = polygon["right upper, net"], polygon["right upper"]
checks.true("upper: holds the net upper", cut.buffer(1e-6).contains(net))
edge = LineString(cut.exterior.coords)
away = np.array([net.distance(edge.interpolate(s)) for s in np.arange(0, edge.length, 0.5)])
lasting = [value for name, value in settings.items() if name.startswith("lasting")]
checks.near("upper: widest allowance is the largest lasting allowance", away.max(), max(lasting), 0.6)
asked = np.array([*lasting, settings["toplineFoldMm"], settings["backSeamMm"]])
inside = (away > asked.min() - 0.3) & (away < asked.max() + 0.6)
checks.near("upper: share of the edge whose allowance lies in the range asked for", inside.mean(), 1, 0.02, "")
for what, value in (("topline fold", settings["toplineFoldMm"]), ("back seam", settings["backSeamMm"])):
    found = (abs(away - value) < 0.05).sum() * 0.5
    checks.true(f"upper: {what} of {value:g} mm is met along the edge", found > 40, f"{found:.0f} mm of the edge")
checks.end()
