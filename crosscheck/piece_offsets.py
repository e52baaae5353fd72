"""Cut pieces of every cut of the upper, insole, sock and lining against shapely's offsets and booleans of the net."""

import json
import subprocess
from pathlib import Path

import numpy as np
from shapely import LineString, Point, Polygon, unary_union

from checks import Checks, folder

SHARE = 0.0005  # 0.05 % of areas and perimeters
FINE = {"quad_segs": 64}
root = Path(__file__).resolve().parent.parent
subprocess.run(["node", root / "node_modules/tsx/dist/cli.mjs", root / "crosscheck/export-pieces.ts", folder()], check=True, cwd=root)
made = json.loads((folder() / "pieces.json").read_text(encoding="utf-8"))
checks = Checks("Allowances of the example pair, by shapely's buffers and booleans")


def ring(xy):
    return Polygon(np.asarray(xy).reshape(-1, 2))


def line(xy):
    return LineString(np.asarray(xy).reshape(-1, 2))


def same(what, got, want):
    """Area and perimeter of two polygons."""
    checks.near(f"{what}: area", got.area / want.area, 1, SHARE, "of it")
    checks.near(f"{what}: perimeter", got.length / want.length, 1, SHARE, "of it")


def strip(edge):
    """Between an edge and its offset to the right, which is outside on a counter-clockwise outline."""
    if edge["widthMm"] == 0:
        return Polygon()
    return line(edge["xy"]).buffer(-edge["widthMm"], single_sided=True, **FINE).buffer(0)


for panel in made["panels"]:
    name, net, cut = panel["name"], ring(panel["net"]), ring(panel["cut"])
    all_round = net.buffer(made["allRoundMm"], join_style="mitre", mitre_limit=100)
    same(f"{name}, {made['allRoundMm']} mm all round, mitred", all_round, ring(panel["allRound"]))

    checks.true(f"{name}: net and cut outline are simple", net.is_valid and cut.is_valid)
    checks.near(f"{name}: cut less net is what cut has more", cut.difference(net).area / (cut.area - net.area), 1, SHARE, "of it")
    # Away from the corners, where folds are mirrored and margins run on, the piece is its net and a strip along each edge.
    drawn = unary_union([net, *(strip(edge) for edge in panel["edges"])])
    corners = unary_union([Point(edge["xy"][:2]).buffer(1.2 * max(edge["widthMm"], before["widthMm"]) + 3) for before, edge in zip(panel["edges"][-1:] + panel["edges"], panel["edges"])])
    off = cut.symmetric_difference(drawn).difference(corners)
    checks.near(f"{name}: net and strips, {len(panel['edges'])} corners left out, differ from the piece by", off.area / cut.area, 0, SHARE, "of it")

    for edge in panel["edges"]:
        wide, along = edge["widthMm"], line(edge["xy"])
        offset = along if wide == 0 else along.offset_curve(-wide, **FINE)
        middle = [offset.interpolate(s) for s in np.arange(0, offset.length, 1.0)]
        away = [cut.exterior.distance(p) for p in middle if not corners.contains(p)]
        # A lasting edge may be faired by up to 1.2 mm; it is trimmed after lasting.
        allowed = 1.2 if edge["role"] == "feather" else 0.02
        if away:
            checks.near(f"{name}: {edge['role']} lies on its offset by {wide:g} mm, farthest", max(away), 0, allowed)

bottom = made["bottom"]
for part in bottom["parts"]:
    same(f"{part['name']}: {part['inMm']:g} mm inside the bottom", ring(bottom["net"]).buffer(-part["inMm"], **FINE), ring(part["cut"]))

lining = made["lining"]
beyond = ring(lining["cut"]).difference(ring(lining["upper"]).buffer(0.01))
trim = line(lining["topline"]).buffer(lining["trimMm"] + 0.05, **FINE)
checks.near("lining less upper: nothing but the trim at the topline", beyond.difference(trim).area, 0, 0.5, "mm2")
checks.end()
