"""The law of a leather, written from its formula for these checks: energy, stress and stiffness on arrays of strains."""

import numpy as np


class Leather:
    """W = k1 (s Q/2 + (1 - s)(sqrt(Q + t^2) - t)^2/2), Q = E : C E / k1, C the stiffness of the strips' compliance turned by an angle."""

    def __init__(self, numbers, turn_deg=0.0):
        k1, k2, k45, nu = (numbers[key] for key in ("along", "across", "bias", "poisson"))
        self.k, self.toe, self.early = k1, numbers["toe"], numbers["early"]
        compliance = np.array([[1 / k1, -nu / k1, 0], [-nu / k1, 1 / k2, 0], [0, 0, 4 / k45 - 1 / k1 - 1 / k2 + 2 * nu / k1]])
        c, s = np.cos(np.deg2rad(turn_deg)), np.sin(np.deg2rad(turn_deg))
        # Strains (e1, e2, 2 e12) in the leather's own axes, from those in the sheet's.
        own = np.array([[c * c, s * s, c * s], [s * s, c * c, -c * s], [-2 * c * s, 2 * c * s, c * c - s * s]])
        self.form = own.T @ np.linalg.inv(compliance) @ own / k1

    def energy(self, e):
        q = np.einsum("i...,ij,j...->...", e, self.form, e)
        return self.k / 2 * (self.early * q + (1 - self.early) * (np.sqrt(q + self.toe**2) - self.toe) ** 2)

    def stress(self, e):
        """S (3, ...) and its derivative D (3, 3, ...). dW/dQ = k/2 (1 - (1 - s) t/root); nothing is soft where t is 0."""
        half = np.einsum("ij,j...->i...", self.form, e)
        root = np.sqrt(np.einsum("i...,i...->...", e, half) + self.toe**2)
        soft = np.zeros_like(root) if self.toe == 0 else (1 - self.early) * self.toe / root
        first = self.k * (1 - soft)
        second = np.zeros_like(root) if self.toe == 0 else self.k * soft / root**2
        form = self.form.reshape(3, 3, *(1,) * (e.ndim - 1))
        return first * half, first * form + second * half[:, None] * half[None, :]


class Layers:
    """Leathers on one another, stretched alike."""

    def __init__(self, layers):
        self.layers = [Leather(layer["numbers"], layer["turnDeg"]) for layer in layers]

    def energy(self, e):
        return sum(layer.energy(e) for layer in self.layers)

    def stress(self, e):
        answers = [layer.stress(e) for layer in self.layers]
        return sum(s for s, _ in answers), sum(d for _, d in answers)
