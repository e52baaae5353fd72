// Our sparse Cholesky beside CHOLMOD on the same matrices, in one run: ratios of the times to factor. Run by `npm run bench -- peers`.
// The outside library is that of `npm run crosscheck`, which also runs this comparison and libigl's SLIM beside our flattening.
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
    process.exitCode = spawnSync(python, [join(root, "crosscheck", "flatten_cholmod.py"), folder], { cwd: root, stdio: "inherit" }).status ?? 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
} else console.log("skipped: Python's side is not set up yet; `npm run crosscheck -- flatten` sets it up and makes the same comparison.");
