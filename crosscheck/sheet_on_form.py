"""A sheet pulled over a round form, assembled by scikit-fem from its weak form and brought to rest by Newton's method."""

import numpy as np
from scipy.sparse import coo_matrix, diags
from scipy.sparse.linalg import splu
from skfem import Basis, BilinearForm, ElementTriP1, ElementVector, Functional, LinearForm, MeshTri

from sheet_law import Layers


LONGEST = 4.0  # way of a vertex in one step, mm
REST = 1e-10  # largest force left, N


def strain(f):
    """Green's strain (e1, e2, 2 e12) of F (3, 2, ...), the gradient of the place in space over the flat."""
    c = np.einsum("ai...,aj...->ij...", f, f)
    return np.stack([(c[0, 0] - 1) / 2, (c[1, 1] - 1) / 2, c[0, 1]])


def varied(f, df):
    """Change of that strain with a change of F."""
    c = np.einsum("ai...,aj...->ij...", f, df)
    return np.stack([c[0, 0], c[1, 1], c[0, 1] + c[1, 0]])


class Membrane:
    """Total Lagrangian; unknowns are the places of the vertices in space, three each."""

    def __init__(self, flat, triangles, law):
        mesh = MeshTri(np.ascontiguousarray(flat.T), np.ascontiguousarray(triangles.T), sort_t=False)
        self.basis = Basis(mesh, ElementVector(ElementTriP1(), 3), intorder=0)
        self.dofs = self.basis.nodal_dofs  # 3 x vertices
        self.law = law
        ones = LinearForm(lambda v, w: v[0] + v[1] + v[2]).assemble(self.basis)
        self.areas = ones[self.dofs[0]]

    def vector(self, places):
        """Places or forces, vertices x 3, as unknowns."""
        out = np.zeros(self.basis.N)
        out[self.dofs] = places.T
        return out

    def places(self, x):
        return x[self.dofs].T

    def at(self, x):
        return {"x": self.basis.interpolate(x)}

    def energy(self, x):
        return Functional(lambda w: self.law.energy(strain(w["x"].grad))).assemble(self.basis, **self.at(x))

    def forces(self, x):
        """Derivative of the energy."""
        return LinearForm(lambda v, w: np.einsum("i...,i...->...", self._stress(w)[0], varied(w["x"].grad, v.grad))).assemble(self.basis, **self.at(x))

    def stiffness(self, x):
        f = self.basis.interpolate(x).grad
        s, d = self.law.stress(strain(f))
        s2 = np.stack([np.stack([s[0], s[2]]), np.stack([s[2], s[1]])])

        def form(u, v, w):
            material = np.einsum("i...,ij...,j...->...", varied(f, v.grad), d, varied(f, u.grad))
            return material + np.einsum("ai...,ij...,aj...->...", v.grad, s2, u.grad)

        return BilinearForm(form).assemble(self.basis).tocsc()

    def state(self, x):
        """Principal stretches, larger then smaller, and S11 S22 S12, a triangle each."""
        f = self.basis.interpolate(x).grad
        c = np.einsum("ai...,aj...->...ij", f, f)[:, 0]
        least, most = np.sqrt(np.linalg.eigvalsh(c)).T
        return most, least, self.law.stress(strain(f))[0][:, :, 0].T

    def _stress(self, w):
        return self.law.stress(strain(w["x"].grad))


class Round:
    """One-sided contact with a cylinder upright at the origin or a ball there: area/2 * stiffness * depth^2 at each vertex."""

    def __init__(self, form, stiffness, areas):
        self.axes = 0 if form is None else 3 if form["kind"] == "sphere" else 2
        self.radius = 0.0 if form is None else form["radius"]
        self.stiff = stiffness * areas

    def depth(self, places):
        """How far each vertex is in, and the way out."""
        flat = np.where(np.arange(3) < self.axes, places, 0.0)
        size = np.linalg.norm(flat, axis=1)
        return np.maximum(0, self.radius - size), flat / np.maximum(size, 1e-12)[:, None], np.maximum(size, 1e-12)

    def energy(self, places):
        return float(np.sum(self.stiff * self.depth(places)[0] ** 2) / 2)

    def forces(self, places):
        """Derivative of the energy, its 3 x 3 second derivatives, normal forces and normals."""
        depth, normal, size = self.depth(places)
        force = self.stiff * depth
        out = normal[:, :, None] * normal[:, None, :]
        across = np.diag((np.arange(3) < self.axes).astype(float)) - out
        blocks = np.where(depth > 0, self.stiff, 0.0)[:, None, None] * out - (force / size)[:, None, None] * across
        return -force[:, None] * normal, blocks, force, normal


class Problem:
    """Membrane, form, dead forces, and tacks as springs; with `rough` all that touches slides round the cylinder against friction."""

    def __init__(self, case, form_stiffness, tack_stiffness, rough=0.0):
        read = lambda key, width, kind=float: np.asarray(case[key], dtype=kind).reshape(-1, width)
        self.membrane = Membrane(read("flat", 2), read("triangles", 3, int), Layers(case["layers"]))
        self.form = Round(case.get("form"), form_stiffness, self.membrane.areas)
        self.load = read("load", 3)
        self.tack = np.zeros(len(self.load))
        self.to = np.zeros_like(self.load)
        tacked = np.asarray(case["tacked"], dtype=int)
        self.tack[tacked] = tack_stiffness
        self.to[tacked] = read("at", 3)
        self.rough = rough

    def energy(self, x):
        places = self.membrane.places(x)
        return self.membrane.energy(x) + self.form.energy(places) - np.sum(self.load * places) + np.sum(self.tack * np.sum((places - self.to) ** 2, axis=1)) / 2

    def residual(self, x):
        places = self.membrane.places(x)
        contact, blocks, force, normal = self.form.forces(places)
        points = contact - self.load + self.tack[:, None] * (places - self.to)
        blocks = blocks + self.tack[:, None, None] * np.eye(3)
        if self.rough:
            # Friction points back round the cylinder; it falls by stiffness * d(height), and turns with the place.
            turn = np.array([[0.0, -1, 0], [1, 0, 0], [0, 0, 0]])
            along = normal @ turn.T
            touching = np.where(force > 0, self.form.stiff, 0.0)
            size = self.form.depth(places)[2]
            turning = turn @ (np.diag([1.0, 1, 0]) - normal[:, :, None] * normal[:, None, :]) / size[:, None, None]
            points = points + self.rough * force[:, None] * along
            blocks = blocks + self.rough * (force[:, None, None] * turning - touching[:, None, None] * along[:, :, None] * normal[:, None, :])
        return self.membrane.forces(x) + self.membrane.vector(points), blocks

    def matrix(self, x, blocks):
        rows = np.repeat(self.membrane.dofs.T[:, :, None], 3, axis=2)
        columns = np.repeat(self.membrane.dofs.T[:, None, :], 3, axis=1)
        size = self.membrane.basis.N
        return self.membrane.stiffness(x) + coo_matrix((blocks.ravel(), (rows.ravel(), columns.ravel())), shape=(size, size)).tocsc()

    def reactions(self, x):
        return self.tack[:, None] * (self.to - self.membrane.places(x))

    def settle(self, start, least=REST):
        """From any start without folds: first on a soft form, where it matters less which vertices touch."""
        stiff, x, steps = self.form.stiff, self.membrane.vector(start), 0
        for share in (0.001, 0.01, 0.1, 1.0):
            self.form.stiff = share * stiff
            x, more, left = self.newton(x, least=least if share == 1 else 1e-3)
            steps += more
        return x, steps, left

    def newton(self, x, guarded=True, least=REST, most=200):
        """Newton's method, guarded by the energy with a shift of the matrix while it asks for one. Returns unknowns, steps and the largest force left, N."""
        shift = 0.01 if guarded else 0.0
        lumped = diags(self.membrane.vector(np.repeat(self.membrane.areas[:, None], 3, axis=1)))
        r, blocks = self.residual(x)
        for step in range(most):
            left = np.abs(r).max()
            if left < least:
                return x, step, left
            matrix = self.matrix(x, blocks)
            while True:
                dx = splu((matrix + shift * lumped).tocsc()).solve(-r)
                next_r, next_blocks = self.residual(x + dx)
                # Near the end rounding hides by how much the energy falls.
                better = not guarded or (np.abs(next_r).max() < left if left < 1e-3 else self.energy(x + dx) < self.energy(x))
                if better and np.abs(dx).max() < LONGEST:
                    break
                shift = max(10 * shift, 1e-9)
                if shift > 1e6:
                    return x, step, left
            x, r, blocks = x + dx, next_r, next_blocks
            shift = 0.0 if shift < 1e-7 else shift / 10
        return x, most, np.abs(r).max()
