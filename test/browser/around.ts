// What the browser tests stand on: a Chromium, and the app as it was built.
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
// @ts-expect-error The tools are plain JavaScript, so that they run before anything is installed.
import { findChromium as findUntyped } from "../../tools/chromium.mjs";
// @ts-expect-error Likewise.
import { serve as serveUntyped } from "../../tools/serve.mjs";

export const findChromium = findUntyped as () => string | undefined;
export const serve = serveUntyped as (dir: string, port: number) => Promise<{ readonly server: { close(): void }; readonly address: string }>;

export const built = fileURLToPath(new URL("../../dist/app", import.meta.url));

/** Why the browser tests cannot run here, or nothing. */
export const missing = !findChromium()
  ? "no Chromium here: install Chromium or Chrome, or set CHROMIUM_PATH"
  : !process.env["LASTWISE_URL"] && !existsSync(`${built}/index.html`)
    ? "the app is not built: run npm run build, or set LASTWISE_URL"
    : undefined;

/** WebGL by software, and nothing that asks the network. */
export const flags: readonly string[] = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--use-gl=angle",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
];
