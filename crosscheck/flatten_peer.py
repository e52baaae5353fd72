"""Energy of our flattening against libigl's SLIM from the same start; energies computed here by numpy's SVD."""

import json
import subprocess
import time
from pathlib import Path

import igl
import numpy as np

from checks import Checks, folder

ITERATIONS = 200
FEWER = 50  # on a large scan that SLIM has long brought to rest by then
root = Path(__file__).resolve().parent.parent


def run(script):
    subprocess.run(["node", root / "node_modules/tsx/dist/cli.mjs", root / "crosscheck" / script, folder()], check=True, cwd=root)


def energy(points, triangles, flat):
    """Area mean of s1^2 + s2^2 + s1^-2 + s2^-2 of the map from space into the plane; infinite where a triangle is folded."""
    p, q = (points[triangles[:, k]] - points[triangles[:, 0]] for k in (1, 2))
    side = np.linalg.norm(p, axis=1)
    along = np.einsum("ij,ij->i", p, q) / side
    height = np.linalg.norm(np.cross(p, q), axis=1) / side
    u, v = (flat[triangles[:, k]] - flat[triangles[:, 0]] for k in (1, 2))
    if np.any(u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0] <= 0):
        return np.inf
    first = u / side[:, None]
    second = (v - first * along[:, None]) / height[:, None]
    s = np.linalg.svd(np.stack([first, second], axis=2), compute_uv=False)
    area = side * height / 2
    return float(np.sum(area * np.sum(s**2 + s**-2, axis=1)) / area.sum())


def apart(a, b):
    """Largest distance of like points after the best rigid motion."""
    a, b = a - a.mean(axis=0), b - b.mean(axis=0)
    u, _, vt = np.linalg.svd(a.T @ b)
    return float(np.linalg.norm(a @ (u @ vt) - b, axis=1).max())


def slim(points, triangles, start):
    """Their map and the time it took, ms."""
    before = time.perf_counter()
    data = igl.slim_precompute(
        np.asfortranarray(points),
        np.asfortranarray(triangles),
        np.asfortranarray(start),
        igl.MappingEnergyType.SYMMETRIC_DIRICHLET,
        np.zeros(0, dtype=np.int32),
        np.zeros((0, 2), order="F"),
        0.0,
    )
    flat = igl.slim_solve(data, FEWER if len(triangles) > 30000 else ITERATIONS)[:, :2]
    return flat, 1000 * (time.perf_counter() - before)


checks = Checks(f"Flattening, by libigl's SLIM with {ITERATIONS} iterations ({FEWER} above 30,000 triangles) from the same start")
run("flatten-export.ts")
cases = json.loads((folder() / "flatten.json").read_text(encoding="utf-8"))
gaps, sprung = {}, []
for case in cases:
    name = case["name"]
    points = np.asarray(case["positions"]).reshape(-1, 3)
    triangles = np.asarray(case["triangles"], dtype=np.int32).reshape(-1, 3)
    start, ours = (np.asarray(case[k]).reshape(-1, 2) for k in ("start", "uv"))
    theirs, took = slim(points, triangles, start)
    e_ours, e_theirs = energy(points, triangles, ours), energy(points, triangles, theirs)
    checks.true(f"{name}: no triangle is folded over", np.isfinite(e_ours) and case["flipped"] == 0)
    checks.near(f"{name}: our energy by SVD", e_ours, case["energy"], 1e-9 * case["energy"], "")
    checks.true(f"{name}: our energy is no higher", e_ours <= e_theirs * (1 + 1e-9), f"{e_ours:.9f} ours, {e_theirs:.9f} SLIM, start {energy(points, triangles, start):.6f}")
    print(f"         time: {case['ms']:.0f} ms ours in {case['steps']} steps, {took:.0f} ms SLIM, ratio {took / case['ms']:.1f}; SLIM's points still {apart(theirs, ours):.2f} mm from ours", flush=True)
    if case.get("heel"):
        a, b = case["heel"]
        gaps[name] = float(np.linalg.norm(theirs[a] - theirs[b]))
        sprung.append((name, points, triangles, theirs, float(np.linalg.norm(ours[a] - ours[b]))))

# What is left between the two once the soft mode, the spring, is taken out: ours with its heel ends tied to their distance.
(folder() / "gaps.json").write_text(json.dumps(gaps), encoding="utf-8")
run("flatten-tied.ts")
tied = json.loads((folder() / "tied.json").read_text(encoding="utf-8"))
for name, points, triangles, theirs, gap in sprung:
    ours = np.asarray(tied[name]).reshape(-1, 2)
    left = apart(theirs, ours)
    checks.true(f"{name}: but for the spring the two are one", left < 0.5, f"heel gap {gap:.2f} mm ours, {gaps[name]:.2f} theirs; {left:.3f} mm apart with ours tied to theirs")
checks.end()
