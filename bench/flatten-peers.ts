// Our sparse Cholesky beside CHOLMOD on the same matrices, and our flattening beside 200 iterations of libigl's SLIM from the same start,
// each in one run: ratios of times, energies, and how far SLIM's points still are. Run by `npm run bench -- peers`.
// The outside libraries are those of `npm run crosscheck`, which makes the same comparisons.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const python = join(root, ".venv", process.platform === "win32" ? "Scripts/python.exe" : "bin/python");
if (existsSync(python)) {
  const folder = mkdtempSync(join(tmpdir(), "lastwise-peers-"));
  try {
    for (const peer of ["flatten_cholmod.py", "flatten_peer.py"]) {
      const done = spawnSync(python, [join(root, "crosscheck", peer), folder], { cwd: root, stdio: "inherit" });
      if (done.status !== 0) process.exitCode = done.status ?? 1;
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
} else console.log("skipped: Python's side is not set up yet; `npm run crosscheck -- flatten` sets it up and makes the same comparison.");
