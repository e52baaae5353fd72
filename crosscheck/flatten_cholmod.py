"""Our sparse Cholesky against CHOLMOD on the very matrices of the flattening: solutions compared, times printed side by side."""

import json
import subprocess
import time
from pathlib import Path

import cvxopt
import numpy as np
from cvxopt import cholmod

from checks import Checks, folder

root = Path(__file__).resolve().parent.parent
subprocess.run(["node", root / "node_modules/tsx/dist/cli.mjs", root / "crosscheck/flatten-matrices.ts", folder()], check=True, cwd=root)


def least_ms(work):
    times = []
    for _ in range(8):
        before = time.perf_counter()
        work()
        times.append(1000 * (time.perf_counter() - before))
    return min(times)


checks = Checks("Sparse Cholesky, by CHOLMOD with its own approximate minimum degree order")
for case in json.loads((folder() / "matrices.json").read_text(encoding="utf-8")):
    size, unknowns = case["triangles"], case["unknowns"]
    read = lambda what, kind: np.fromfile(folder() / f"matrix-{size}.{what}", dtype=kind)
    rows, columns = read("rows", np.int32), read("columns", np.int32)
    values, right, ours = (read(what, np.float64) for what in ("values", "right", "ours"))
    below = rows != columns

    def product(entries, x):
        """The symmetric matrix with these entries on and below its diagonal, times x."""
        out = np.zeros(unknowns)
        np.add.at(out, rows, entries * x[columns])
        np.add.at(out, columns[below], entries[below] * x[rows[below]])
        return out

    times = lambda x: product(values, x)
    matrix = cvxopt.spmatrix(cvxopt.matrix(values), cvxopt.matrix(rows.astype(int)), cvxopt.matrix(columns.astype(int)), (unknowns, unknowns))
    print(f"  {size} triangles, {unknowns} unknowns: ours {case['planMs']:.1f} ms to plan, {case['compiledMs']:.1f} to factor compiled ({case['plainMs']:.1f} in TypeScript), {case['solveMs']:.2f} to solve")
    for name, kind in (("simplicial", 0), ("supernodal", 2)):
        cholmod.options["supernodal"] = kind
        plan_ms = least_ms(lambda: cholmod.symbolic(matrix))
        factor = cholmod.symbolic(matrix)
        factor_ms = least_ms(lambda: cholmod.numeric(matrix, factor))
        x = cvxopt.matrix(right)
        cholmod.solve(factor, x)
        theirs = np.asarray(x).ravel()
        solve_ms = least_ms(lambda: cholmod.solve(factor, cvxopt.matrix(right)))
        apart = theirs - ours
        # In the plain norm the soft mode magnifies rounding a billion times; in the energy's, which Newton minimises, the root of that.
        off = float(np.sqrt(abs(apart @ times(apart)) / (theirs @ times(theirs))))
        checks.true(f"{size} triangles: our solution is that of CHOLMOD, {name}", off < 1e-10, f"{off:.1e} apart in the energy's norm, {np.abs(apart).max() / np.abs(theirs).max():.0e} in the largest entry")
        print(f"         CHOLMOD {name}: {plan_ms:.1f} ms to plan, {factor_ms:.1f} to factor, {solve_ms:.2f} to solve; ratio of factor times, theirs to ours {factor_ms / case['compiledMs']:.1f} compiled, {factor_ms / case['plainMs']:.1f} in TypeScript")
    residual = np.abs(times(ours) - right).max() / product(np.abs(values), np.abs(ours)).max()
    checks.true(f"{size} triangles: residual against the size of its terms", residual < 1e-12, f"{residual:.1e}")
checks.end()
