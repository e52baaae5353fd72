// Finds the Chromium that the browser tests drive. Node's built-ins alone.
import { existsSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { run } from "./steps.mjs";

const names = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome", "msedge"];
const places = [
  "/usr/bin/chromium",
  "/snap/bin/chromium",
  "/opt/google/chrome/chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  ...["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"].map((key) => join(process.env[key] ?? "", "Google", "Chrome", "Application", "chrome.exe")),
];

/** Path of a Chromium (CHROMIUM_PATH, then the usual places), or undefined. */
export function findChromium() {
  const ending = process.platform === "win32" ? ".exe" : "";
  const onPath = (process.env.PATH ?? "").split(delimiter).flatMap((dir) => names.map((name) => join(dir, name + ending)));
  return [process.env.CHROMIUM_PATH ?? "", ...onPath, ...places].find((path) => path !== "" && existsSync(path));
}

/** On Debian and its kin, and only as root, installs the distribution's own Chromium. Returns its path or undefined. */
export function installChromium() {
  const system = existsSync("/etc/os-release") ? readFileSync("/etc/os-release", "utf8") : "";
  if (process.getuid?.() !== 0 || !/^ID(_LIKE)?=.*debian/m.test(system)) return undefined;
  console.log("No Chromium found: installing Debian's for the browser tests …");
  const options = { env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" }, stdio: ["ignore", "ignore", "inherit"] };
  run("apt-get", ["update", "-qq"], options);
  run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"], options);
  return findChromium();
}
