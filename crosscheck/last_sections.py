"""Lengths and tape girths of the example last, by trimesh sections and scipy hulls; definitions: docs/method/last.md."""

import json

import numpy as np
import trimesh
from scipy.spatial import ConvexHull

from checks import Checks, folder

checks = Checks("Sections of the example last, by trimesh")
mesh = trimesh.load(folder() / "last.stl")
last = json.loads((folder() / "last.json").read_text())
ours = last["measures"]
point = {name: np.asarray(value) for name, value in last.items() if name.endswith(("Point", "Medial", "Lateral"))}


def hull_length(points):
    """Perimeter of the convex hull of points in a plane: what a tape pulled tight shows."""
    hull = ConvexHull(points)
    return hull.area  # in the plane scipy's "area" is the perimeter


def girth(at, normal):
    """Tape girth in the plane through a point; the largest loop counts."""
    section = mesh.section(plane_origin=at, plane_normal=normal)
    plane, _ = section.to_2D()
    return max(hull_length(loop) for loop in plane.discrete)


def square_to_ridge(at):
    """Normal of the plane through a point of the centre ridge: along the chord from 10 mm before it to 10 mm behind."""
    ridge = np.asarray(last["centreRidge"]["points"]).reshape(-1, 3)
    arc = np.asarray(last["centreRidge"]["arc"])
    here = arc[np.argmin(np.linalg.norm(ridge - at, axis=1))]
    ends = [[np.interp(s, arc, ridge[:, k]) for k in range(3)] for s in (here - 10, here + 10)]
    chord = np.subtract(ends[1], ends[0])
    chord[1] = 0
    return chord / np.linalg.norm(chord)


checks.true("the mesh is closed", mesh.is_watertight)
checks.true("all of it faces outward", mesh.is_winding_consistent and mesh.volume > 0)
checks.near("Euler number (a body without handles)", mesh.euler_number, 2, 0, "")
low, high = mesh.bounds
checks.near("stick length", high[0] - low[0], ours["stickLength"], 0.05)

joint = point["jointLateral"] - point["jointMedial"]
checks.near("joint girth", girth(point["jointMedial"], np.cross([0, 0, 1], joint)), ours["jointGirth"], 0.1)
checks.near("waist girth", girth(point["waistPoint"], square_to_ridge(point["waistPoint"])), ours["waistGirth"], 0.3)
checks.near("instep girth", girth(point["instepPoint"], square_to_ridge(point["instepPoint"])), ours["instepGirth"], 0.3)
heel = point["instepPoint"] - point["seatPoint"]
checks.near("heel girth", girth(point["seatPoint"], np.cross([0, 1, 0], heel)), ours["heelGirth"], 0.1)
checks.near("ball width", abs(joint[1]), ours["ballWidth"], 0.05)
checks.near("seat width", abs(point["seatLateral"][1] - point["seatMedial"][1]), ours["seatWidth"], 0.05)

feather = np.asarray(last["feather"]).reshape(-1, 3)
around = np.linalg.norm(np.roll(feather, -1, axis=0) - feather, axis=1).sum()
checks.near("feather line, all round", around, ours["featherLength"], 0.1)
away = trimesh.proximity.closest_point(mesh, feather[::4])[1]
checks.near("feather line lies on the surface", away.max(), 0, 0.3)
checks.end()
