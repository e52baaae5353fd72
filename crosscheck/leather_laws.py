"""The laws of leather once more from their formulas: pleats by cvxopt's convex solver, strips by scipy's root finder, caps by scipy's boundary value solver."""

import json
import subprocess
from pathlib import Path

import numpy as np
from cvxopt import matrix, solvers
from scipy.integrate import solve_bvp
from scipy.optimize import brentq, fsolve

from checks import Checks, folder
from sheet_law import Layers

root = Path(__file__).resolve().parent.parent
solvers.options.update(show_progress=False, abstol=1e-11, reltol=1e-11, feastol=1e-11)


class Leather:
    """Layers of leather as one sheet, each turned by its angle."""

    def __init__(self, layers):
        self.law = Layers([{"numbers": numbers, "turnDeg": np.rad2deg(angle)} for numbers, angle in layers])

    def answer(self, e):
        """Energy, stress, stiffness."""
        return self.law.energy(e), *self.law.stress(e)

    def strip(self, angle, stretch):
        """Force per flat width and width of a strip with free edges."""
        c, s = np.cos(angle), np.sin(angle)
        along, across, mixed = np.array([c * c, s * s, 2 * c * s]), np.array([s * s, c * c, -2 * c * s]), np.array([-c * s, c * s, c * c - s * s])
        e1 = (stretch**2 - 1) / 2

        def strain(x):
            return e1 * along + x[0] * across + x[1] * mixed

        def free(x):
            stress = self.answer(strain(x))[1]
            return [stress @ across, stress @ mixed]

        x = fsolve(free, [-0.4 * e1, 0.0], xtol=1e-13)
        width = np.sqrt(stretch**2 * (1 + 2 * x[0]) - x[1] ** 2) / stretch
        # Work conjugate of the strain along: nᵀ S n.
        s11, s22, s12 = self.answer(strain(x))[1]
        return stretch * (c * c * s11 + s * s * s22 + 2 * c * s * s12), width

    def price(self, limit, share=0.02):
        """Push at which pleats begin, and the price of deeper ones."""
        stretch = np.sqrt(1 + 2 * limit)
        angles = np.arange(8) * np.pi / 8
        push = np.array([-self.strip(a, stretch)[0] / stretch for a in angles])
        design = np.stack([np.cos(angles) ** 2, np.sin(angles) ** 2, 2 * np.sin(angles) * np.cos(angles)], 1)
        sigma = np.linalg.lstsq(design, push, rcond=None)[0]
        return sigma, share / (1 - share) * (sigma[0] + sigma[1]) / 2 / -limit

    def gathered(self, e, sigma, b):
        """Energy and stress with pleats: the least over positive A by an interior-point method; and the larger principal value of A."""
        # x = (a11, a22, 2 a12); A ⪰ 0 as a semidefinite cone.
        metric = np.diag([1.0, 1.0, 0.5])

        def f(x=None, z=None):
            if x is None:
                return 0, matrix([0.05, 0.05, 0.0])
            a = np.array(x).ravel()
            energy, stress, stiffness = self.answer(e + a)
            value = energy + sigma @ a + 0.5 * b * a @ metric @ a
            slope = matrix((stress + sigma + b * metric @ a).reshape(1, 3))
            if z is None:
                return value, slope
            return value, slope, matrix(z[0] * (stiffness + b * metric))

        cone = matrix([[-1.0, 0.0, 0.0, 0.0], [0.0, 0.0, 0.0, -1.0], [0.0, -0.5, -0.5, 0.0]])
        a = np.array(solvers.cp(f, G=cone, h=matrix(0.0, (4, 1)), dims={"l": 0, "q": [], "s": [2]})["x"]).ravel()
        value = self.answer(e + a)[0] + sigma @ a + 0.5 * b * a @ metric @ a
        return value, self.answer(e + a)[1], (a[0] + a[1]) / 2 + np.hypot((a[0] - a[1]) / 2, a[2] / 2)


def ring(n, radial, cap):
    """Flat radii of the rims of a holed cap: (r, T1) over the angle, T1 free at the hole and pulled at the rim."""
    law = Leather([(n, 0.0)])
    radius, alpha, hole = cap["R"], cap["alpha"], cap["hole"]

    def stress(l1, l2):
        e = np.array([(l1 * l1 - 1) / 2, (l2 * l2 - 1) / 2])
        s = law.answer(np.array([*(e if radial == "first" else e[::-1]), 0.0]))[1]
        return (s[0], s[1]) if radial == "first" else (s[1], s[0])

    def along(r, t1, theta):
        l2 = radius * np.sin(theta) / r
        l1 = brentq(lambda x: x * stress(x, l2)[0] / l2 - t1, 0.5, 2.0, xtol=1e-14)
        return l1, l2

    def slope(theta, y):
        out = np.zeros_like(y)
        for i, (t, r, t1) in enumerate(zip(theta, *y)):
            l1, l2 = along(r, t1, t)
            out[:, i] = radius / l1, (l2 * stress(l1, l2)[1] / l1 - t1) / np.tan(t)
        return out

    theta = np.linspace(hole, alpha, 40)
    solved = solve_bvp(slope, lambda a, b: np.array([a[1], b[1] - cap["pull"]]), theta, np.stack([radius * theta * 0.95, cap["pull"] * (theta - hole) / (alpha - hole)]), tol=1e-8, max_nodes=5000)
    l1, l2 = along(*solved.y[:, -1], alpha)
    return solved.y[0, -1], solved.y[0, 0], l2 * stress(l1, l2)[1] / l1


checks = Checks("Laws of leather against cvxopt and scipy")
subprocess.run(["node", root / "node_modules/tsx/dist/cli.mjs", root / "crosscheck/leather-export.ts", folder()], check=True, cwd=root)
told = json.loads(Path(folder(), "leather.json").read_text())
both = Leather([(told["upper"], told["turns"][0]), (told["lining"], told["turns"][1])])
sigma, b = both.price(told["limit"])

worst = {"plain energy": 0.0, "plain stress": 0.0, "gathered energy": 0.0, "gathered stress": 0.0, "pleats": 0.0}
for one in told["answers"]:
    e = np.array(one["strain"])
    energy, stress, _ = both.answer(e)
    value, pushed, deep = both.gathered(e, sigma, b)
    for name, off in [
        ("plain energy", abs(energy - one["plain"][0])),
        ("plain stress", np.abs(stress - one["plain"][1:]).max()),
        ("gathered energy", abs(value - one["gathered"][0])),
        ("gathered stress", np.abs(pushed - one["gathered"][1:]).max()),
        ("pleats", abs(deep - one["pleats"])),
    ]:
        worst[name] = max(worst[name], off)
in_pleats = sum(one["pleats"] > 0 for one in told["answers"])
checks.true("strains with and without pleats", 15 <= in_pleats <= 55, f"{in_pleats} of {len(told['answers'])} in pleats")
for name, allowed in [("plain energy", 1e-11), ("plain stress", 1e-10), ("gathered energy", 1e-7), ("gathered stress", 2e-4), ("pleats", 1e-4)]:
    checks.true(f"{name} of two layers, largest difference", worst[name] <= allowed, f"{worst[name]:.1e}, allowed {allowed:g}")
for strip in told["strips"]:
    force, width = both.strip(np.radians(strip["degrees"]), strip["stretch"])
    checks.near(f"force of a strip at {strip['degrees']} degrees, 8 % longer", force, strip["forcePerMm"], 1e-8, "N/mm")
    checks.near("its width", width, strip["width"], 1e-8, "of the flat one")
for cap in told["caps"]:
    outer, inner, hoop = ring(told["upper"], cap["radial"], cap)
    name = "along" if cap["radial"] == "first" else "round"
    checks.near(f"holed cap, least stretch {name}: flat radius of the rim", outer, cap["radius"], 1e-5)
    checks.near("flat radius of its hole", inner, cap["inner"], 1e-5)
    checks.near("force round the rim", hoop, cap["hoop"], 1e-5, "N/mm")
checks.end()
